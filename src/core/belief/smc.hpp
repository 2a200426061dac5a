// Sequential Monte Carlo, without a word about bees: weights, tempering, resampling.
//
// A crowd of members stands for a distribution. An observation multiplies each member's weight by how likely
// it made what was seen. When that leaves too few members with weight, the observation is let in step by step
// (tempering), with a resampling and a move between the steps.
#pragma once

#include <functional>
#include <span>
#include <vector>

namespace beegarth::belief {

// log(sum(exp(x))), minus infinity for an empty span or where every x is.
double log_sum_exp(std::span<const double> logs);

// Weights that sum to one. Where every log weight is minus infinity, all weights are equal: the caller asks
// `all_impossible` first where it matters.
std::vector<double> normalised(std::span<const double> log_weights);
bool all_impossible(std::span<const double> logs);

// 1 / sum(w^2) of normalised weights (Kong, Liu & Wong 1994), from 1 to the number of members.
double effective_sample_size(std::span<const double> weights);

// Systematic resampling (Carpenter, Clifford & Fearnhead 1999): `count` indices, ascending, each member
// chosen floor(count w) or ceil(count w) times. `u` is one uniform draw in (0, 1).
std::vector<int> systematic_ancestors(std::span<const double> weights, double u, int count);

// The largest share in (0, 1] of the log likelihoods that can be let in with at least `wanted` effective
// members left, by bisection. Minus infinities count as zero weight at any share.
double tempered_share(std::span<const double> log_weights, std::span<const double> log_likelihoods,
                      double wanted);

// What an assimilation does to the crowd. `resample` replaces member i by member ancestors[i]. `move` shakes
// members without changing the distribution "so far times likelihood^share" and returns the new log
// likelihoods of all.
struct Crowd {
  std::function<void(std::span<const int> ancestors)> resample;
  std::function<std::vector<double>(double share)> move;
  std::function<double()> uniform;
};

struct Assimilated {
  double log_evidence = 0;  // estimate of log p(observation | earlier ones)
  double lowest_ess = 0;    // the smallest effective sample size met on the way
  int stages = 1;           // 1: let in at one go
  bool reconciled = true;   // false: no member could have made the observation; weights are as before
};

struct TemperingLimits {
  double resample_below = 0.5;  // share of the crowd
  int stages_max = 12;          // after these the rest is let in at one go
};

// Lets one observation in. `log_weights` (any scale) and `log_likelihoods` are updated in place.
Assimilated assimilate(std::vector<double>& log_weights, std::vector<double>& log_likelihoods,
                       const Crowd& crowd, const TemperingLimits& limits);

// Weighted quantile: the smallest value whose cumulated weight reaches `level`, interpolated between the
// midpoints of neighbouring weights. `order` sorts `values` ascending.
double weighted_quantile(std::span<const double> values, std::span<const double> weights,
                         std::span<const int> order, double level);
std::vector<int> ascending_order(std::span<const double> values);

}  // namespace beegarth::belief
