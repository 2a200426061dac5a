#include "belief/event_odds.hpp"

#include <algorithm>
#include <boost/math/special_functions/beta.hpp>
#include <cmath>

#include "belief/cholesky.hpp"
#include "belief/kin.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {

TraitShare::TraitShare(std::span<const double> coordinates, int width, std::span<const double> weights)
    : dims_(width),
      effective_(effective_sample_size(weights)),
      weights_(weights.begin(), weights.end()),
      centred_(coordinates.begin(), coordinates.end()),
      cholesky_(static_cast<std::size_t>(width) * static_cast<std::size_t>(width), 0.0) {
  const auto d = static_cast<std::size_t>(width);
  std::vector<double> mean(d, 0.0);
  for (std::size_t i = 0; i < weights_.size(); ++i) {
    for (std::size_t k = 0; k < d; ++k) mean[k] += weights_[i] * centred_[i * d + k];
  }
  for (std::size_t i = 0; i < weights_.size(); ++i) {
    for (std::size_t k = 0; k < d; ++k) centred_[i * d + k] -= mean[k];
    for (std::size_t k = 0; k < d; ++k) {
      for (std::size_t l = 0; l <= k; ++l) {
        cholesky_[k * d + l] += weights_[i] * centred_[i * d + k] * centred_[i * d + l];
      }
    }
  }
  for (std::size_t k = 0; k < d; ++k)
    cholesky_[k * d + k] += 1e-3;  // ridge: coordinates have prior variance 1
  factor_in_place(cholesky_, width);
}

double TraitShare::explained(std::span<const double> happened) const {
  const auto d = static_cast<std::size_t>(dims_);
  if (effective_ <= 2.0 * dims_) return 0;  // too few members to tell
  double p = 0;
  for (std::size_t i = 0; i < weights_.size(); ++i) p += weights_[i] * happened[i];
  const double variance = p * (1 - p);
  if (variance < 1e-9) return 0;
  std::vector<double> covariance(d, 0.0);
  for (std::size_t i = 0; i < weights_.size(); ++i) {
    if (happened[i] == 0) continue;
    for (std::size_t k = 0; k < d; ++k) covariance[k] += weights_[i] * centred_[i * d + k];
  }
  double sum = 0;  // |L^-1 c|^2: the variance that the linear rule explains
  for (std::size_t k = 0; k < d; ++k) {
    double x = covariance[k];
    for (std::size_t l = 0; l < k; ++l) x -= cholesky_[k * d + l] * covariance[l];
    covariance[k] = x / cholesky_[k * d + k];
    sum += covariance[k] * covariance[k];
  }
  const double raw = std::clamp(sum / variance, 0.0, 1.0);
  return std::clamp(1 - (1 - raw) * (effective_ - 1) / (effective_ - dims_ - 1), 0.0, 1.0);
}

facts::Odds odds_with_interval(double p, double effective, double trait_share) {
  const double n = std::max(effective, 1.0);
  const double middle =
      (p * n + 0.5) / (n + 1);  // Jeffreys: an event that no member met is rare, not impossible
  const double share = std::clamp(1 / (n + 1) + trait_share, 1e-6, 0.95);
  const double strength = 1 / share - 1;
  const double a = middle * strength;
  const double b = (1 - middle) * strength;
  using namespace boost::math::policies;
  // Errors give numbers instead of exceptions; the clamp below makes them harmless.
  const policy<overflow_error<ignore_error>, evaluation_error<ignore_error>, underflow_error<ignore_error>,
               promote_double<false>>
      quiet;
  const double low = boost::math::ibeta_inv(a, b, 0.1, quiet);
  const double high = boost::math::ibeta_inv(a, b, 0.9, quiet);
  const double value = std::clamp(p, 0.0, 1.0);
  return {value, std::isfinite(low) ? std::clamp(low, 0.0, value) : 0.0,
          std::isfinite(high) ? std::clamp(high, value, 1.0) : 1.0};
}

double odds_by(std::span<const int> first_day, std::span<const double> weights, int day) {
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) {
    if (first_day[i] <= day) sum += weights[i];
  }
  return std::min(1.0, sum);
}

namespace {

// The number of independent members that would know a share of p as well as these do.
double effective_for(double p, const Weighted& members, std::span<const double> happened) {
  const double all = effective_sample_size(members.weights);
  const double error = share_error(members.weights, happened, members.family);
  const double variance = p * (1 - p);
  if (error * error * all <= variance || variance <= 0) return all;
  return variance / (error * error);
}

}  // namespace

std::vector<facts::Odds> odds_by_day(std::span<const int> first_day, const Weighted& members, int first,
                                     int last, const TraitShare& traits) {
  const std::span<const double> weights = members.weights;
  std::vector<facts::Odds> course;
  std::vector<double> happened(weights.size(), 0.0);
  double before = -1;
  for (int day = first; day <= last; ++day) {
    const double p = odds_by(first_day, weights, day);
    if (p == before) {
      course.push_back(course.back());
      continue;
    }
    for (std::size_t i = 0; i < weights.size(); ++i) happened[i] = first_day[i] <= day ? 1.0 : 0.0;
    course.push_back(odds_with_interval(p, effective_for(p, members, happened), traits.explained(happened)));
    before = p;
  }
  return course;
}

}  // namespace beegarth::belief
