// A choice told as visits with hours, and what is left undone with its reason and cost.
#pragma once

#include <vector>

#include "work/plan_program.hpp"

namespace beegarth::work {

std::vector<Visit> lay_out_visits(const PlanInput& input, const Roads& roads, const Sifted& sifted,
                                  const Model& model, const Choice& choice);

std::vector<Undone> tell_undone(const PlanInput& input, const Sifted& sifted, const Model& model,
                                const Choice& choice);

// One need that no choice was left for.
Undone undone_of(const facts::Need& need, std::string because, bool costs_nothing = false);

}  // namespace beegarth::work
