#include "facts/need.hpp"
