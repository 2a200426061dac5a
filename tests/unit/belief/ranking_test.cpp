// Ways of acting are priced and ranked as by hand. Everything invented.
#include "belief/ranking.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace beegarth::belief {
namespace {

const Date today = *Date::from_ymd(2026, 8, 1);
const ColonyId alder("alder");

constexpr Prices prices{.colony_lost = 40,
                        .stock_united = 4,
                        .swarm_left = 12,
                        .surplus = 1,
                        .thousand_bees = 0.5,
                        .hundred_mites = 2,
                        .visit = 1,
                        .treatment = 3,
                        .feed = 0.5,
                        .queen = 5,
                        .new_stock = 15};

WayFollowed followed(std::vector<Came> came) {
  return {.name = "invented", .came = std::move(came)};
}
// Four members alike in weight, each of a family and a future of its own.
Supposed of_four(std::vector<WayFollowed> ways) {
  Supposed supposed;
  supposed.weights = {0.25, 0.25, 0.25, 0.25};
  supposed.family = {0, 1, 2, 3};
  supposed.future = {0, 1, 2, 3};
  supposed.ways = std::move(ways);
  return supposed;
}

TEST(Price, of_what_came_is_the_sum_of_its_parts) {
  EXPECT_DOUBLE_EQ(price_of({.surplus_kg = 10, .bees = 8000, .mites = 300}, prices), -10 - 4 + 6);
  EXPECT_DOUBLE_EQ(price_of({.swarmed = true, .bees = 2000}, prices), 12 - 1);
  EXPECT_DOUBLE_EQ(price_of({.died = true, .surplus_kg = 5, .bees = 0}, prices), 40 - 5);
  EXPECT_DOUBLE_EQ(price_of({.ended = true}, prices), 36);
}

TEST(Price, of_deeds_counts_a_day_once_and_each_deed_for_itself) {
  const Way way{"invented",
                {{today, entries::Feed{.colony = alder, .kg = 4}},
                 {today, entries::Treatment{.colony = alder, .kind = entries::TreatmentKind::thymol}},
                 {today + 14, entries::Feed{.colony = alder, .kg = 2}}}};
  EXPECT_DOUBLE_EQ(price_of_deeds(way, alder, prices), 2 * 1 + 3 + 6 * 0.5);
  EXPECT_DOUBLE_EQ(price_of_deeds({"nothing", {}}, alder, prices), 0);
  const Way takes_in{"invented", {{today, entries::Unite{.colony = alder, .from = ColonyId("birch")}}}};
  EXPECT_DOUBLE_EQ(price_of_deeds(takes_in, alder, prices), 1 + 36) << "the other stock is no more";
}

TEST(Ranking, puts_first_what_costs_least_on_average_and_says_in_how_many_courses) {
  const std::vector<Way> ways{{"nothing", {}}, {"treat", {{today, entries::Treatment{.colony = alder}}}}};
  // Treating costs 4; it saves one of four colonies.
  const auto supposed = of_four({followed({{.died = true}, {}, {}, {}}), followed({{}, {}, {}, {}})});
  const auto ranked = rank_ways(supposed, ways, alder, prices);
  ASSERT_EQ(ranked.size(), 2U);
  EXPECT_EQ(ranked[0].way, 1U);
  EXPECT_DOUBLE_EQ(ranked[0].cost_kg, 4);
  EXPECT_DOUBLE_EQ(ranked[1].cost_kg, 10);
  EXPECT_DOUBLE_EQ(ranked[1].dearer_kg, 6);
  EXPECT_DOUBLE_EQ(ranked[1].dearer_in, 0.25) << "in three of four courses nothing was needed";
  EXPECT_DOUBLE_EQ(ranked[1].died.value, 0.25);
  // Differences 36, -4, -4, -4: mean 6, error 0.25 sqrt(30^2 + 3 * 10^2) = 8.66, t = sqrt(0.48). Student's t
  // with 3 degrees of freedom has the closed form 1/2 + (x + sin x cos x) / pi, tan x = t / sqrt(3) = 0.4.
  EXPECT_NEAR(ranked[1].first_better, 0.5 + (std::atan(0.4) + 0.4 / 1.16) / std::numbers::pi, 1e-9);
}

TEST(Ranking, of_ways_that_come_to_the_same_knows_no_better) {
  const std::vector<Way> ways{{"nothing", {}}, {"as well", {}}};
  const auto supposed = of_four({followed({{}, {}, {}, {}}), followed({{}, {}, {}, {}})});
  const auto ranked = rank_ways(supposed, ways, alder, prices);
  EXPECT_EQ(ranked[0].way, 0U) << "the one given first";
  EXPECT_DOUBLE_EQ(ranked[1].dearer_in, 0.5);
  EXPECT_DOUBLE_EQ(ranked[1].first_better, 0.5);
}

TEST(Ranking, is_less_sure_where_members_share_their_weather) {
  const std::vector<Way> ways{{"nothing", {}}, {"dear", {}}};
  const auto dear = followed({{.mites = 90}, {.mites = 100}, {.mites = 140}, {.mites = 70}});
  auto supposed = of_four({followed({{}, {}, {}, {}}), dear});
  const double apart = rank_ways(supposed, ways, alder, prices)[1].first_better;
  supposed.future = {0, 0, 1, 1};
  EXPECT_LT(rank_ways(supposed, ways, alder, prices)[1].first_better, apart);
}

}  // namespace
}  // namespace beegarth::belief
