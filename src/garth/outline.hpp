// A book opened to see what there is at a date, without what was seen of it: quick in a book of any size.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "book/book.hpp"
#include "book/state.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

struct Outline {
  std::string path;
  book::Book book;
  std::vector<entries::Entry> entries;  // that say what there is or correct or take back anything
  book::State state;                    // on `today`; see book::outline_of
  Date today;
  std::optional<entries::Written> known_at;
};

// Problems as those of open_session.
Expected<Outline> open_outline(const std::string& path, const SessionOptions& options);

// The outline at another date of the same book.
book::State outline_on(const Outline& outline, Date date);

}  // namespace beegarth::garth
