#include "belief/belief.hpp"
