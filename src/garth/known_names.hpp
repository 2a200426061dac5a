// Whether entries speak of colonies, hives and sites that the book tells of.
#pragma once

#include <span>
#include <vector>

#include "base/expected.hpp"
#include "book/book.hpp"

namespace beegarth::garth {

// A Problem for the first draft about a colony, hive or site that neither an entry of the book nor one of the
// drafts brought in, or that brings in a colony a second time. A slip in a key would otherwise be kept and
// never be seen again.
Outcome only_known_names(std::span<const entries::Entry> book, std::span<const book::Draft> drafts);

}  // namespace beegarth::garth
