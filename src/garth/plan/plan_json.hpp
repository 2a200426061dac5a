// A plan as JSON. Absent is absent, never null; numbers are finite; odds have four decimals.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "garth/plan/plan_names.hpp"
#include "work/plan.hpp"

namespace beegarth::garth {

nlohmann::json plan_json(const work::Plan& plan, const PlanNames& names);

// Whether some job of the visit opens a hive: only then do the odds of fit hours matter.
bool opens_a_hive(const work::Visit& visit);

// The load of the car: what all jobs ask for, things of one kind added up.
std::vector<std::string> load_of(const work::Visit& visit);

// [{text, entries[], sources[]}]
nlohmann::json reasons_json(const std::vector<facts::Reason>& reasons);

// "11:30"; the nearest minute.
std::string clock_text(double local_hour);

}  // namespace beegarth::garth
