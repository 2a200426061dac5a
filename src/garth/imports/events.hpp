// The events of a keeper's own calendar (RFC 5545) as rows that an import map can read.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "book/state.hpp"
#include "garth/imports/table_rows.hpp"

namespace beegarth::garth {

struct CalendarEvent {
  std::size_t line = 0;
  std::string uid;
  Date day;                    // as the clock on the wall showed it
  std::optional<double> hour;  // absent: all day
  std::optional<Date> last_day;
  std::optional<double> end_hour;
  bool from_utc = false;  // turned to the wall clock by `utc_offset_h`
  bool recurs = false;
  std::string summary, description, location, categories, status;
};

// A time with TZID, or with no zone, is the clock on the wall where it was written down; one in UTC is turned
// by `utc_offset_h`, the clock of the sites.
Expected<std::vector<CalendarEvent>> calendar_events(std::string_view bytes, const std::string& file,
                                                     double utc_offset_h);

struct EventRows {
  ListedRows rows;
  std::vector<std::string> oddities;  // what was left out, and what was taken how
};

// Events done by `today`, without those that beegarth's own calendar export wrote and those called off. A
// site is found by the location, a colony or a site by the words before a colon in the summary.
Expected<EventRows> event_rows(std::string_view bytes, const std::string& file, const book::State& state,
                               Date today);

}  // namespace beegarth::garth
