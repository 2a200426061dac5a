// What two copies of a book add up to is kept as it was said in each. What a gate would have refused of it,
// had both been written in one book, is named, so that the keeper can set it right.
#pragma once

#include <set>
#include <span>
#include <string>
#include <vector>

#include "entries/entry.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {

// `all`: every entry of the book, with those that came in. `added`: the ids of these. Judges each that came
// in and each that was written after the first of them, by what both copies knew when it was written.
std::vector<std::string> what_gates_would_have_refused(std::span<const entries::Entry> all,
                                                       const std::set<EntryId>& added, const Tables& tables);

}  // namespace beegarth::garth
