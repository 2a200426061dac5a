// What the book says of plants, nests, combs and the stocks that are wanted, in the form in which the needs
// ask for it.
#pragma once

#include <span>

#include "book/state.hpp"
#include "work/needs.hpp"

namespace beegarth::garth {

// Fills in plantings, aims and empty hives of the sites, brood combs of the colonies, and what is in store.
void take_husbandry(std::span<const entries::Entry> standing, const book::State& state,
                    work::NeedsInput& input);

}  // namespace beegarth::garth
