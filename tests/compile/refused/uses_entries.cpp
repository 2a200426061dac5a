#include "entries/entry.hpp"
