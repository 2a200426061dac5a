// A choice told as visits with hours, and what is left undone with its reason and cost.
#pragma once

#include <string>
#include <vector>

#include "work/plan_program.hpp"

namespace beegarth::work {

std::vector<Visit> lay_out_visits(const PlanInput& input, const Roads& roads, const Sifted& sifted,
                                  const Model& model, const Choice& choice);

std::vector<Undone> tell_undone(const PlanInput& input, const Sifted& sifted, const Model& model,
                                const Choice& choice);

// "treat against varroa now" at Thrush: a job as another job's reason names it.
std::string told_shortly(const PlanInput& input, const facts::Need& need);

// One need that no choice was left for.
Undone undone_of(const facts::Need& need, std::string because, bool costs_nothing = false);

}  // namespace beegarth::work
