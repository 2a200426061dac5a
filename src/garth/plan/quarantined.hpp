// Which of the colonies that are planned for are kept apart, by the ledger that the gates ask too.
#pragma once

#include <span>

#include "base/fact_table.hpp"
#include "entries/entry.hpp"
#include "work/needs.hpp"

namespace beegarth::garth {

// Those that the keeper put there, and by themselves swarms and stocks of unknown origin.
Outcome take_quarantines(std::span<const entries::Entry> standing, const FactTable& work,
                         work::NeedsInput& input);

}  // namespace beegarth::garth
