#include "belief/proposal.hpp"

#include <cmath>

#include "belief/cholesky.hpp"

namespace beegarth::belief {

CrowdNormal::CrowdNormal(std::span<const double> coordinates, int width, std::span<const double> weights)
    : mean_(static_cast<std::size_t>(width), 0.0),
      variance_(mean_),
      lower_(mean_.size() * mean_.size(), 0.0) {
  const std::size_t d = mean_.size();
  for (std::size_t i = 0; i < weights.size(); ++i) {
    for (std::size_t k = 0; k < d; ++k) mean_[k] += weights[i] * coordinates[i * d + k];
  }
  for (std::size_t i = 0; i < weights.size(); ++i) {
    for (std::size_t k = 0; k < d; ++k) {
      const double at_k = coordinates[i * d + k] - mean_[k];
      for (std::size_t l = 0; l <= k; ++l)
        lower_[k * d + l] += weights[i] * at_k * (coordinates[i * d + l] - mean_[l]);
    }
  }
  for (std::size_t k = 0; k < d; ++k) {
    variance_[k] = lower_[k * d + k];
    // Correlations shrunk a little and spreads lifted a little: the crowd is finite and must not close in on
    // itself.
    for (std::size_t l = 0; l < k; ++l) lower_[k * d + l] *= 0.9;
    lower_[k * d + k] = 1.1 * lower_[k * d + k] + 1e-4;
  }
  factor_in_place(lower_, width);
}

void CrowdNormal::step(std::span<const double> from, double size, Stream& stream,
                       std::span<double> to) const {
  const std::size_t d = mean_.size();
  std::vector<double> xi(d);
  for (double& x : xi) x = stream.normal();
  const double keep = std::sqrt(1 - size * size);
  for (std::size_t k = 0; k < d; ++k) {
    double shift = 0;
    for (std::size_t l = 0; l <= k; ++l) shift += lower_[k * d + l] * xi[l];
    to[k] = mean_[k] + keep * (from[k] - mean_[k]) + size * shift;
  }
}

double CrowdNormal::log_prior_over_fit(std::span<const double> at) const {
  const std::size_t d = mean_.size();
  std::vector<double> y(d);
  double fit = 0;
  double prior = 0;
  for (std::size_t k = 0; k < d; ++k) {
    double x = at[k] - mean_[k];
    for (std::size_t l = 0; l < k; ++l) x -= lower_[k * d + l] * y[l];
    y[k] = x / lower_[k * d + k];
    fit += y[k] * y[k];
    prior += at[k] * at[k];
  }
  return 0.5 * (fit - prior);
}

}  // namespace beegarth::belief
