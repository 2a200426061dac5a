// daylength: hours of daylight by latitude and day of the year alone.
#include "almanac/sun.hpp"
#include "garth/calc/calc.hpp"

namespace beegarth::garth {
namespace {

constexpr double usual_horizon_deg = 0.8333;

Json input_schema() {
  Json schema = object_schema(
      {{"latitude_deg", number_schema("north positive", -90, 90)},
       {"day_of_year",
        {{"type", "integer"}, {"description", "1 January is 1"}, {"minimum", 1}, {"maximum", 366}}},
       {"date", {{"type", "string"}, {"format", "date"}, {"description", "in place of day_of_year"}}},
       {"horizon_deg",
        number_schema("how far the sun's centre stands below the horizon at rise and set: 0 centre, 0.26667 "
                      "upper limb, 0.8333 upper limb with refraction (where absent), 6, 12, 18 twilights",
                      0, 18)}},
      {"latitude_deg"});
  schema["oneOf"] = {{{"required", {"day_of_year"}}}, {{"required", {"date"}}}};
  return schema;
}

Json output_schema() {
  return object_schema({{"hours", number_schema("of daylight", 0, 24)}}, {"hours"});
}

Json example() {
  return {{"latitude_deg", 52.5}, {"day_of_year", 172}};
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const double latitude_deg = reader.number("latitude_deg", -90, 90);
  const auto day_of_year = reader.maybe_whole("day_of_year", 1, 366);
  const auto date = reader.maybe_date("date");
  const double horizon_deg = reader.number_or("horizon_deg", 0, 18, usual_horizon_deg);
  if (reader.has("day_of_year") && reader.has("date")) {
    reader.fail(
        bad_input("the day is given twice", reader.path_of("date"), "give day_of_year or date, not both"));
  }
  if (!reader.has("day_of_year") && !reader.has("date")) {
    reader.fail(bad_input("the day is missing", reader.path_of("day_of_year"), "give day_of_year or date"));
  }
  if (auto fault = reader.done()) return *std::move(fault);
  const int day = day_of_year ? *day_of_year : date->day_of_year();
  return Json{{"hours", almanac::daylength_h(latitude_deg, day, horizon_deg)}};
}

}  // namespace

Calc daylength_calc() {
  return {"daylength",  "hours of daylight by latitude and day of the year",
          input_schema, output_schema,
          example,      run};
}

}  // namespace beegarth::garth
