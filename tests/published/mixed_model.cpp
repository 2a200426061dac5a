// Estimates from records of kin, against a worked example of a textbook.
#include "lines/mixed_model.hpp"

#include <gtest/gtest.h>

#include <array>
#include <optional>

namespace beegarth {
namespace {

// Relationship of animals with two parents each, by the tabular method: the example is not of bees.
lines::Square relationship(const std::vector<std::array<int, 2>>& parents) {
  const std::size_t n = parents.size();
  lines::Square a{n, std::vector<double>(n * n)};
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      for (const int parent : parents[i])
        if (parent > 0) a.at(i, j) += 0.5 * a.at(static_cast<std::size_t>(parent - 1), j);
      a.at(j, i) = a.at(i, j);
    }
    const auto [sire, dam] = parents[i];
    const double between =
        sire > 0 && dam > 0 ? a.at(static_cast<std::size_t>(sire - 1), static_cast<std::size_t>(dam - 1)) : 0;
    a.at(i, i) = 1 + 0.5 * between;
  }
  return a;
}

// Mrode, Linear Models for the Prediction of Animal Breeding Values, example of the animal model: gain of
// five calves, residual variance 40, additive variance 20, sex as the only fixed effect (from memory, with
// the data).
TEST(MixedModel, is_that_of_the_textbooks_five_calves) {
  const auto a = relationship({{0, 0}, {0, 0}, {0, 0}, {1, 0}, {3, 2}, {1, 2}, {4, 5}, {3, 6}});
  constexpr std::size_t male = 0, female = 1;
  const std::vector<lines::Record> records{
      {3, male, 4.5}, {4, female, 2.9}, {5, female, 3.9}, {6, male, 3.5}, {7, male, 5.0}};
  const auto model = lines::solve_mixed_model(a, records, 20.0 / 60.0);
  constexpr double last_place = 0.001;  // printed to three places, of which the last is not always rounded
  ASSERT_EQ(model.group_means.size(), 2U);
  EXPECT_NEAR(model.group_means[male], 4.358, last_place);
  EXPECT_NEAR(model.group_means[female], 3.404, last_place);
  const double effects[] = {0.098, -0.019, -0.041, -0.009, -0.186, 0.177, -0.249, 0.183};
  for (std::size_t i = 0; i < std::size(effects); ++i)
    EXPECT_NEAR(model.individuals[i].estimate, effects[i], last_place) << "animal " << i + 1;
  // 1 less twice a diagonal printed to three places. That of the eighth is not remembered for certain.
  const double reliabilities[] = {0.058, 0.016, 0.087, 0.144, 0.144, 0.116, 0.116};
  for (std::size_t i = 0; i < std::size(reliabilities); ++i)
    EXPECT_NEAR(model.individuals[i].reliability, reliabilities[i], 2 * 0.0005) << "animal " << i + 1;
}

}  // namespace
}  // namespace beegarth
