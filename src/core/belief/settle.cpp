#include "belief/settle.hpp"

#include <algorithm>
#include <cmath>

#include "belief/moves.hpp"
#include "belief/pareto.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// As when entries are let in: fewer members with weight than this share call for moves.
constexpr double resample_below = 0.3;

std::vector<double> log_ratios(const Members& members, const Neighbours& neighbours) {
  std::vector<SharedCoordinates> shared;
  const std::size_t n = members.coordinates.size() / dims;
  shared.reserve(n);
  for (std::size_t i = 0; i < n; ++i) shared.push_back(shared_of(members.at(static_cast<int>(i))));
  return neighbours.log_ratios(shared);
}

std::vector<double> logs_of(std::span<const double> weights) {
  std::vector<double> logs;
  logs.reserve(weights.size());
  for (const double weight : weights) logs.push_back(std::log(std::max(weight, 1e-300)));
  return logs;
}

// The odds of everything seen, and of a share of what the neighbours say.
std::vector<double> log_target(const Members& members, const Neighbours& neighbours, double share) {
  std::vector<double> sum = log_ratios(members, neighbours);
  for (double& log : sum) log *= share;
  for (const auto& logs : members.log_seen) {
    for (std::size_t i = 0; i < logs.size(); ++i) sum[i] += logs[i];
  }
  return sum;
}

std::vector<double> weighed(std::span<const double> weights, std::span<const double> ratios) {
  std::vector<double> result(weights.begin(), weights.end());
  double sum = 0;
  for (std::size_t i = 0; i < result.size(); ++i) {
    result[i] *= ratios[i];
    sum += result[i];
  }
  for (double& weight : result) weight /= sum;
  return result;
}

}  // namespace

Settled settle(Fitted& fitted, const Setting& setting, const Neighbours& neighbours) {
  constexpr double trusted = 0.7;  // k of the tail: Vehtari et al. 2024
  std::vector<double> logs = log_ratios(fitted.members, neighbours);
  const SmoothedWeights ratios = pareto_smoothed(logs);
  std::vector<double> weights = weighed(fitted.weights, ratios.weights);
  if (ratios.shape <= trusted && effective_sample_size(weights) >= resample_below * setting.members) {
    fitted.weights = std::move(weights);
    return Settled::weighed;
  }
  MoveTally tally{.sweeps = fitted.sweeps};
  const auto move = [&](double share) {
    move_all(
        fitted.members, setting, setting.sweeps,
        [&](const Members& members) { return log_target(members, neighbours, share); }, fitted.next_luck,
        tally);
    return log_ratios(fitted.members, neighbours);
  };
  Stream shared({.seed = setting.seed,
                 .colony = setting.colony,
                 .day = setting.today + 1,  // no morning of the fit
                 .purpose = Purpose::resample});
  const Crowd crowd{[&](std::span<const int> ancestors) { become(fitted.members, setting, ancestors); }, move,
                    [&] { return shared.uniform(); }};
  std::vector<double> log_weights = logs_of(fitted.weights);
  const Assimilated step = assimilate(log_weights, logs, crowd, {.resample_below = resample_below});
  fitted.sweeps = tally.sweeps;
  fitted.weights = normalised(log_weights);
  return step.reconciled ? Settled::moved : Settled::not_at_all;
}

}  // namespace beegarth::belief
