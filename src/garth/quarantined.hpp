// Which of the colonies that are planned for are kept apart, by the ledger that the gates ask too.
#pragma once

#include <span>

#include "base/fact_table.hpp"
#include "entries/entry.hpp"
#include "work/needs.hpp"

namespace beegarth::garth {

// Adds those that are kept apart though the keeper set no day: swarms and stocks of unknown origin.
void take_quarantines(std::span<const entries::Entry> standing, const FactTable& work,
                      work::NeedsInput& input);

}  // namespace beegarth::garth
