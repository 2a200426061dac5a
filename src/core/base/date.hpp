// Civil dates and instants.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "base/expected.hpp"

namespace beegarth {

// A civil date in the Gregorian calendar, years 1600 to 2999; no time zone.
class Date {
 public:
  Date() = default;  // 1970-01-01
  static Date from_day_number(std::int32_t days_since_1970) { return Date(days_since_1970); }
  static std::optional<Date> from_ymd(int year, int month, int day);  // nullopt where there is no such day
  static Expected<Date> parse(std::string_view iso);                  // "2026-06-05", nothing else

  std::int32_t day_number() const { return days_; }
  int year() const;
  int month() const;        // 1..12
  int day() const;          // 1..31
  int day_of_year() const;  // 1..366
  int weekday() const;      // ISO: 1 Monday .. 7 Sunday
  std::string iso() const;  // "2026-06-05"

  friend Date operator+(Date date, int days) { return Date(date.days_ + days); }
  friend Date operator-(Date date, int days) { return Date(date.days_ - days); }
  friend int operator-(Date a, Date b) { return a.days_ - b.days_; }
  Date& operator++() {
    ++days_;
    return *this;
  }
  friend auto operator<=>(const Date&, const Date&) = default;

 private:
  explicit Date(std::int32_t days) : days_(days) {}
  std::int32_t days_ = 0;
};

// 1 to 12, the month of the same season in the northern year: south of the equator turned by half a year.
inline int northern_month(Date date, double latitude_deg) {
  return latitude_deg >= 0 ? date.month() : (date.month() + 5) % 12 + 1;
}

// An instant with the offset in which it was written down.
struct Instant {
  std::int64_t utc_ms = 0;  // milliseconds since 1970-01-01T00:00:00Z
  int offset_minutes = 0;   // local = UTC + offset

  static Expected<Instant> parse_rfc3339(std::string_view text);
  std::string rfc3339() const;  // whole seconds, or milliseconds where there are any
  Date local_date() const;
  double local_hour() const;  // 0..24
  friend auto operator<=>(const Instant&, const Instant&) = default;
};

}  // namespace beegarth
