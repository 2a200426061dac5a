// Whether entries speak of colonies that the book tells of.
#pragma once

#include <span>
#include <vector>

#include "base/expected.hpp"
#include "book/book.hpp"

namespace beegarth::garth {

// A Problem for the first draft about a colony that neither an entry of the book nor one of the drafts began.
// A slip in a key would otherwise be kept and never be seen again.
Outcome only_known_colonies(std::span<const entries::Entry> book, std::span<const book::Draft> drafts);

}  // namespace beegarth::garth
