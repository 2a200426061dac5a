// The dates that the book itself sets, as an iCalendar file (RFC 5545).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "garth/session.hpp"

namespace beegarth::garth {

struct CalendarDay {
  std::string uid;  // the same for the same thing, so that a calendar read again does not double it
  Date date;
  std::string summary;
  std::string description;
  // Of a visit; absent: the whole day. Local hours, and no time zone is named: the clock where the keeper is.
  std::optional<double> start_hour, end_hour;
  std::string location;
};

// Ends of treatments, withdrawals, quarantines, agreements and insurances, and what was put off, oldest
// first.
std::vector<CalendarDay> calendar_days(const Session& session);

// Whole-day events, or from hour to hour; lines folded at 75 bytes, between characters and not within one.
std::string calendar_text(const std::vector<CalendarDay>& days, Date stamped);

}  // namespace beegarth::garth
