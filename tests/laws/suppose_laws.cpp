// What must hold of suppositions, whatever the colony. Everything invented.
#include <gtest/gtest.h>

#include "belief/ranking.hpp"
#include "belief/suppose.hpp"
#include "calibration/synthetic.hpp"

namespace beegarth {
namespace {

using belief::Way;
using synthetic::day;
using synthetic::entry_on;

constexpr int members = 96;
const ColonyId alder("alder");
const Date today = day(2031, 8, 5);
const Date last = day(2032, 4, 1);

belief::Supposed suppose(const std::vector<Way>& ways, std::uint64_t seed = 3) {
  static const belief::Tables tables = synthetic::tables();
  belief::History history{.colony = alder, .began = day(2031, 5, 1)};
  entries::Inspection seen;
  seen.seams = 11;
  seen.brood_combs = 7;
  seen.eggs = true;
  seen.stores_kg = 9;
  entries::MiteCount wash{.method = entries::MiteMethod::wash, .mites = 9, .bees = 300};
  history.entries = {entry_on(day(2031, 6, 20), 1, seen), entry_on(day(2031, 8, 1), 2, wash)};
  belief::Forcing forcing;
  forcing.past = synthetic::season(1, history.began, today - 1);
  for (std::uint64_t f = 0; f < 8; ++f) forcing.futures.push_back(synthetic::season(10 + f, today, last));
  auto supposed = belief::suppose(history, forcing, tables,
                                  {.members = members, .seed = seed, .today = today, .horizon = last}, ways);
  if (!supposed) throw std::runtime_error(one_line(supposed.problem()));
  return *std::move(supposed);
}

Way treated(int month, int date) {
  return {"treated",
          {{day(2031, month, date),
            entries::Treatment{.colony = alder, .kind = entries::TreatmentKind::amitraz, .days = 42}}}};
}
Way fed(double kg) {
  return {"fed", {{day(2031, 9, 1), entries::Feed{.colony = alder, .kg = kg, .sugar_pct = 61}}}};
}
const Way nothing{"nothing", {}};

double mean_of(const belief::Supposed& supposed, std::size_t way, float belief::Came::*of) {
  double sum = 0;
  for (std::size_t i = 0; i < supposed.weights.size(); ++i)
    sum += supposed.weights[i] * supposed.ways[way].came[i].*of;
  return sum;
}

TEST(SupposeLaws, sugar_is_no_surplus) {
  const belief::Intended boxes{today + 1, entries::Room{.colony = alder, .super_combs = 20}};
  Way with_sugar = fed(25);
  with_sugar.deeds.insert(with_sugar.deeds.begin(), boxes);
  const auto supposed = suppose({{"boxes", {boxes}}, with_sugar});
  EXPECT_LT(mean_of(supposed, 1, &belief::Came::surplus_kg),
            mean_of(supposed, 0, &belief::Came::surplus_kg) + 0.5);
}

TEST(SupposeLaws, honey_that_is_not_for_people_is_no_surplus) {
  const auto taken = [](bool for_people) {
    return Way{"taken",
               {{day(2031, 8, 20), entries::Harvest{.colony = alder, .kg = 4, .for_people = for_people}}}};
  };
  const auto supposed = suppose({taken(true), taken(false)});
  EXPECT_GT(mean_of(supposed, 0, &belief::Came::surplus_kg),
            mean_of(supposed, 1, &belief::Came::surplus_kg) + 2);
  EXPECT_EQ(mean_of(supposed, 0, &belief::Came::bees), mean_of(supposed, 1, &belief::Came::bees));
}

TEST(SupposeLaws, the_same_deeds_under_another_name_come_to_the_same_in_every_course) {
  Way again = treated(8, 20);
  again.name = "the same";
  const auto supposed = suppose({treated(8, 20), nothing, again});
  for (std::size_t i = 0; i < members; ++i) {
    EXPECT_EQ(supposed.ways[0].came[i].bees, supposed.ways[2].came[i].bees);
    EXPECT_EQ(supposed.ways[0].came[i].mites, supposed.ways[2].came[i].mites);
  }
}

TEST(SupposeLaws, a_way_comes_to_the_same_whatever_others_stand_beside_it) {
  const auto alone = suppose({fed(6)});
  const auto beside = suppose({nothing, treated(9, 1), fed(6)});
  for (std::size_t i = 0; i < members; ++i) {
    EXPECT_EQ(alone.ways[0].came[i].bees, beside.ways[2].came[i].bees);
    EXPECT_EQ(alone.ways[0].came[i].least_stores_kg, beside.ways[2].came[i].least_stores_kg);
  }
}

TEST(SupposeLaws, nothing_differs_before_the_first_deed) {
  const auto supposed = suppose({nothing, treated(9, 10)});
  const auto& one = supposed.ways[0].fans[3];
  const auto& other = supposed.ways[1].fans[3];
  ASSERT_EQ(one.quantity, "mites");
  const auto deed = static_cast<std::size_t>(day(2031, 9, 10) - today);
  for (std::size_t d = 0; d <= deed; ++d) EXPECT_EQ(one.levels[d], other.levels[d]) << d;
  EXPECT_NE(one.levels[deed + 5], other.levels[deed + 5]);
}

// Mites die with the bees that carry them, so a colony that is going down of them may hold fewer: what a
// treatment lowers is the mites to a bee. Now and then a stronger colony turns to swarming and comes out
// weaker, therefore nearly every course and not every one.
TEST(SupposeLaws, a_treatment_leaves_fewer_mites_on_the_bees_in_nearly_every_course_and_feeding_more_stores) {
  const auto supposed = suppose({nothing, treated(8, 20), fed(8)});
  std::size_t lived = 0, fewer = 0;
  for (std::size_t i = 0; i < members; ++i) {
    const auto& left = supposed.ways[0].came[i];
    const auto& treated_one = supposed.ways[1].came[i];
    if (left.died || treated_one.died) continue;
    ++lived;
    fewer += treated_one.mites / treated_one.bees < left.mites / left.bees;
  }
  EXPECT_GT(lived, members / 3);
  EXPECT_GE(fewer, lived * 19 / 20);
  EXPECT_GT(mean_of(supposed, 2, &belief::Came::least_stores_kg),
            mean_of(supposed, 0, &belief::Came::least_stores_kg));
}

TEST(SupposeLaws, a_stock_that_is_united_away_ends_and_has_not_died) {
  const Way united{"united", {{day(2031, 9, 1), entries::Unite{.colony = ColonyId("birch"), .from = alder}}}};
  const auto supposed = suppose({united});
  for (const auto& came : supposed.ways[0].came) {
    EXPECT_TRUE(came.ended || came.died);
    EXPECT_FALSE(came.ended && came.died);
    EXPECT_EQ(came.bees, 0);
  }
  EXPECT_EQ(supposed.ways[0].alive, 0);
}

TEST(SupposeLaws, what_lies_outside_or_changes_nothing_is_refused) {
  EXPECT_THROW(suppose({{"late", {{last, entries::Feed{.colony = alder, .kg = 1}}}}}), std::runtime_error);
  EXPECT_THROW(suppose({{"early", {{today - 1, entries::Feed{.colony = alder, .kg = 1}}}}}),
               std::runtime_error);
  EXPECT_THROW(suppose({{"a look", {{today, entries::Inspection{.colony = alder}}}}}), std::runtime_error);
}

}  // namespace
}  // namespace beegarth
