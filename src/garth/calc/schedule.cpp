// schedule: needs put into days, without a book: what `plan` does once it knows what is wanted.
#include <algorithm>
#include <set>

#include "garth/calc/schedule_input.hpp"
#include "garth/plan/mip_cbc.hpp"
#include "garth/plan/plan_json.hpp"

namespace beegarth::garth {
namespace {

Json output_schema() {
  const Json list{{"type", "array"}, {"items", {{"type", "object"}}}};
  return object_schema(
      {{"from", date_schema("first day")},
       {"to", date_schema("last day")},
       {"visits", list},
       {"at_home", list},
       {"undone", list},
       {"expected_loss",
        number_schema("in the unit of the needs, the keeper's time and way included", 0, 1e12)},
       {"bound", number_schema("no plan over these choices costs less", -1e12, 1e12)},
       {"gap", number_schema("expected_loss less bound", 0, 1e12)},
       {"own", {{"type", "object"}, {"description", "the week of one's own, as the plan is told"}}},
       {"own_costs_more", number_schema("than the plan", 0, 1e12)},
       {"proven_optimal", flag_schema("no plan over these choices is better")},
       {"remarks", {{"type", "array"}, {"items", {{"type", "string"}}}}}},
      {"from", "to", "visits", "at_home", "undone", "expected_loss", "bound", "gap", "proven_optimal",
       "remarks"});
}

Json example() {
  return Json::parse(R"({
    "from": "2026-06-03",
    "sites": [{"site": "bank", "name": "Bank"}, {"site": "yard", "name": "Yard"}],
    "travel": [{"from": "home", "to": "bank", "minutes": 15}, {"from": "home", "to": "yard", "minutes": 8}],
    "colonies": [{"colony": "ash", "name": "Ash", "site": "bank"}, {"colony": "birch", "name": "Birch", "site": "yard"}],
    "needs": [
      {"key": "look/ash", "what": "look for queen cells", "site": "bank", "colony": "ash", "minutes": 25,
       "latest": "2026-06-06", "loss": {"by_day": [0.2, 0.9, 2.0, 3.5], "never": 6}},
      {"key": "feed/birch", "what": "feed", "site": "yard", "colony": "birch", "minutes": 10, "clock": "dusk",
       "latest": "2026-06-06", "loss": {"by_day": [0, 0.5, 1, 2], "never": 4}}],
    "days": [{"start_hour": 17, "end_hour": 21}, {"start_hour": 10, "end_hour": 10},
             {"start_hour": 17, "end_hour": 21}, {"start_hour": 10, "end_hour": 16}]})");
}

Expected<Json> run(const Json& input, const Tables& tables) {
  auto asked = read_schedule(input, tables);
  if (!asked) return asked.problem();
  auto plan = work::plan_days(asked->plan, cbc_solver());
  if (!plan) return plan.problem();
  Json answer = plan_json(*plan, asked->names);
  if (!asked->weather_given)
    answer["remarks"].push_back("no weather was given: mild days, fit for opening as long as it is light");
  if (!asked->own.empty()) {
    const auto own = work::plan_own(asked->plan, asked->own, cbc_solver());
    if (!own) return bad_input(own.problem().what, "$.own", own.problem().remedy);
    answer["own"] = plan_json(*own, asked->names);
    answer["own_costs_more"] = std::max(0.0, own->expected_loss - plan->expected_loss);
  }
  answer["gap"] = std::max(0.0, answer["expected_loss"].get<double>() - answer["bound"].get<double>());
  return answer;
}

}  // namespace

Calc schedule_calc() {
  return {"schedule",     "needs put into days: rounds, what is left undone, and what that costs",
          schedule_input, output_schema,
          example,        run};
}

}  // namespace beegarth::garth
