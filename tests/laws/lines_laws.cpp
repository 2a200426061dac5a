// Scores and choices of matings against slow and plain ways to the same.
#include <gtest/gtest.h>

#include <Eigen/Dense>
#include <cmath>
#include <limits>
#include <optional>

#include "lines/choose_matings.hpp"
#include "lines/mixed_model.hpp"
#include "reference/some_pedigree.hpp"

namespace beegarth {
namespace {

struct Trial {
  lines::Square relationship;
  std::vector<lines::Record> records;
  double share = 0.3;
};

Trial some_trial(std::uint64_t number) {
  reference::SomePedigree luck(number);
  const auto pedigree = lines::Pedigree::of(luck.queens(15));
  Trial trial{*lines::coancestry_table(*pedigree), {}, 0.1 + 0.05 * static_cast<double>(number % 16)};
  for (double& cell : trial.relationship.cells) cell *= 2;
  const std::size_t groups = 1 + number % 4;
  for (std::size_t i = 0; i < 30; ++i)
    trial.records.push_back({static_cast<std::size_t>(luck.below(15)),
                             i < groups ? i : static_cast<std::size_t>(luck.below(static_cast<int>(groups))),
                             luck.below(10) * 0.5});
  return trial;
}

// The direct way: covariance of all records, generalised least squares for the groups, best linear prediction
// for the individuals (Henderson 1975), with inverses written out.
TEST(ScoreLaws, TheEquationsGiveWhatGeneralisedLeastSquaresGives) {
  using Eigen::MatrixXd;
  using Eigen::VectorXd;
  for (std::uint64_t number = 1; number <= 60; ++number) {
    const Trial trial = some_trial(number);
    const auto model = lines::solve_mixed_model(trial.relationship, trial.records, trial.share);
    const auto n = static_cast<Eigen::Index>(trial.records.size());
    const auto q = static_cast<Eigen::Index>(trial.relationship.size);
    const auto g = static_cast<Eigen::Index>(model.group_means.size());
    MatrixXd a(q, q), x = MatrixXd::Zero(n, g), z = MatrixXd::Zero(n, q);
    VectorXd y(n);
    for (Eigen::Index i = 0; i < q; ++i)
      for (Eigen::Index j = 0; j < q; ++j)
        a(i, j) = trial.relationship.at(static_cast<std::size_t>(i), static_cast<std::size_t>(j));
    for (Eigen::Index i = 0; i < n; ++i) {
      const auto& record = trial.records[static_cast<std::size_t>(i)];
      x(i, static_cast<Eigen::Index>(record.group)) = 1;
      z(i, static_cast<Eigen::Index>(record.individual)) = 1;
      y(i) = record.value;
    }
    const double of_effects = trial.share / (1 - trial.share);  // in residual variances
    const MatrixXd v = z * (of_effects * a) * z.transpose() + MatrixXd::Identity(n, n);
    const MatrixXd w = v.inverse();
    const MatrixXd means_error = (x.transpose() * w * x).inverse();
    const VectorXd means = means_error * x.transpose() * w * y;
    const MatrixXd to_effects = of_effects * a * z.transpose() * w;
    const VectorXd effects = to_effects * (y - x * means);
    const MatrixXd p = w - w * x * means_error * x.transpose() * w;
    const MatrixXd error = of_effects * a - of_effects * a * z.transpose() * p * z * a * of_effects;
    // Inverses of matrices of size 30 with condition numbers to about 1e3.
    constexpr double rounding = 1e-10;
    for (Eigen::Index i = 0; i < g; ++i)
      EXPECT_NEAR(model.group_means[static_cast<std::size_t>(i)], means(i), rounding) << number;
    for (Eigen::Index i = 0; i < q; ++i) {
      const auto& effect = model.individuals[static_cast<std::size_t>(i)];
      EXPECT_NEAR(effect.estimate, effects(i), rounding) << number;
      EXPECT_NEAR(effect.error_part, error(i, i), rounding) << number;
    }
    EXPECT_NEAR(*model.residual_variance, y.dot(p * y) / static_cast<double>(n - g), rounding) << number;
  }
}

// Copies of one queen, as far as genes go: the relationship has no inverse.
TEST(ScoreLaws, IndividualsThatCannotBeToldApartGetOneEstimate) {
  const lines::Square all_one{3, {1, 1, 0, 1, 1, 0, 0, 0, 1}};
  const auto model = lines::solve_mixed_model(all_one, {{0, 0, 5}, {1, 0, 4}, {2, 0, 1}}, 0.3);
  EXPECT_NEAR(model.individuals[0].estimate, model.individuals[1].estimate, 1e-12);
  EXPECT_GT(model.individuals[0].estimate, 0);
}

lines::ChoiceProblem some_choice(std::uint64_t number) {
  Stream luck({number, 0, 0, 0, Purpose::synthetic_truth});
  const auto below = [&](int bound) { return static_cast<std::size_t>(luck.uniform() * bound); };
  lines::ChoiceProblem problem;
  const std::size_t virgins = 2 + below(5);
  problem.lines = 1 + below(3);
  problem.lines = std::min(problem.lines, virgins);
  for (std::size_t virgin = 0; virgin < virgins; ++virgin) {
    const std::size_t line = virgin < problem.lines ? virgin : below(static_cast<int>(problem.lines));
    for (std::size_t options = below(4); options > 0; --options)
      problem.options.push_back({virgin, line, luck.uniform() * 0.4 - 0.2});
  }
  problem.keep = problem.lines + below(static_cast<int>(virgins - problem.lines) + 1);
  const std::size_t n = problem.options.size();
  problem.coancestry = {n, std::vector<double>(n * n)};
  for (std::size_t a = 0; a < n; ++a)
    for (std::size_t b = 0; b <= a; ++b)
      problem.coancestry.at(a, b) = problem.coancestry.at(b, a) = luck.uniform() * (a == b ? 0.6 : 0.3);
  return problem;
}

// Nothing where a virgin is taken twice, a line is lost, or too many or too few are taken.
std::optional<double> value_of(const lines::ChoiceProblem& problem, const std::vector<std::size_t>& taken) {
  if (taken.size() != problem.keep) return std::nullopt;
  std::vector<bool> kept(problem.lines, false);
  const auto keep = static_cast<double>(problem.keep);
  double value = 0;
  for (std::size_t i = 0; i < taken.size(); ++i) {
    const auto& option = problem.options[taken[i]];
    kept[option.line] = true;
    value -= option.score / keep;
    for (std::size_t j = 0; j < taken.size(); ++j) {
      if (i != j && option.virgin == problem.options[taken[j]].virgin) return std::nullopt;
      value += problem.coancestry.at(taken[i], taken[j]) / (keep * keep);
    }
  }
  if (std::find(kept.begin(), kept.end(), false) != kept.end()) return std::nullopt;
  return value;
}

// Every subset of the options.
double best_of_all(const lines::ChoiceProblem& problem) {
  double best = std::numeric_limits<double>::infinity();
  const std::size_t n = problem.options.size();
  for (unsigned subset = 1; subset < 1U << n; ++subset) {
    std::vector<std::size_t> taken;
    for (std::size_t i = 0; i < n; ++i)
      if ((subset >> i) & 1U) taken.push_back(i);
    best = std::min(best, value_of(problem, taken).value_or(best));
  }
  return best;
}

TEST(MatingLaws, AChoiceCutShortIsNotBetteredByOneExchange) {
  int cut_short = 0;
  for (std::uint64_t number = 1; number <= 400; ++number) {
    const auto problem = some_choice(number);
    const auto cut = lines::choose(problem, 3);
    ASSERT_EQ(cut.has_value(), lines::choose(problem).has_value()) << number;
    if (!cut || cut->proven) continue;
    ++cut_short;
    EXPECT_NEAR(cut->value, *value_of(problem, cut->crosses), 1e-12) << number;
    for (std::size_t place = 0; place < problem.keep; ++place) {
      for (std::size_t option = 0; option < problem.options.size(); ++option) {
        auto swapped = cut->crosses;
        swapped[place] = option;
        EXPECT_GE(value_of(problem, swapped).value_or(cut->value), cut->value - 1e-12) << number;
      }
    }
  }
  EXPECT_GT(cut_short, 50);
}

TEST(MatingLaws, NoOtherChoiceIsBetter) {
  int possible = 0, impossible = 0;
  for (std::uint64_t number = 1; number <= 400; ++number) {
    const auto problem = some_choice(number);
    const double best = best_of_all(problem);
    const auto choice = lines::choose(problem);
    ASSERT_EQ(choice.has_value(), std::isfinite(best)) << number;
    (choice ? possible : impossible) += 1;
    if (!choice) continue;
    EXPECT_TRUE(choice->proven);
    EXPECT_NEAR(choice->value, best, 1e-12) << number;
    EXPECT_EQ(choice->crosses.size(), problem.keep);
  }
  // Guards the law: both kinds must come up.
  EXPECT_GT(possible, 50);
  EXPECT_GT(impossible, 50);
}

}  // namespace
}  // namespace beegarth
