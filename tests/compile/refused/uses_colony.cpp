#include "colony/marking.hpp"
