// An opened book with everything the use cases read from it: state at a date, reference tables, seed.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/expected.hpp"
#include "book/book.hpp"
#include "book/state.hpp"
#include "garth/ledgers/side_by_side.hpp"
#include "garth/ledgers/suspects.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {

struct SessionOptions {
  std::optional<Date> today;  // absent: the book's own (a demo has one), else the machine's civil date
  std::uint64_t seed = 1;
  int members = 512;         // per colony
  int weather_members = 48;  // continuations of the weather
  int threads = 0;           // 0: as many as the machine has; never changes a result
  std::string who = "keeper";
  bool read_only = true;
  std::optional<Date>
      known_on;  // as it was known on that day's end (UTC): what was written later is left out
};

struct Session {
  std::string path;
  book::Book book;
  std::vector<entries::Entry> standing;  // what counts today
  FirstSaid first_said;                  // of what was corrected
  book::State state;
  Suspects suspects;  // on that day
  Tables tables;
  std::vector<std::string> faulty_overrides;  // what cannot be used of the keeper's own rows, and why
  Date today;
  std::uint64_t seed = 1;
  int members = 512;
  int weather_members = 48;
  int threads = 1;
  std::optional<Date> known_on;
};

// Problem bad_input where today lies before the book's first entry.
Expected<Session> open_session(const std::string& path, const SessionOptions& options);

// ---- the first steps of opening a book, for whoever reads less of it ----
struct OpenedBook {
  book::Book book;
  Date today;  // as given, else the book's own, else the machine's
};
Expected<OpenedBook> open_book(const std::string& path, const SessionOptions& options);
// The last instant of that day (UTC).
std::optional<entries::Written> end_of(std::optional<Date> known_on);
// A Problem where something is in the book, but nothing yet on `today` or written by then.
Outcome has_begun(const book::Book& book, const std::string& path, Date today, std::optional<Date> known_on);

// Reads the book again after something was written to it.
Outcome refresh(Session& session);

// The machine's clock and random bytes: the only place that reads them.
book::Surroundings machine_surroundings();
Date machine_today();

// The key of a colony or site named on the command line; a Problem that lists near names where nobody has it.
Expected<ColonyId> colony_named(const book::State& state, std::string_view name);
Expected<SiteId> site_named(const book::State& state, std::string_view name);

}  // namespace beegarth::garth
