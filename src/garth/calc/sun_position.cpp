// sun-position: where the sun stands at each of a list of times.
#include "almanac/sun.hpp"
#include "garth/calc/calc.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most_times = 100'000;  // a year of quarter hours is 35 136
constexpr almanac::Atmosphere usual_air;
constexpr double usual_delta_t_s = 69;  // TT - UTC since 2017: 32.184 s + 37 leap seconds
// The Earth ephemeris that is used holds for these years (ERFA, eraEpv00).
constexpr int first_year = 1900;
constexpr int last_year = 2100;

Json time_schema() {
  return {{"type", "string"}, {"format", "date-time"}, {"description", "RFC 3339, 1900 to 2100"}};
}

Json input_schema() {
  return object_schema(
      {{"latitude_deg", number_schema("north positive", -90, 90)},
       {"longitude_deg", number_schema("east positive", -180, 180)},
       {"elevation_m", number_schema("above the sea; 0 where absent", -500, 9000)},
       {"pressure_hPa", number_schema("air pressure at the place; 1010 where absent", 300, 1100)},
       {"temperature_C", number_schema("air temperature; 10 where absent", -90, 60)},
       {"delta_t_s", number_schema("terrestrial time less UTC; 69 where absent", -10, 300)},
       {"times", array_schema(time_schema(), most_times)}},
      {"latitude_deg", "longitude_deg", "times"});
}

Json output_schema() {
  const Json position = object_schema(
      {{"time", {{"type", "string"}, {"format", "date-time"}}},
       {"azimuth_deg", number_schema("clockwise from true north", 0, 360)},
       {"elevation_deg", number_schema("above the level horizon, refracted", -90, 90)},
       {"zenith_deg", number_schema("90 - elevation, refracted", 0, 180)},
       {"elevation_airless_deg", number_schema("above the level horizon, as if there were no air", -90, 90)}},
      {"time", "azimuth_deg", "elevation_deg", "zenith_deg", "elevation_airless_deg"});
  return object_schema({{"positions", array_schema(position, most_times)}}, {"positions"});
}

// The worked example of NREL/TP-560-34302.
Json example() {
  return {{"latitude_deg", 39.742476},
          {"longitude_deg", -105.1786},
          {"elevation_m", 1830.14},
          {"pressure_hPa", 820},
          {"temperature_C", 11},
          {"delta_t_s", 67},
          {"times", {"2003-10-17T12:30:30-07:00"}}};
}

Expected<Instant> time_from(const Json& value, const std::string& where) {
  if (!value.is_string())
    return bad_input("not an instant", where, "write it like \"2026-06-05T14:30:00+01:00\"");
  const auto time = Instant::parse_rfc3339(value.get_ref<const std::string&>());
  if (!time) return bad_input(time.problem().what, where, time.problem().remedy);
  const int year = time->local_date().year();
  if (year < first_year || year > last_year) {
    return bad_input("the sun is not known here for that year", where, "give a time from 1900 to 2100");
  }
  return *time;
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const almanac::Place place{reader.number("latitude_deg", -90, 90),
                             reader.number("longitude_deg", -180, 180),
                             reader.number_or("elevation_m", -500, 9000, 0)};
  const almanac::Atmosphere air{reader.number_or("pressure_hPa", 300, 1100, usual_air.pressure_hPa),
                                reader.number_or("temperature_C", -90, 60, usual_air.temperature_C)};
  const double delta_t_s = reader.number_or("delta_t_s", -10, 300, usual_delta_t_s);
  const std::vector<Json> times = reader.list("times", most_times);
  if (auto fault = reader.done()) return *std::move(fault);

  Json positions = Json::array();
  for (std::size_t i = 0; i < times.size(); ++i) {
    const auto time = time_from(times[i], reader.path_of("times", i));
    if (!time) return time.problem();
    const almanac::SunPosition sun = almanac::sun_position(place, *time, air, delta_t_s);
    positions.push_back({{"time", times[i]},
                         {"azimuth_deg", sun.azimuth_deg},
                         {"elevation_deg", sun.elevation_deg},
                         {"zenith_deg", sun.zenith_deg},
                         {"elevation_airless_deg", sun.elevation_airless_deg}});
  }
  return Json{{"positions", std::move(positions)}};
}

}  // namespace

Calc sun_position_calc() {
  return {"sun-position", "where the sun stands at each of a list of times",
          input_schema,   output_schema,
          example,        run};
}

}  // namespace beegarth::garth
