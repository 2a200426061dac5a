// Whom each site's pests and diseases are told, by which law, and what is still owed to them.
#pragma once

#include <span>

#include "book/state.hpp"
#include "garth/tables/tables.hpp"
#include "work/needs.hpp"

namespace beegarth::garth {

// Fills in authority, law and reports of every site of the input. A Problem where a country's table is
// broken.
Outcome take_reports_due(std::span<const entries::Entry> standing, const book::State& state,
                         const Tables& tables, work::NeedsInput& input);

}  // namespace beegarth::garth
