// A plan for the terminal, at most a hundred columns wide, metric.
#pragma once

#include <string>

#include "garth/plan_names.hpp"
#include "work/plan.hpp"

namespace beegarth::garth {

std::string plan_text(const work::Plan& plan, const PlanNames& names);

// "Thu 5 June"
std::string short_date(Date date);
// "38 % (22-55)"; below one and above 99 per cent said as such.
std::string odds_text(const facts::Odds& odds);

}  // namespace beegarth::garth
