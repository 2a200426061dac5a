// A plan for the terminal, at most a hundred columns wide, metric.
#pragma once

#include <optional>
#include <string>

#include "garth/plan_names.hpp"
#include "work/plan.hpp"

namespace beegarth::garth {

std::string plan_text(const work::Plan& plan, const PlanNames& names);

// Dates of the form 2026-05-22 as "22 May", with the year where it is another than `year`.
std::string human_dates(const std::string& text, int year);
// The entry that a reason says has moved the odds, in short: "look of 22 May". Nothing where it says
// something else.
std::optional<std::string> moved_by(const std::string& reason, int year);
// "Thu 5 June"
std::string short_date(Date date);
// "38 % (22-55)"; below one and above 99 per cent said as such.
std::string odds_text(const facts::Odds& odds);

}  // namespace beegarth::garth
