// The one door by which a keeper's entries come into a book: names known, overrides usable, gates passed,
// kept.
#pragma once

#include <span>
#include <vector>

#include "book/book.hpp"
#include "garth/keep/objection.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

// What stands in the way of keeping drafts beside `book` (every entry in it), if anything. Writes nothing.
std::optional<Objection> objection_to(std::span<const entries::Entry> book,
                                      std::span<const book::Draft> drafts, const Tables& tables);
// The same, told as "entry 2 of the 3 given".
Outcome may_be_kept(std::span<const entries::Entry> book, std::span<const book::Draft> drafts,
                    const Tables& tables);

// A slip in the year would move the beginning of the book, or stand where nobody looks. `where` names the
// field or option that the date came from.
Outcome likely_date(Date happened, Date today, const char* where);

// All or none; the session is not refreshed.
Expected<std::vector<entries::Entry>> keep(Session& session, const std::vector<book::Draft>& drafts);

}  // namespace beegarth::garth
