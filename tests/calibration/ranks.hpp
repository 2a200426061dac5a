// Are ranks uniform? Talts, Betancourt, Simpson, Vehtari & Gelman 2018 (arXiv 1804.06788): a truth drawn from
// the prior has, among draws from the posterior given what it led to, a uniform rank. The band about the
// distribution function of the ranks holds at all points together: Säilynoja, Bürkner & Vehtari 2022,
// Statistics and Computing 32:32, here found by simulation with fixed seeds.
#pragma once

#include <algorithm>
#include <boost/math/distributions/binomial.hpp>
#include <vector>

#include "base/random.hpp"

namespace beegarth::calibration {

// What truly uniform ranks 0..draws of so many cases would do.
class UniformRanks {
 public:
  UniformRanks(int cases, int draws, int simulations, std::uint64_t seed) : cases_(cases), draws_(draws) {
    const auto rows = static_cast<std::size_t>(draws);
    const auto width = static_cast<std::size_t>(cases) + 1;
    tails_.resize(rows * width);
    for (std::size_t point = 0; point < rows; ++point) {
      const boost::math::binomial_distribution<> below(cases, static_cast<double>(point + 1) / (draws + 1));
      for (std::size_t count = 0; count < width; ++count) {
        const auto k = static_cast<double>(count);
        const double at_most = boost::math::cdf(below, k);
        const double at_least = count == 0 ? 1.0 : boost::math::cdf(boost::math::complement(below, k - 1));
        tails_[point * width + count] = std::min(1.0, 2 * std::min(at_most, at_least));
      }
    }
    std::vector<int> ranks(static_cast<std::size_t>(cases));
    for (int s = 0; s < simulations; ++s) {
      Stream stream(
          {.seed = seed, .member = static_cast<std::uint32_t>(s), .purpose = Purpose::synthetic_truth});
      for (int& rank : ranks) {
        rank = static_cast<int>(
            (static_cast<std::uint64_t>(stream.word()) * static_cast<std::uint64_t>(draws + 1)) >> 32);
      }
      simulated_.push_back(least_tail(ranks));
    }
    std::sort(simulated_.begin(), simulated_.end());
  }

  // How often uniform ranks lie somewhere as far outside as these do: the band of level 1 - a holds ranks
  // whose odds are above a.
  double odds_of(const std::vector<int>& ranks) const {
    const double least = least_tail(ranks);
    const auto as_far = std::upper_bound(simulated_.begin(), simulated_.end(), least) - simulated_.begin();
    return static_cast<double>(as_far) / static_cast<double>(simulated_.size());
  }

 private:
  // The smallest two-sided binomial tail of the distribution function at any of its points.
  double least_tail(const std::vector<int>& ranks) const {
    std::vector<int> at(static_cast<std::size_t>(draws_) + 1);
    for (const int rank : ranks) ++at[static_cast<std::size_t>(rank)];
    double least = 1;
    std::size_t below = 0;
    for (std::size_t point = 0; point < static_cast<std::size_t>(draws_); ++point) {
      below += static_cast<std::size_t>(at[point]);
      least = std::min(least, tails_[point * (static_cast<std::size_t>(cases_) + 1) + below]);
    }
    return least;
  }

  int cases_;
  int draws_;
  std::vector<double> tails_;  // [point][count below it]
  std::vector<double> simulated_;
};

// The hits that a fair share of `level` leaves room for with odds of 1 - `outside`: exact, of the binomial.
struct Room {
  int least = 0;
  int most = 0;
  bool holds(int hits) const { return hits >= least && hits <= most; }
};
inline Room room_for(int cases, double level, double outside) {
  const boost::math::binomial_distribution<> hits(cases, level);
  Room room{cases, 0};
  for (int k = 0; k <= cases; ++k) {
    const bool too_few = boost::math::cdf(hits, k) < outside / 2;
    const bool too_many = k > 0 && boost::math::cdf(boost::math::complement(hits, k - 1)) < outside / 2;
    if (too_few || too_many) continue;
    room.least = std::min(room.least, k);
    room.most = std::max(room.most, k);
  }
  return room;
}

}  // namespace beegarth::calibration
