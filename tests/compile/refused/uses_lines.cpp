#include "lines/pedigree.hpp"
