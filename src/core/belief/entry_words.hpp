// What an entry said, in words, and the table rows that it is judged by.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/fact_table.hpp"
#include "belief/observation.hpp"
#include "entries/entry.hpp"

namespace beegarth::belief {

// "inspection of 2026-05-20 (9 seams, 5 charged cells)".
std::string describe(const entries::Entry& entry);
std::string spoken_kind(const entries::Entry& entry);  // "mite count"
std::string percent(double odds);                      // "12 %", "under 1 %", "over 99 %"

// Rows of the table of observations that a kind of sight is judged by.
std::vector<const char*> rows_behind(const Sight& sight);
// Adds "row: source" for each of the rows that the table has.
void cite(std::vector<std::string>& sources, const FactTable& table, std::span<const char* const> keys);

}  // namespace beegarth::belief
