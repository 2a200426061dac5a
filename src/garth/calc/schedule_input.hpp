// What `calc schedule` is asked, read from JSON.
#pragma once

#include "garth/calc/calc.hpp"
#include "garth/plan/plan_names.hpp"
#include "work/plan.hpp"

namespace beegarth::garth {

struct ScheduleAsked {
  work::PlanInput plan;
  PlanNames names;
  std::vector<work::OwnJob> own;  // the keeper's own week
  bool weather_given = false;
};

Json schedule_input();  // its schema
Expected<ScheduleAsked> read_schedule(const Json& input, const Tables& tables);

}  // namespace beegarth::garth
