// forager-balance: how many hive bees and foragers a colony settles at, and how many foragers a day it can
// lose.
#include "colony/compartment.hpp"
#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

constexpr int most_days = 3650;
constexpr int usual_days = 365;
constexpr double most_bees = 1e6;
constexpr double dwindled = 1000;

Json nullable(Json schema) {
  return {{"oneOf", {std::move(schema), {{"type", "null"}}}}};
}

Json input_schema() {
  return object_schema(
      {{"laying_per_day", number_schema("eggs a day with all the bees she wants", 1, 10000)},
       {"half_laying_bees", number_schema("bees with which half of that is raised", 1, most_bees)},
       {"recruit_max_per_day",
        number_schema("share of hive bees that leave for the field where there are no foragers", 0.001, 5)},
       {"social_inhibition_per_day", number_schema("how strongly foragers hold others back", 0, 10)},
       {"forager_loss_per_day", number_schema("share of foragers lost a day", 0.0001, 10)},
       {"start_hive_bees", number_schema("with start_foragers: follow the colony from here", 0, most_bees)},
       {"start_foragers", number_schema("with start_hive_bees", 0, most_bees)},
       {"days",
        {{"type", "integer"},
         {"minimum", 1},
         {"maximum", most_days},
         {"description", "how long to follow it; 365 where absent"}}}},
      {"laying_per_day", "half_laying_bees", "recruit_max_per_day", "social_inhibition_per_day",
       "forager_loss_per_day"});
}

Json output_schema() {
  const Json day = object_schema({{"day", {{"type", "integer"}}},
                                  {"hive_bees", number_schema("at the end of the day", 0, 1e9)},
                                  {"foragers", number_schema("at the end of the day", 0, 1e9)}},
                                 {"day", "hive_bees", "foragers"});
  return object_schema(
      {{"ratio_foragers_to_hive", number_schema("where the colony settles", 0, 1e6)},
       {"hive_bees", number_schema("where the colony settles; 0 where it dwindles", 0, 1e9)},
       {"foragers", number_schema("where the colony settles; 0 where it dwindles", 0, 1e9)},
       {"critical_forager_loss_per_day",
        nullable(number_schema("above this the colony dwindles; null where no loss does that", 0, 1e6))},
       {"onset_age_days", number_schema("days as a hive bee before foraging", 0, 1e9)},
       {"trajectory", array_schema(day, most_days + 1)},
       {"days_until_below_1000",
        nullable(number_schema("null where not reached in the time", 0, most_days))}},
      {"ratio_foragers_to_hive", "hive_bees", "foragers", "critical_forager_loss_per_day", "onset_age_days"});
}

Json example() {
  return {{"laying_per_day", 2000},      {"half_laying_bees", 27000},
          {"recruit_max_per_day", 0.25}, {"social_inhibition_per_day", 0.75},
          {"forager_loss_per_day", 0.5}, {"start_hive_bees", 16000},
          {"start_foragers", 8000},      {"days", 120}};
}

Json trajectory_json(const std::vector<colony::Bees>& course) {
  Json days = Json::array();
  for (std::size_t day = 0; day < course.size(); ++day) {
    days.push_back({{"day", day}, {"hive_bees", course[day].hive}, {"foragers", course[day].foragers}});
  }
  return days;
}

Json or_null(std::optional<double> x) {
  return x ? Json(*x) : Json(nullptr);
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  const colony::ForagerBalance b{
      .laying_per_day = reader.number("laying_per_day", 1, 10000),
      .half_laying_bees = reader.number("half_laying_bees", 1, most_bees),
      .recruit_max_per_day = reader.number("recruit_max_per_day", 0.001, 5),
      .social_inhibition_per_day = reader.number("social_inhibition_per_day", 0, 10),
      .forager_loss_per_day = reader.number("forager_loss_per_day", 0.0001, 10)};
  const auto hive = reader.maybe_number("start_hive_bees", 0, most_bees);
  const auto foragers = reader.maybe_number("start_foragers", 0, most_bees);
  const auto days = reader.maybe_whole("days", 1, most_days);
  if (auto fault = reader.done()) return *std::move(fault);
  if (hive.has_value() != foragers.has_value() || (days && !hive)) {
    const char* missing = hive ? "$.start_foragers" : "$.start_hive_bees";
    return bad_input("the start needs both hive bees and foragers", missing,
                     "give both, or neither and no days");
  }
  const colony::Bees settled = colony::balance_of(b);
  Json out{{"ratio_foragers_to_hive", colony::foragers_per_hive_bee(b)},
           {"hive_bees", settled.hive},
           {"foragers", settled.foragers},
           {"critical_forager_loss_per_day", or_null(colony::critical_forager_loss(b))},
           {"onset_age_days", colony::onset_age_days(b)}};
  if (hive) {
    const colony::Bees start{*hive, *foragers};
    const int span = days.value_or(usual_days);
    out["trajectory"] = trajectory_json(colony::course_of(b, start, span));
    out["days_until_below_1000"] = or_null(colony::days_until_below(b, start, dwindled, span));
  }
  return out;
}

}  // namespace

Calc forager_balance_calc() {
  return {"forager-balance", "hive bees and foragers in balance, and the loss of foragers a colony can bear",
          input_schema,      output_schema,
          example,           run};
}

}  // namespace beegarth::garth
