// The weather ahead, typed in half a minute: one row a day, seven as a rule.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "garth/session.hpp"

namespace beegarth::garth {

// What was typed of one day; a day of which nothing was typed makes no entry.
struct DayAhead {
  Date date;
  std::optional<double> max_C, min_C, rain_mm, wind_m_s, gust_m_s;
  std::string where;  // "line 3", for a refusal

  bool is_empty() const { return !max_C && !min_C && !rain_mm && !wind_m_s && !gust_m_s; }
};

// Seven rows from `first` on, to be filled in.
std::string week_to_fill_in(Date first);
// "2026-06-04  19  9  2  4  9": the day, then highest, lowest, rain, wind and gust with blanks or commas
// between; a dash for what is not known, and what is left out at the end. Lines of "--" say nothing.
Expected<std::vector<DayAhead>> days_in_lines(std::string_view text);

struct WeekAhead {
  std::vector<entries::Entry> entries;  // in the order typed; without ids unless kept
  bool kept = false;
};
// The forecast of one site, or of "all", kept whole or not at all; without `keep` it is only judged. Days are
// from the session's today to two weeks on, each once.
Expected<WeekAhead> foretell(Session& session, std::string_view site, const std::vector<DayAhead>& days,
                             bool keep);

}  // namespace beegarth::garth
