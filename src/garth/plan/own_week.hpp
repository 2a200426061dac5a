// The keeper's own week, scored by the same code as the plan.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>
#include <vector>

#include "garth/plan/plan.hpp"

namespace beegarth::garth {

// Reads lines as plan_lines() writes them: a day, the key of a need, and after # whatever one likes.
Expected<std::vector<work::OwnJob>> own_jobs(std::string_view lines);

struct OwnWeek {
  work::Plan plan;  // the same needs, each on the day on which the keeper means to do it
  double costs_more =
      0;  // than the plan, in the unit of loss (kg honey); 0 or more where that is proven best
  std::vector<std::string> left_out;  // in words: what the plan does and the week does not
};

Expected<OwnWeek> own_week(const PlanAnswer& answer, const std::vector<work::OwnJob>& own);

nlohmann::json own_week_json(const OwnWeek& week, const PlanNames& names);
std::string own_week_text(const OwnWeek& week, const PlanNames& names);

}  // namespace beegarth::garth
