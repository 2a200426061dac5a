// Importance weights whose tail is smoothed by a fitted Pareto distribution (Vehtari, Simpson, Gelman, Yao &
// Gabry 2024, "Pareto smoothed importance sampling"; the fit is that of Zhang & Stephens 2009).
#pragma once

#include <span>
#include <vector>

namespace beegarth::belief {

struct SmoothedWeights {
  std::vector<double> weights;  // normalised
  double shape = 0;             // k of the tail: above 0.7 the weights are not to be trusted
};

// `log_ratios` are the logarithms of the raw importance ratios.
SmoothedWeights pareto_smoothed(std::span<const double> log_ratios);

struct ParetoTail {
  double shape = 0;
  double scale = 1;
};
// Generalised Pareto distribution fitted to values above zero in ascending order.
ParetoTail fit_pareto(std::span<const double> ascending);

}  // namespace beegarth::belief
