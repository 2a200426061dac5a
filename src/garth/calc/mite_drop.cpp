// mite-drop: what a count on the board says of the fall per day, and what published rules make of it.
#include <array>

#include "colony/mite_counts.hpp"
#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

struct Rule {
  std::string_view name;
  colony::BoardRule rule;
};
constexpr std::array<Rule, 3> rules{{{"season_factors", colony::BoardRule::season_factors},
                                     {"flat_300", colony::BoardRule::flat_300},
                                     {"flat_100", colony::BoardRule::flat_100}}};

Json input_schema() {
  return object_schema(
      {{"mites", {{"type", "integer"}, {"minimum", 0}, {"maximum", 100000}, {"description", "counted"}}},
       {"days", number_schema("that the board lay", 0.1, 60)},
       {"board_share_counted", number_schema("share of the board counted; 1 where absent", 0.01, 1)},
       {"date", {{"type", "string"}, {"format", "date"}, {"description", "of the count"}}},
       {"latitude_deg", number_schema("north positive; months shift by six in the south", -90, 90)},
       {"rule", {{"enum", {"season_factors", "flat_300", "flat_100"}}, {"description", "all where absent"}}}},
      {"mites", "days", "date", "latitude_deg"});
}

Json output_schema() {
  const Json interval = object_schema({{"low", number_schema("exact Poisson 95 %", 0, 1e9)},
                                       {"mid", number_schema("as counted", 0, 1e9)},
                                       {"high", number_schema("exact Poisson 95 %", 0, 1e9)}},
                                      {"low", "mid", "high"});
  const Json total = object_schema({{"rule", {{"type", "string"}}},
                                    {"mites", number_schema("in the colony, by this rule", 0, 1e12)},
                                    {"source", {{"type", "string"}}}},
                                   {"rule", "mites", "source"});
  return object_schema({{"per_day", interval}, {"total_by_rule", array_schema(total, rules.size())}},
                       {"per_day", "total_by_rule"});
}

Json example() {
  return {{"mites", 30}, {"days", 3}, {"date", "2026-07-10"}, {"latitude_deg", 52}};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const int mites = reader.whole("mites", 0, 100000);
  const double days = reader.number("days", 0.1, 60);
  const double share = reader.number_or("board_share_counted", 0.01, 1, 1);
  const Date date = reader.date("date");
  const double latitude = reader.number("latitude_deg", -90, 90);
  const auto chosen = reader.maybe_choice("rule", {"season_factors", "flat_300", "flat_100"});
  if (auto fault = reader.done()) return *std::move(fault);
  const colony::Interval per_day = colony::poisson_interval(mites, 1 / (days * share));
  Json totals = Json::array();
  for (const Rule& rule : rules) {
    if (chosen && *chosen != rule.name) continue;
    const auto total = colony::total_from_board(per_day.mid, rule.rule, date, latitude, tables["mites"]);
    if (!total) return total.problem();
    totals.push_back({{"rule", rule.name}, {"mites", total->mites}, {"source", total->source}});
  }
  return Json{{"per_day", {{"low", per_day.low}, {"mid", per_day.mid}, {"high", per_day.high}}},
              {"total_by_rule", std::move(totals)}};
}

}  // namespace

Calc mite_drop_calc() {
  return {"mite-drop",
          "mites a day on the board with their interval, and the totals that published rules make of it",
          input_schema,
          output_schema,
          example,
          run};
}

}  // namespace beegarth::garth
