// degree-days: heat above a base, day by day, from each day's minimum and maximum.
#include "almanac/degree_days.hpp"

#include "garth/calc/calc.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most_days = 100'000;
// No air temperature on Earth was ever measured outside these (WMO extremes: -89.2 and 56.7 C).
constexpr double lowest_C = -90;
constexpr double highest_C = 60;

Json input_schema() {
  const Json day =
      object_schema({{"min_C", number_schema("lowest of the day", lowest_C, highest_C)},
                     {"max_C", number_schema("highest of the day, not below min_C", lowest_C, highest_C)}},
                    {"min_C", "max_C"});
  return object_schema(
      {{"days", array_schema(day, most_days)},
       {"base_C", number_schema("counting begins here", lowest_C, highest_C)},
       {"upper_C", number_schema("above base_C; no upper limit where absent", lowest_C, highest_C)},
       {"method", {{"enum", {"sine", "triangle", "mean"}}}},
       {"cutoff",
        {{"enum", {"horizontal", "vertical"}},
         {"description", "above upper_C: held at it (where absent), or nothing counted"}}}},
      {"days", "base_C", "method"});
}

Json output_schema() {
  return object_schema(
      {{"per_day", array_schema(number_schema("degree days, C", 0, highest_C - lowest_C), most_days)},
       {"total", number_schema("degree days, C", 0, (highest_C - lowest_C) * most_days)}},
      {"per_day", "total"});
}

Json example() {
  return {{"days", {{{"min_C", 5}, {"max_C", 20}}, {{"min_C", 12}, {"max_C", 35}}}},
          {"base_C", 10},
          {"upper_C", 30},
          {"method", "sine"}};
}

almanac::DegreeDayMethod method_named(const std::string& name) {
  if (name == "triangle") return almanac::DegreeDayMethod::triangle;
  return name == "mean" ? almanac::DegreeDayMethod::mean : almanac::DegreeDayMethod::sine;
}

almanac::DegreeDayRule rule_from(Reader& reader) {
  almanac::DegreeDayRule rule;
  rule.base_C = reader.number("base_C", lowest_C, highest_C);
  rule.upper_C = reader.maybe_number("upper_C", lowest_C, highest_C);
  rule.method = method_named(reader.choice("method", {"sine", "triangle", "mean"}));
  const auto cutoff = reader.maybe_choice("cutoff", {"horizontal", "vertical"});
  if (cutoff == "vertical") rule.cutoff = almanac::UpperCutoff::vertical;
  if (rule.upper_C && *rule.upper_C <= rule.base_C) {
    reader.fail(
        bad_input("not above base_C", reader.path_of("upper_C"), "give a higher upper_C or leave it out"));
  }
  if (cutoff && !reader.has("upper_C")) {
    reader.fail(bad_input("there is no upper_C to cut off at", reader.path_of("cutoff"),
                          "give upper_C or leave cutoff out"));
  }
  return rule;
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const almanac::DegreeDayRule rule = rule_from(reader);
  const std::vector<Json> days = reader.list("days", most_days);
  if (auto fault = reader.done()) return *std::move(fault);

  Json per_day = Json::array();
  double total = 0;
  for (std::size_t i = 0; i < days.size(); ++i) {
    Reader day(days[i], reader.path_of("days", i));
    const double min_C = day.number("min_C", lowest_C, highest_C);
    const double max_C = day.number("max_C", lowest_C, highest_C);
    if (min_C > max_C)
      day.fail(bad_input("the minimum is above the maximum", day.path_of("min_C"), "swap or correct them"));
    if (auto fault = day.done()) return *std::move(fault);
    const double counted = almanac::degree_days(min_C, max_C, rule);
    total += counted;
    per_day.push_back(counted);
  }
  return Json{{"per_day", std::move(per_day)}, {"total", total}};
}

}  // namespace

Calc degree_days_calc() {
  return {"degree-days", "heat above a base, day by day", input_schema, output_schema, example, run};
}

}  // namespace beegarth::garth
