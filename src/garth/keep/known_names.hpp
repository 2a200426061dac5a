// Whether entries speak of colonies, hives and sites that the book tells of.
#pragma once

#include <span>
#include <vector>

#include "base/expected.hpp"
#include "book/book.hpp"
#include "garth/keep/objection.hpp"

namespace beegarth::garth {

// An objection to the first draft about a colony, hive or site that neither an entry of the book nor one of
// the drafts brought in, or that brings in a colony a second time. A slip in a key would otherwise be kept
// and never be seen again.
std::optional<Objection> only_known_names(std::span<const entries::Entry> book,
                                          std::span<const book::Draft> drafts);

}  // namespace beegarth::garth
