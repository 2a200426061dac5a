#include "base/date.hpp"

#include <array>
#include <chrono>
#include <cstdio>

namespace beegarth {
namespace {

using std::chrono::sys_days;
using std::chrono::year_month_day;

constexpr int first_year = 1600;
constexpr int last_year = 2999;
constexpr std::int64_t ms_per_day = 86'400'000;

year_month_day calendar(std::int32_t days) {
  return year_month_day{sys_days{std::chrono::days{days}}};
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// Reads exactly `width` digits; nullopt otherwise.
std::optional<int> digits(std::string_view text, std::size_t at, std::size_t width) {
  if (at + width > text.size()) return std::nullopt;
  int value = 0;
  for (std::size_t i = at; i < at + width; ++i) {
    if (!is_digit(text[i])) return std::nullopt;
    value = value * 10 + (text[i] - '0');
  }
  return value;
}

std::optional<Date> date_prefix(std::string_view text) {
  if (text.size() < 10 || text[4] != '-' || text[7] != '-') return std::nullopt;
  const auto y = digits(text, 0, 4);
  const auto m = digits(text, 5, 2);
  const auto d = digits(text, 8, 2);
  if (!y || !m || !d) return std::nullopt;
  return Date::from_ymd(*y, *m, *d);
}

Problem not_an_instant(std::string_view text) {
  return bad_input("'" + std::string(text.substr(0, 40)) + "' is not an instant", {},
                   "write it like 2026-06-05T14:30:00+01:00");
}

struct Offset {
  int minutes;
};

std::optional<Offset> parse_offset(std::string_view text) {
  if (text == "Z" || text == "z") return Offset{0};
  if (text.size() != 6 || (text[0] != '+' && text[0] != '-') || text[3] != ':') return std::nullopt;
  const auto h = digits(text, 1, 2);
  const auto m = digits(text, 4, 2);
  if (!h || !m || *h > 23 || *m > 59) return std::nullopt;
  const int minutes = *h * 60 + *m;
  return Offset{text[0] == '-' ? -minutes : minutes};
}

std::int64_t floor_div(std::int64_t a, std::int64_t b) {
  return a >= 0 ? a / b : -((-a + b - 1) / b);
}

}  // namespace

std::optional<Date> Date::from_ymd(int year, int month, int day) {
  if (year < first_year || year > last_year || month < 1 || day < 1) return std::nullopt;
  const year_month_day ymd{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                           std::chrono::day{static_cast<unsigned>(day)}};
  if (!ymd.ok()) return std::nullopt;
  return Date(static_cast<std::int32_t>(sys_days{ymd}.time_since_epoch().count()));
}

Expected<Date> Date::parse(std::string_view iso) {
  if (iso.size() == 10) {
    if (const auto date = date_prefix(iso)) return *date;
  }
  return bad_input("'" + std::string(iso.substr(0, 40)) + "' is not a date", {}, "write it like 2026-06-05");
}

int Date::year() const {
  return static_cast<int>(calendar(days_).year());
}
int Date::month() const {
  return static_cast<int>(static_cast<unsigned>(calendar(days_).month()));
}
int Date::day() const {
  return static_cast<int>(static_cast<unsigned>(calendar(days_).day()));
}

int Date::day_of_year() const {
  const auto first = from_ymd(year(), 1, 1);
  return first ? *this - *first + 1 : 1;
}

int Date::weekday() const {
  const std::int32_t since_monday = (days_ + 3) % 7;  // 1970-01-01 was a Thursday
  return (since_monday < 0 ? since_monday + 7 : since_monday) + 1;
}

std::string Date::iso() const {
  std::array<char, 32> buffer{};
  std::snprintf(buffer.data(), buffer.size(), "%04d-%02d-%02d", year(), month(), day());
  return buffer.data();
}

Expected<Instant> Instant::parse_rfc3339(std::string_view text) {
  const auto date = date_prefix(text);
  if (!date || text.size() < 20 || (text[10] != 'T' && text[10] != 't' && text[10] != ' '))
    return not_an_instant(text);
  const auto h = digits(text, 11, 2);
  const auto m = digits(text, 14, 2);
  const auto s = digits(text, 17, 2);
  if (!h || !m || !s || text[13] != ':' || text[16] != ':' || *h > 23 || *m > 59 || *s > 60) {
    return not_an_instant(text);
  }
  std::size_t at = 19;
  int ms = 0;
  if (text[at] == '.') {
    ++at;
    int scale = 100;
    const std::size_t first = at;
    for (; at < text.size() && is_digit(text[at]); ++at) {
      ms += (text[at] - '0') * scale;
      scale /= 10;
    }
    if (at == first) return not_an_instant(text);
  }
  const auto offset = parse_offset(text.substr(at));
  if (!offset) return not_an_instant(text);
  const std::int64_t local = date->day_number() * ms_per_day + ((*h * 60LL + *m) * 60LL + *s) * 1000LL + ms;
  return Instant{local - offset->minutes * 60'000LL, offset->minutes};
}

std::string Instant::rfc3339() const {
  const std::int64_t local = utc_ms + offset_minutes * 60'000LL;
  const std::int64_t day = floor_div(local, ms_per_day);
  const std::int64_t ms = local - day * ms_per_day;
  const Date date = Date::from_day_number(static_cast<std::int32_t>(day));
  std::array<char, 32> clock{};
  const int seconds = static_cast<int>(ms / 1000);
  std::snprintf(clock.data(), clock.size(), "T%02d:%02d:%02d", seconds / 3600, seconds / 60 % 60,
                seconds % 60);
  std::string text = date.iso() + clock.data();
  if (ms % 1000 != 0) {
    std::snprintf(clock.data(), clock.size(), ".%03d", static_cast<int>(ms % 1000));
    text += clock.data();
  }
  if (offset_minutes == 0) return text + "Z";
  const int size = offset_minutes < 0 ? -offset_minutes : offset_minutes;
  std::snprintf(clock.data(), clock.size(), "%c%02d:%02d", offset_minutes < 0 ? '-' : '+', size / 60,
                size % 60);
  return text + clock.data();
}

Date Instant::local_date() const {
  return Date::from_day_number(
      static_cast<std::int32_t>(floor_div(utc_ms + offset_minutes * 60'000LL, ms_per_day)));
}

double Instant::local_hour() const {
  const std::int64_t local = utc_ms + offset_minutes * 60'000LL;
  return static_cast<double>(local - floor_div(local, ms_per_day) * ms_per_day) / 3'600'000.0;
}

}  // namespace beegarth
