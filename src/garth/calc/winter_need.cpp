// winter-need: honey that a colony will use from one day to another, by three published ways.
#include "colony/winter_need.hpp"

#include <vector>

#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

constexpr int most_days = 400;

Json input_schema() {
  return object_schema(
      {{"bees", number_schema("in the colony", 500, 60000)},
       {"start", date_schema("first day")},
       {"end", date_schema("last day, at most 400 days on")},
       {"temperatures", array_schema(number_schema("mean air temperature, C", -60, 40), most_days)},
       {"conductance_W_K", number_schema("heat loss of the whole hive", 0.05, 20)},
       {"brood", number_schema("brood cells held throughout; absent: none", 0, 60000)}},
      {"bees", "start", "end", "temperatures", "conductance_W_K"});
}

Json output_schema() {
  const Json kg = number_schema("honey, kg", 0, 1e4);
  const Json rule =
      object_schema({{"rule", text_schema("cluster_heat, per_bee, per_month_low, per_month_high")},
                     {"honey_kg", kg},
                     {"source", text_schema("where it comes from")}},
                    {"rule", "honey_kg", "source"});
  return object_schema(
      {{"honey_kg",
        object_schema(
            {{"low", number_schema("the least of the three, by the least of their figures, kg", 0, 1e4)},
             {"mid", number_schema("their mean, kg", 0, 1e4)},
             {"high", number_schema("the most, kg", 0, 1e4)}},
            {"low", "mid", "high"})},
       {"by_rule", array_schema(rule, 4)}},
      {"honey_kg", "by_rule"});
}

Json example() {
  return {{"bees", 10000},       {"start", "2026-11-01"},  {"end", "2027-02-28"},
          {"temperatures", {4}}, {"conductance_W_K", 1.2}, {"brood", 0}};
}

// One for all days, or one a day.
std::vector<double> day_by_day(Reader& reader, const std::vector<Json>& given, int days) {
  std::vector<double> air;
  for (std::size_t i = 0; i < given.size(); ++i) {
    const bool sound = given[i].is_number() && given[i].get<double>() >= -60 && given[i].get<double>() <= 40;
    if (!sound) {
      reader.fail(bad_input("that is no temperature from -60 to 40 C", reader.path_of("temperatures", i),
                            "give the mean of the day in C"));
      return {};
    }
    air.push_back(given[i].get<double>());
  }
  if (air.size() == 1) air.assign(static_cast<std::size_t>(days), air.front());
  if (!air.empty() && air.size() != static_cast<std::size_t>(days))
    reader.fail(bad_input(
        "there are " + std::to_string(air.size()) + " temperatures for " + std::to_string(days) + " days",
        reader.path_of("temperatures"), "give one for all days, or one a day"));
  return air;
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  colony::WinterQuestion question{.bees = reader.number("bees", 500, 60000)};
  const Date start = reader.date("start"), end = reader.date("end");
  question.conductance_W_K = reader.number("conductance_W_K", 0.05, 20);
  question.brood_cells = reader.number_or("brood", 0, 60000, 0);
  const auto given = reader.list("temperatures", most_days);
  const int days = end - start + 1;
  if (days < 1 || days > most_days)
    reader.fail(bad_input("the last day is not within 400 days of the first", "$.end",
                          "give a later day, or a nearer one"));
  const std::vector<double> air = day_by_day(reader, given, std::clamp(days, 1, most_days));
  if (auto fault = reader.done()) return *std::move(fault);
  question.mean_air_C = air;
  const auto table = colony::WinterTables::from(tables["winter"]);
  if (!table) return table.problem();
  const colony::WinterNeed need = colony::winter_need(question, *table);
  const FactTable& rows = tables["winter"];
  const auto source = [&](const char* key) { return rows.find(key)->source; };
  return Json{
      {"honey_kg", {{"low", need.low_kg}, {"mid", need.mid_kg}, {"high", need.high_kg}}},
      {"by_rule",
       {{{"rule", "cluster_heat"}, {"honey_kg", need.cluster_heat_kg}, {"source", source("oxygen_at_1g")}},
        {{"rule", "per_bee"},
         {"honey_kg", need.per_bee_kg},
         {"source", "Harbo 1983: loss of stores per bee and day at three sizes, mild winter, no brood"}},
        {{"rule", "per_month_low"}, {"honey_kg", need.per_month_low_kg}, {"source", source("month_low_kg")}},
        {{"rule", "per_month_high"},
         {"honey_kg", need.per_month_high_kg},
         {"source", source("month_high_kg")}}}}};
}

}  // namespace

Calc winter_need_calc() {
  return {"winter-need", "honey that a colony uses over a cold time, by three published ways",
          input_schema,  output_schema,
          example,       run};
}

}  // namespace beegarth::garth
