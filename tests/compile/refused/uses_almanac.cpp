#include "almanac/sun.hpp"
