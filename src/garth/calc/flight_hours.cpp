// flight-hours: which hours are fit for flight and for opening a hive, and what limits the others.
#include <array>

#include "almanac/hours.hpp"
#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most_hours = std::size_t{24} * 366;

const char* word(almanac::Limit limit) {
  static constexpr std::array<const char*, 7> words{"none", "dark", "cold", "hot", "rain", "wind", "dull"};
  return words[static_cast<std::size_t>(limit)];
}

Json limit_schema() {
  return {{"enum", {"none", "dark", "cold", "hot", "rain", "wind", "dull"}}};
}

Json input_schema() {
  const Json hour = object_schema(
      {{"time",
        {{"type", "string"}, {"format", "date-time"}, {"description", "start of the hour, RFC 3339"}}},
       {"temperature_C", number_schema("air temperature", -60, 60)},
       {"rain_mm", number_schema("rain in the hour", 0, 300)},
       {"wind_m_s", number_schema("wind at the height of flight", 0, 70)},
       {"radiation_W_m2",
        number_schema("global radiation; where absent, light limits nothing but the night", 0, 1500)}},
      {"time", "temperature_C", "rain_mm", "wind_m_s"});
  return object_schema({{"hours", array_schema(hour, most_hours)},
                        {"latitude_deg", number_schema("north positive", -90, 90)},
                        {"longitude_deg", number_schema("east positive", -180, 180)}},
                       {"hours", "latitude_deg", "longitude_deg"});
}

Json output_schema() {
  const Json hour = object_schema({{"time", {{"type", "string"}, {"format", "date-time"}}},
                                   {"flight", number_schema("share of full flight", 0, 1)},
                                   {"flight_limit", limit_schema()},
                                   {"opening", {{"type", "boolean"}}},
                                   {"opening_limit", limit_schema()}},
                                  {"time", "flight", "flight_limit", "opening", "opening_limit"});
  return object_schema({{"flight_hours", number_schema("sum of the shares", 0, most_hours)},
                        {"opening_hours", number_schema("hours fit for opening a hive", 0, most_hours)},
                        {"per_hour", array_schema(hour, most_hours)}},
                       {"flight_hours", "opening_hours", "per_hour"});
}

Json example() {
  return {
      {"latitude_deg", 51.3},
      {"longitude_deg", -1.5},
      {"hours",
       {{{"time", "2026-06-05T06:00:00+01:00"}, {"temperature_C", 9}, {"rain_mm", 0}, {"wind_m_s", 1}},
        {{"time", "2026-06-05T12:00:00+01:00"}, {"temperature_C", 18}, {"rain_mm", 0}, {"wind_m_s", 2}},
        {{"time", "2026-06-05T13:00:00+01:00"}, {"temperature_C", 18}, {"rain_mm", 1.2}, {"wind_m_s", 4}},
        {{"time", "2026-06-05T23:00:00+01:00"}, {"temperature_C", 14}, {"rain_mm", 0}, {"wind_m_s", 1}}}}};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  const auto rules = almanac::HourRules::from(tables["hours"]);
  if (!rules) return rules.problem();
  Reader reader(input);
  const almanac::Place place{reader.number("latitude_deg", -90, 90),
                             reader.number("longitude_deg", -180, 180)};
  const std::vector<Json> rows = reader.list("hours", most_hours);
  if (auto fault = reader.done()) return *std::move(fault);
  double flight_hours = 0;
  int opening_hours = 0;
  Json per_hour = Json::array();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    Reader row(rows[i], reader.path_of("hours", i));
    const almanac::HourWeather hour{.start = row.instant("time"),
                                    .temperature_C = row.number("temperature_C", -60, 60),
                                    .rain_mm = row.number("rain_mm", 0, 300),
                                    .wind_m_s = row.number("wind_m_s", 0, 70),
                                    .radiation_W_m2 = row.maybe_number("radiation_W_m2", 0, 1500)};
    if (auto fault = row.done()) return *std::move(fault);
    const almanac::HourFitness fit = almanac::hour_fitness(hour, place, *rules);
    flight_hours += fit.flight;
    opening_hours += fit.opening ? 1 : 0;
    per_hour.push_back({{"time", rows[i]["time"]},
                        {"flight", fit.flight},
                        {"flight_limit", word(fit.flight_limit)},
                        {"opening", fit.opening},
                        {"opening_limit", word(fit.opening_limit)}});
  }
  return Json{
      {"flight_hours", flight_hours}, {"opening_hours", opening_hours}, {"per_hour", std::move(per_hour)}};
}

}  // namespace

Calc flight_hours_calc() {
  return {"flight-hours", "hours fit for flight and for opening a hive, with what limits the others",
          input_schema,   output_schema,
          example,        run};
}

}  // namespace beegarth::garth
