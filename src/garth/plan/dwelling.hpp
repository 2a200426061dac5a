// From what the keeper said of a hive to what it offers a colony.
#pragma once

#include "book/state.hpp"
#include "entries/payloads.hpp"
#include "facts/dwelling.hpp"

namespace beegarth::garth {

facts::Dwelling dwelling_of(const entries::Hive& hive);

// What one of two colonies has of a divided hive in which both live: half of the combs and of the supers
// above, and a wall that the other keeps warm. Combs that do not divide go to whoever asks.
facts::Dwelling half_of(facts::Dwelling shared);

// What a colony lives in: its hive, or half of it where another lives there too; the usual where no hive was
// entered.
facts::Dwelling home_of(const book::State& state, const book::ColonyState& colony);

}  // namespace beegarth::garth
