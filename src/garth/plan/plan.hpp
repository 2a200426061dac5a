// The main job: book → belief → needs → days.
#pragma once

#include <string>
#include <vector>

#include "facts/outlook.hpp"
#include "garth/beliefs/believe.hpp"
#include "garth/plan/plan_names.hpp"
#include "garth/session.hpp"
#include "work/plan.hpp"

namespace beegarth::garth {

struct PlanAnswer {
  work::Plan plan;
  work::PlanInput input;  // what it was made from, so that a week of the keeper's own can be scored alike
  std::vector<facts::Outlook> outlooks;
  std::vector<work::SiteFacts> sites;
  PlanNames names;
};

// The names of everything that stands in the book.
PlanNames names_of(const Session& session);

// days: 1..28.
Expected<PlanAnswer> plan_next_days(const Session& session, int days);

}  // namespace beegarth::garth
