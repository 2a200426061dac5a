// sun-times: sunrise, sunset and the hours between on one civil date.
#include <cmath>

#include "almanac/sun.hpp"
#include "garth/calc/calc.hpp"

namespace beegarth::garth {
namespace {

// The Earth ephemeris that is used holds for these years (ERFA, eraEpv00).
constexpr int first_year = 1900;
constexpr int last_year = 2100;

Json input_schema() {
  return object_schema(
      {{"latitude_deg", number_schema("north positive", -90, 90)},
       {"longitude_deg", number_schema("east positive", -180, 180)},
       {"date",
        {{"type", "string"}, {"format", "date"}, {"description", "civil date at that offset, 1900 to 2100"}}},
       {"utc_offset_h", number_schema("local time less UTC, a whole number of minutes", -12, 14)}},
      {"latitude_deg", "longitude_deg", "date", "utc_offset_h"});
}

Json event_schema(const char* description) {
  return {{"type", {"string", "null"}}, {"format", "date-time"}, {"description", description}};
}

Json output_schema() {
  return object_schema(
      {{"sunrise", event_schema("upper limb on a level horizon; null where it does not rise on that date")},
       {"sunset", event_schema("upper limb on a level horizon; null where it does not set on that date")},
       {"daylength_h", number_schema("hours of that date with the sun up", 0, 24)},
       {"polar", {{"enum", {"day", "night"}}, {"description", "only where the sun neither rises nor sets"}}}},
      {"sunrise", "sunset", "daylength_h"});
}

Json example() {
  return {{"latitude_deg", 52.5}, {"longitude_deg", -1.9}, {"date", "2021-12-21"}, {"utc_offset_h", 0}};
}

// To the nearest second, except that the last half second of a date stays on it.
Json event(const std::optional<Instant>& instant, Date date) {
  if (!instant) return nullptr;
  const auto second = std::llround(static_cast<double>(instant->utc_ms) / 1000);
  Instant rounded{second * 1000, instant->offset_minutes};
  if (rounded.local_date() != date) rounded.utc_ms -= 1000;
  return rounded.rfc3339();
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const almanac::Place place{reader.number("latitude_deg", -90, 90),
                             reader.number("longitude_deg", -180, 180)};
  const Date date = reader.date("date");
  const double offset_h = reader.number("utc_offset_h", -12, 14);
  if (date.year() < first_year || date.year() > last_year) {
    reader.fail(bad_input("the sun is not known here for that year", reader.path_of("date"),
                          "give a date from 1900 to 2100"));
  }
  if (std::abs(offset_h * 60 - std::round(offset_h * 60)) > 1e-6) {
    reader.fail(bad_input("not a whole number of minutes", reader.path_of("utc_offset_h"),
                          "give hours such as 5.75 for +05:45"));
  }
  if (auto fault = reader.done()) return *std::move(fault);

  const almanac::SunTimes times = almanac::sun_times(place, date, offset_h);
  Json answer{{"sunrise", event(times.sunrise, date)},
              {"sunset", event(times.sunset, date)},
              {"daylength_h", times.daylength_h}};
  if (times.polar != almanac::Polar::none)
    answer["polar"] = times.polar == almanac::Polar::day ? "day" : "night";
  return answer;
}

}  // namespace

Calc sun_times_calc() {
  return {"sun-times",  "sunrise, sunset and the hours between on one civil date",
          input_schema, output_schema,
          example,      run};
}

}  // namespace beegarth::garth
