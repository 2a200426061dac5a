#include "belief/common_draws.hpp"

#include <algorithm>
#include <boost/math/special_functions/erf.hpp>
#include <cmath>
#include <numbers>

#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// The grid of a site, the same on both axes.
constexpr int grid_points = 13;
constexpr int grid_middle = grid_points / 2;
constexpr std::size_t grid_size = std::size_t{grid_points} * grid_points;
constexpr double grid_step = 0.5;
double grid_at(int i) {
  return (i - grid_middle) * grid_step;
}
constexpr std::size_t keeper_draws = 128;

// log N(z; sqrt(s) u, 1 - s) / N(z; 0, 1), for one z and many u.
class LogRatio {
 public:
  LogRatio(double z, double s) : z_(z), root_(std::sqrt(s)), precision_(0.5 / (1 - s)) {
    constant_ = 0.5 * (z * z - std::log1p(-s));
  }
  double at(double u) const {
    const double off = z_ - root_ * u;
    return constant_ - precision_ * off * off;
  }

 private:
  double z_, root_, precision_;
  double constant_ = 0;
};

double normal_quantile(double p) {
  return std::numbers::sqrt2 * boost::math::erf_inv(2 * p - 1);
}

// Evenly spread points in the unit cube: k times the powers of the root of x^5 = x + 1, without the whole
// part.
std::array<double, keeper_shared> spread_point(std::size_t k) {
  constexpr double root = 1.1673039782614187;  // real root of x^5 = x + 1
  std::array<double, keeper_shared> point{};
  double power = 1;
  for (double& x : point) {
    power /= root;
    const double at = 0.5 + power * static_cast<double>(k + 1);
    x = at - std::floor(at);
  }
  return point;
}

// What the crowds together point at, as a normal: precisions and means of their normals over the prior's add
// up.
struct Pointed {
  double mean = 0;
  double sd = 1;
};
Pointed pointed_at(std::span<const Witness* const> witnesses, std::size_t d, double s) {
  double precision = 0;
  double pull = 0;
  for (const Witness* one : witnesses) {
    double mean = 0;
    double square = 0;
    for (std::size_t i = 0; i < one->weights.size(); ++i) {
      const double z = one->shared[i].keeper[d];
      mean += one->weights[i] * z;
      square += one->weights[i] * z * z;
    }
    const double variance = 1 - s + s * std::max(0.0, square - mean * mean);  // of what is common
    precision += std::max(0.0, 1 / variance - 1);
    pull += std::sqrt(s) * mean / variance;
  }
  // Each hears the others only: one voice fewer, on average.
  const auto voices = static_cast<double>(witnesses.size());
  const double share = voices > 0 ? (voices - 1) / voices : 0.0;
  constexpr double wider = 1.4;
  return {pull / (1 + precision), std::min(1.0, wider / std::sqrt(1 + share * precision))};
}

// The draws that have any odds left to speak of: most have hardly any, and a millionth of the best is
// nothing.
struct Likely {
  std::vector<std::size_t> sites, keepers;
  std::vector<float> odds;  // [site * keepers + keeper] of these

  Likely(std::span<const double> all, std::size_t keeper_count) {
    const double least = 1e-6 * *std::max_element(all.begin(), all.end());
    std::vector<bool> row(all.size() / keeper_count), column(keeper_count);
    for (std::size_t i = 0; i < all.size(); ++i) {
      if (all[i] > least) row[i / keeper_count] = column[i % keeper_count] = true;
    }
    for (std::size_t j = 0; j < row.size(); ++j)
      if (row[j]) sites.push_back(j);
    for (std::size_t k = 0; k < keeper_count; ++k)
      if (column[k]) keepers.push_back(k);
    for (const std::size_t j : sites)
      for (const std::size_t k : keepers) odds.push_back(static_cast<float>(all[j * keeper_count + k]));
  }
};

}  // namespace

CommonDraws::CommonDraws(const SharedPrior& prior, std::span<const Witness* const> of_keeper)
    : prior_(prior) {
  std::array<Pointed, keeper_shared> at;
  for (std::size_t d = 0; d < keeper_shared; ++d) at[d] = pointed_at(of_keeper, d, prior.keeper[d]);
  for (std::size_t k = 0; k < keeper_draws; ++k) {
    Keeper draw = spread_point(k);
    double log_weight = 0;
    for (std::size_t d = 0; d < keeper_shared; ++d) {
      const double score = normal_quantile(draw[d]);
      draw[d] = at[d].mean + at[d].sd * score;
      log_weight += 0.5 * (score * score - draw[d] * draw[d]) + std::log(at[d].sd);
    }
    keeper_.push_back(draw);
    log_keeper_.push_back(log_weight - std::log(static_cast<double>(keeper_draws)));
  }
}

std::vector<double> CommonDraws::log_prior(bool at_site) const {
  if (!at_site) return log_keeper_;
  std::vector<double> all;
  all.reserve(grid_size * keeper_.size());
  for (int i = 0; i < grid_points; ++i) {
    for (int j = 0; j < grid_points; ++j) {
      const double square = grid_at(i) * grid_at(i) + grid_at(j) * grid_at(j);
      const double site = -0.5 * square + 2 * std::log(grid_step) - std::log(2 * std::numbers::pi);
      for (const double keeper : log_keeper_) all.push_back(site + keeper);
    }
  }
  return all;
}

void CommonDraws::site_ratios(const SharedCoordinates& member, bool at_site, std::vector<double>& to) const {
  to.clear();
  if (!at_site) {
    to.push_back(1);
    return;
  }
  std::array<std::array<double, grid_points>, site_shared> each;
  for (std::size_t d = 0; d < site_shared; ++d) {
    const LogRatio ratio(member.site[d], prior_.site[d]);
    for (int i = 0; i < grid_points; ++i)
      each[d][static_cast<std::size_t>(i)] = std::exp(ratio.at(grid_at(i)));
  }
  for (const double first : each[0]) {
    for (const double second : each[1]) to.push_back(first * second);
  }
}

void CommonDraws::keeper_ratios(const SharedCoordinates& member, std::vector<double>& to) const {
  to.assign(keeper_.size(), 0.0);
  for (std::size_t d = 0; d < keeper_shared; ++d) {
    const LogRatio ratio(member.keeper[d], prior_.keeper[d]);
    for (std::size_t k = 0; k < to.size(); ++k) to[k] += ratio.at(keeper_[k][d]);
  }
  for (double& log : to) log = std::exp(log);
}

std::vector<double> CommonDraws::log_evidence(const Witness& witness, bool at_site) const {
  const std::size_t keepers = keeper_.size();
  const std::size_t sites = at_site ? grid_size : 1;
  std::vector<double> sum(sites * keepers, 0.0);
  std::vector<double> site;
  std::vector<double> keeper;
  for (std::size_t i = 0; i < witness.weights.size(); ++i) {
    if (witness.weights[i] <= 0) continue;
    site_ratios(witness.shared[i], at_site, site);
    keeper_ratios(witness.shared[i], keeper);
    for (std::size_t j = 0; j < sites; ++j) {
      const double part = witness.weights[i] * site[j];
      double* row = sum.data() + j * keepers;
      for (std::size_t k = 0; k < keepers; ++k) row[k] += part * keeper[k];
    }
  }
  const double effective = effective_sample_size(witness.weights);
  for (double& value : sum) value = std::log((effective * value + 1) / (effective + 1));
  return sum;
}

std::vector<double> CommonDraws::over_site(std::span<const double> logs) const {
  const std::size_t keepers = keeper_.size();
  const std::vector<double> prior = log_prior(true);
  std::vector<double> result(keepers);
  std::vector<double> column(logs.size() / keepers);
  for (std::size_t k = 0; k < keepers; ++k) {
    for (std::size_t j = 0; j < column.size(); ++j)
      column[j] = prior[j * keepers + k] - log_keeper_[k] + logs[j * keepers + k];
    result[k] = log_sum_exp(column);
  }
  return result;
}

std::vector<double> CommonDraws::log_ratios(std::span<const SharedCoordinates> members, bool at_site,
                                            std::span<const double> odds) const {
  const Likely likely(odds, keeper_.size());
  std::vector<double> logs;
  logs.reserve(members.size());
  std::vector<double> site;
  std::vector<double> keeper;
  std::vector<float> by_keeper(likely.keepers.size());
  for (const SharedCoordinates& member : members) {
    site_ratios(member, at_site, site);
    keeper_ratios(member, keeper);
    std::fill(by_keeper.begin(), by_keeper.end(), 0.0F);
    const float* row = likely.odds.data();
    for (const std::size_t j : likely.sites) {
      const auto at_j = static_cast<float>(site[j]);
      for (std::size_t k = 0; k < by_keeper.size(); ++k) by_keeper[k] += at_j * row[k];
      row += by_keeper.size();
    }
    double sum = 0;
    for (std::size_t k = 0; k < by_keeper.size(); ++k)
      sum += static_cast<double>(by_keeper[k]) * keeper[likely.keepers[k]];
    logs.push_back(std::log(std::max(sum, 1e-300)));
  }
  return logs;
}

}  // namespace beegarth::belief
