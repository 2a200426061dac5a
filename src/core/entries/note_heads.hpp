// Whom and when a clause is about: its names, date and hour. Private to the room.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "entries/note_clause.hpp"
#include "entries/note_names.hpp"

namespace beegarth::entries {

struct Head {
  std::vector<const KnownName*> names;  // said in this clause; several where "both" or "each" is said of them
  std::optional<Date> date;
  std::optional<double> hour;
  bool forecast = false;
};

class HeadReader {
 public:
  HeadReader(std::string_view line, const NameFinder& finder, Date today)
      : line_(line), finder_(finder), today_(today) {}

  // Takes names, dates and hours at the start of the clause. `forecast`: the clause before was one.
  Expected<Head> read(Clause& clause, const std::vector<Segment>& segments, bool forecast) const;
  // A date or an hour anywhere else in the segment.
  Outcome read_when(Clause& clause, const Segment& segment, Head& head) const;
  bool says_a_day(const Clause& clause, std::size_t at, std::size_t end) const;

 private:
  bool is_forecast(const Clause& clause, bool goes_on) const;
  Expected<std::size_t> take_name(Clause& clause, std::size_t at, std::size_t end, Head& head) const;
  Outcome take_segment(Clause& clause, const Segment& segment, Head& head) const;
  Outcome take_day(Clause& clause, std::size_t at, std::size_t end, Head& head, std::size_t& taken) const;
  Outcome refuse_unknown_address(const Clause& clause, const Segment& segment) const;
  Outcome every_one_of_several(Clause& clause, const std::vector<Segment>& segments, const Head& head) const;

  std::string_view line_;
  const NameFinder& finder_;
  Date today_;
};

}  // namespace beegarth::entries
