// What one colony tells another through what they have in common, against the closed form for normals: a
// crowd that is normal about m with variance v was shown, on the scale of its standard normal prior, a figure
// m / (v l) of precision l = 1 / v - 1.
#include "belief/shared.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "base/random.hpp"

namespace beegarth::belief {
namespace {

constexpr int crowd = 4096;
constexpr SharedPrior prior{.site = {0.5, 0.3}, .keeper = {0.6, 0.6, 0.6, 0.4}};

Witness crowd_of(const char* name, const char* site, std::size_t entries) {
  Witness witness{ColonyId(name), SiteId(site), entries, {}, std::vector<double>(crowd, 1.0 / crowd)};
  for (std::uint32_t i = 0; i < crowd; ++i) {
    Stream luck({.seed = 7, .colony = stable_hash(name), .member = i, .purpose = Purpose::prior});
    SharedCoordinates one;
    for (double& z : one.site) z = luck.normal();
    for (double& z : one.keeper) z = luck.normal();
    witness.shared.push_back(one);
  }
  return witness;
}

struct Normal {
  double mean, variance;
};
template <class At>
void make_it(Witness& witness, const Normal& normal, const At& at) {
  for (SharedCoordinates& one : witness.shared) at(one) = normal.mean + std::sqrt(normal.variance) * at(one);
}
// Of a coordinate of a colony that was shown nothing, beside another that came to be `told`.
Normal expected_beside(const Normal& told, double s) {
  const double precision = 1 / told.variance - 1;
  const double shown = told.mean / (told.variance * precision);
  const double about_common = 1 / (1 - s + 1 / precision);  // of the figure, given what is common
  const double common_precision = 1 + s * about_common;
  const double common_mean = std::sqrt(s) * about_common * shown / common_precision;
  return {std::sqrt(s) * common_mean, 1 - s + s / common_precision};
}
template <class At>
Normal seen_beside(const Witness& witness, const Neighbours& neighbours, const At& at) {
  const std::vector<double> logs = neighbours.log_ratios(witness.shared);
  double sum = 0;
  double mean = 0;
  double square = 0;
  for (std::size_t i = 0; i < logs.size(); ++i) {
    const double weight = std::exp(logs[i]);
    const double z = at(witness.shared[i]);
    sum += weight;
    mean += weight * z;
    square += weight * z * z;
  }
  mean /= sum;
  return {mean, square / sum - mean * mean};
}
// Four standard errors of the crowd that teaches and of the one that hears, each of 4096 or a little fewer.
constexpr double room = 4 * 1.5 / 64;

const auto forage = [](auto& one) -> auto& {
  return one.site[0];
};
const auto stores = [](auto& one) -> auto& {
  return one.keeper[2];
};

TEST(Shared, what_a_neighbour_of_the_site_shows_comes_over_as_for_normals) {
  const Normal told{1.2, 0.25};
  std::vector<Witness> both{crowd_of("alder", "yard", 9), crowd_of("birch", "yard", 1)};
  make_it(both[0], told, forage);
  const auto heard = listen(both, prior);
  const Normal expected = expected_beside(told, prior.site[0]);
  const Normal seen = seen_beside(both[1], heard[1], forage);
  EXPECT_NEAR(seen.mean, expected.mean, room);
  EXPECT_NEAR(seen.variance, expected.variance, room);
  // What was not shown stays as it was, and the other, who hears of one that knows nothing, likewise.
  EXPECT_NEAR(seen_beside(both[1], heard[1], stores).mean, 0, room);
  const Normal untold = seen_beside(both[0], heard[0], forage);
  EXPECT_NEAR(untold.mean, told.mean, room);
  EXPECT_NEAR(untold.variance, told.variance, room);
}

TEST(Shared, at_another_site_only_the_keepers_ways_come_over) {
  const Normal told{-1, 0.3};
  std::vector<Witness> both{crowd_of("alder", "yard", 9), crowd_of("birch", "heath", 1)};
  make_it(both[0], told, forage);
  make_it(both[0], told, stores);
  const auto heard = listen(both, prior);
  EXPECT_NEAR(seen_beside(both[1], heard[1], forage).mean, 0, room);
  const Normal expected = expected_beside(told, prior.keeper[2]);
  const Normal seen = seen_beside(both[1], heard[1], stores);
  EXPECT_NEAR(seen.mean, expected.mean, room);
  EXPECT_NEAR(seen.variance, expected.variance, room);
}

TEST(Shared, many_that_agree_tell_more_than_one) {
  const Normal told{1, 0.4};
  std::vector<Witness> all{crowd_of("alder", "yard", 1)};
  for (const char* name : {"birch", "cedar", "elm", "fir"}) {
    all.push_back(crowd_of(name, "yard", 9));
    make_it(all.back(), told, forage);
  }
  const double one = seen_beside(all[0], listen({all.data(), 2}, prior)[0], forage).mean;
  const double four = seen_beside(all[0], listen(all, prior)[0], forage).mean;
  EXPECT_GT(four, one + room);
  EXPECT_LT(four, std::sqrt(prior.site[0]) * 2.0);
}

TEST(Shared, with_nobody_else_nothing_is_heard) {
  const std::vector<Witness> alone{crowd_of("alder", "yard", 9)};
  EXPECT_TRUE(listen(alone, prior)[0].silent());
  // Nor of one of whom nobody wrote.
  const std::vector<Witness> both{crowd_of("alder", "yard", 9), crowd_of("birch", "yard", 0)};
  EXPECT_TRUE(listen(both, prior)[0].silent());
  EXPECT_FALSE(listen(both, prior)[1].silent());
}

}  // namespace
}  // namespace beegarth::belief
