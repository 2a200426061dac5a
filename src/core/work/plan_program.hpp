// The model as a mixed-integer program, and its answer read back.
#pragma once

#include <optional>
#include <vector>

#include "work/plan_model.hpp"

namespace beegarth::work {

struct Choice {
  std::vector<std::optional<int>> option_of_job;  // index into Job::options
  std::vector<int> rounds;                        // indices into Model::rounds, by day
  double value = 0;                               // expected loss and effort, what is left undone included
  double bound = 0;
  bool proven = false;
  bool found = false;
};

Choice choose(const Model& model, const MipSolver& solve);

// The same sum, worked out from a choice.
double value_of(const Model& model, const std::vector<std::optional<int>>& option_of_job,
                const std::vector<int>& rounds);

}  // namespace beegarth::work
