// From what the keeper said of a hive to what it offers a colony.
#pragma once

#include "entries/payloads.hpp"
#include "facts/dwelling.hpp"

namespace beegarth::garth {

facts::Dwelling dwelling_of(const entries::Hive& hive);

}  // namespace beegarth::garth
