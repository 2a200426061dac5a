// A plan for the terminal, at most a hundred columns wide, metric.
#pragma once

#include <optional>
#include <string>

#include "garth/plan/plan_names.hpp"
#include "work/plan.hpp"

namespace beegarth::garth {

std::string plan_text(const work::Plan& plan, const PlanNames& names);

// Dates of the form 2026-05-22 as "22 May", with the year where it is another than `year`.
std::string human_dates(const std::string& text, int year);
// An entry that moved odds, in short: "look of 22 May".
std::string moved_by(const facts::Moved& moved, int year);
// "38 % (22-55)"; below one and above 99 per cent said as such.
std::string odds_text(const facts::Odds& odds);

}  // namespace beegarth::garth
