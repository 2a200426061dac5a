// What makes a question one that can be answered.
#pragma once

#include <optional>

#include "base/problem.hpp"
#include "work/rounds/orienteering.hpp"

namespace beegarth::work::rounds {

std::optional<Problem> fault_in(const Question& question);  // the first found; `where` names the field

}  // namespace beegarth::work::rounds
