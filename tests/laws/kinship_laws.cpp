// Three ways to one kinship: exact fractions, the quick table, and genes that fall.
#include <gtest/gtest.h>

#include <cmath>

#include "lines/exact_kinship.hpp"
#include "lines/relationship.hpp"
#include "reference/gene_drop.hpp"
#include "reference/some_pedigree.hpp"

namespace beegarth {
namespace {

lines::Pedigree some_pedigree(std::uint64_t number, int count) {
  auto made = lines::Pedigree::of(reference::SomePedigree(number).queens(count));
  EXPECT_TRUE(made) << one_line(made.problem());
  return *made;
}

bool has_daughters(const lines::Pedigree& pedigree, std::size_t queen) {
  for (std::size_t i = 0; i < pedigree.size(); ++i)
    if (pedigree.mother(i) == queen) return true;
  return false;
}

TEST(KinshipLaws, TheQuickTableIsTheExactOne) {
  for (std::uint64_t number = 1; number <= 60; ++number) {
    const auto pedigree = some_pedigree(number, 40);
    lines::ExactKinship exact(pedigree);
    const auto table = lines::coancestry_table(pedigree);
    ASSERT_TRUE(table);
    for (std::size_t a = 0; a < pedigree.size(); ++a) {
      for (std::size_t b = 0; b < pedigree.size(); ++b) {
        // Sums of some hundred terms below 1, each rounded to 1e-16.
        ASSERT_NEAR(table->at(a, b), lines::decimal(exact.coancestry(a, b)), 1e-13)
            << "pedigree " << number << ": " << pedigree.queen(a).id.text() << ", "
            << pedigree.queen(b).id.text();
      }
      ASSERT_NEAR(2 * table->at(a, a) - 1, lines::decimal(exact.inbreeding(a)), 1e-13);
    }
  }
}

TEST(KinshipLaws, DaughtersToComeAreAkinAsDaughtersThatCame) {
  for (std::uint64_t number = 101; number <= 130; ++number) {
    auto queens = reference::SomePedigree(number).queens(25);
    const auto before = lines::Pedigree::of(queens);
    ASSERT_TRUE(before);
    for (std::size_t i = 0; i < 25; ++i)
      for (const char* twin : {"x", "y"})
        queens.push_back(reference::queen(queens[i].id.text() + twin, queens[i].id.text()));
    const auto after = lines::Pedigree::of(queens);
    ASSERT_TRUE(after);
    lines::ExactKinship planned(*before), came(*after);
    const auto table = lines::coancestry_table(*before);
    ASSERT_TRUE(table);
    for (std::size_t i = 0; i < 25; ++i) {
      const std::size_t x = 25 + 2 * i, y = x + 1;
      const auto mating = before->mating(i);
      EXPECT_EQ(planned.daughters_inbreeding(i, mating), came.inbreeding(x));
      EXPECT_EQ(planned.daughters_relationship(i, mating), came.relationship(x, y));
      EXPECT_NEAR(lines::daughters_inbreeding(*table, i, mating), lines::decimal(came.inbreeding(x)), 1e-13);
      // Of queens yet without daughters: nobody descends from their drones.
      if (has_daughters(*before, i)) continue;
      for (std::size_t j = 0; j < 25; ++j) {
        if (has_daughters(*before, j)) continue;
        EXPECT_NEAR(lines::daughters_coancestry(*table, i, mating, j, before->mating(j), i == j),
                    lines::decimal(came.coancestry(x, 26 + 2 * j)), 1e-13)
            << number << ": " << i << ", " << j;
      }
    }
  }
}

TEST(KinshipLaws, GenesThatFallSayTheSame) {
  constexpr int times = 40000;
  for (std::uint64_t number = 201; number <= 206; ++number) {
    const auto pedigree = some_pedigree(number, 18);
    lines::ExactKinship exact(pedigree);
    reference::GeneDrop genes(pedigree, number);
    genes.drop(times);
    for (std::size_t a = 0; a < pedigree.size(); ++a) {
      for (std::size_t b = 0; b <= a; ++b) {
        const double expected = lines::decimal(a == b ? exact.inbreeding(a) : exact.coancestry(a, b));
        // What lies between 0 and 1 with mean p varies by p(1 - p) at most. Five standard errors over about a
        // thousand pairs: a true method fails once in a thousand seeds.
        EXPECT_NEAR(genes.alike(a, b), expected, 5 * std::sqrt(expected * (1 - expected) / times))
            << "pedigree " << number << ": " << pedigree.queen(a).id.text() << ", "
            << pedigree.queen(b).id.text();
      }
    }
  }
}

// Guards the laws above: pedigrees without kin would prove little.
TEST(KinshipLaws, SomePedigreesAreInbred) {
  int inbred = 0, all = 0;
  for (std::uint64_t number = 1; number <= 60; ++number) {
    const auto pedigree = some_pedigree(number, 40);
    lines::ExactKinship exact(pedigree);
    for (std::size_t a = 0; a < pedigree.size(); ++a, ++all) inbred += exact.inbreeding(a) > 0 ? 1 : 0;
  }
  EXPECT_GT(inbred, all / 5);
}

TEST(KinshipLaws, AQueenIsNoNearerToHerKinForStandingElsewhereInTheList) {
  auto queens = reference::SomePedigree(7).queens(30);
  const auto one = lines::Pedigree::of(queens);
  std::reverse(queens.begin(), queens.end());
  const auto other = lines::Pedigree::of(queens);
  ASSERT_TRUE(one && other);
  lines::ExactKinship a(*one), b(*other);
  for (std::size_t i = 0; i < 30; ++i)
    for (std::size_t j = 0; j < 30; ++j) EXPECT_EQ(a.coancestry(i, j), b.coancestry(29 - i, 29 - j));
}

}  // namespace
}  // namespace beegarth
