// The plain guesses on hand-made looks, and which days each lead holds.
#include "garth/beliefs/skill_rivals.hpp"

#include <gtest/gtest.h>

#include <cmath>

#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

Date on(const char* text) {
  return Date::parse(text).value();
}

SeenColony colony(const char* name, const char* site, std::vector<SeenThen> looks) {
  return {.colony = ColonyId(name), .site = SiteId(site), .looks = std::move(looks)};
}
SeenThen bees(const char* date, double value) {
  return {.date = on(date), .bees = value};
}
SeenThen stores(const char* date, double value) {
  return {.date = on(date), .stores_kg = value};
}
SeenThen washed(const char* date, int mites, int examined) {
  return {
      .date = on(date), .mites_per_100_bees = 100.0 * mites / examined, .examined = examined, .mites = mites};
}

FactTable observation() {
  return Tables::built_in().value()["observation"];
}

std::optional<Guess> guess(const std::vector<SeenColony>& all, Rival rival, Scored what, std::size_t own = 0,
                           std::size_t origin = 0, std::size_t then = 1) {
  const FactTable table = observation();
  const Rivals rivals_of_book(all, table, 1);
  return rivals_of_book.guess(rival, {all[own], origin, then, *lead_between(all[own], origin, then), what});
}

TEST(Leads, hold_the_days_that_they_say) {
  const auto ahead = [](int days) {
    const SeenColony seen = colony("a", "s", {bees("2026-05-01", 1), {.date = on("2026-05-01") + days}});
    return lead_between(seen, 0, 1);
  };
  EXPECT_EQ(ahead(3), std::nullopt);
  EXPECT_EQ(ahead(4), Lead::one_week);
  EXPECT_EQ(ahead(9), Lead::one_week);
  EXPECT_EQ(ahead(10), Lead::two_weeks);
  EXPECT_EQ(ahead(20), Lead::four_weeks);
  EXPECT_EQ(ahead(39), Lead::four_weeks);
  EXPECT_EQ(ahead(40), Lead::longer);
  EXPECT_EQ(ahead(300), Lead::longer);
  EXPECT_EQ(ahead(301), std::nullopt);
}

TEST(Leads, from_autumn_to_spring_end_at_the_first_look_after_winter) {
  SeenColony seen = colony(
      "a", "s", {bees("2026-09-10", 1), bees("2027-01-20", 1), bees("2027-02-14", 1), bees("2027-03-10", 1)});
  EXPECT_EQ(lead_between(seen, 0, 1), Lead::longer);
  EXPECT_EQ(lead_between(seen, 0, 2), Lead::autumn_to_spring);
  EXPECT_EQ(lead_between(seen, 0, 3), Lead::longer);
  EXPECT_EQ(lead_between(seen, 1, 2), Lead::four_weeks) << "January is no autumn";
  seen = colony("a", "s", {bees("2026-04-10", 1), bees("2026-08-14", 1)});
  EXPECT_EQ(lead_between(seen, 0, 1), Lead::longer);
  seen.south = true;
  EXPECT_EQ(lead_between(seen, 0, 1), Lead::autumn_to_spring);
}

// One colony at each of so many sites, seen on 1 and 15 May.
std::vector<SeenColony> by_sites(int others, const char* site_of_all = nullptr) {
  std::vector<SeenColony> all{
      colony("own", site_of_all ? site_of_all : "home", {bees("2026-05-01", 100), bees("2026-05-15", 170)})};
  for (int i = 1; i <= others; ++i) {
    const std::string name = "c" + std::to_string(i);
    all.push_back(colony(
        name.c_str(), site_of_all ? site_of_all : name.c_str(),
        {bees("2026-04-10", 10.0 * i), bees("2026-04-24", 10.0 * i + i), bees("2026-05-14", 1000.0 * i)}));
  }
  return all;
}

TEST(TimeOfYear, holds_the_values_of_other_sites_and_nothing_of_the_own) {
  auto all = by_sites(5);
  all.push_back(colony("neighbour", "home", {bees("2026-05-15", 99999)}));
  const auto found = guess(all, Rival::climatology, Scored::bees);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->values, (std::vector<double>{1000, 2000, 3000, 4000, 5000}));
  for (const double weight : found->weights) EXPECT_DOUBLE_EQ(weight, 0.2);
}

TEST(TimeOfYear, of_one_site_leaves_out_the_colony_alone) {
  const auto all = by_sites(5, "home");
  const auto found = guess(all, Rival::climatology, Scored::bees);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->values.size(), 5U);
  EXPECT_FALSE(Rivals(all, observation(), 1).whole_sites());
}

TEST(TimeOfYear, takes_other_years_and_says_nothing_of_four_colonies) {
  EXPECT_FALSE(guess(by_sites(4), Rival::climatology, Scored::bees));
  auto all = by_sites(4);
  all.push_back(
      colony("old", "far",
             {bees("2021-05-06", 7), bees("2021-05-12", 8), bees("2022-05-20", 9), bees("2021-05-27", 5)}));
  const auto found = guess(all, Rival::climatology, Scored::bees);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->values, (std::vector<double>{8, 9, 1000, 2000, 3000, 4000}))
      << "the nearest look of each year";
  EXPECT_DOUBLE_EQ(found->weights[0], 0.1) << "both years of a colony weigh as one colony";
}

TEST(PastChanges, are_those_known_on_the_day_over_such_a_lead) {
  // From 10 to 24 April they rose by 1 to 5; the changes to 14 May were not known on 1 May.
  const auto found = guess(by_sites(5), Rival::last_value_and_changes, Scored::bees);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->values, (std::vector<double>{101, 102, 103, 104, 105}));
  EXPECT_FALSE(guess(by_sites(4), Rival::last_value_and_changes, Scored::bees))
      << "four colonies are not enough";
}

TEST(LastValue, is_a_point) {
  const auto found = guess(by_sites(1), Rival::last_value, Scored::bees);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->values, (std::vector<double>{100}));
}

// 3 and 7 kg, with the floor of 1 kg 4 and 8: doubled in ten days, so 16 - 1 after ten more; never more than
// fourfold.
TEST(Trend, is_a_straight_line_in_the_logarithm_clipped_at_four_times) {
  ASSERT_DOUBLE_EQ(observation().value("estimate_floor_stores").value(), 1.0);
  const std::vector<SeenColony> all{colony(
      "a", "s",
      {stores("2026-05-01", 3), stores("2026-05-11", 7), stores("2026-05-21", 0), stores("2026-06-20", 0)})};
  EXPECT_NEAR(guess(all, Rival::trend, Scored::stores_kg, 0, 1, 2)->values[0], 15, 1e-9);
  EXPECT_NEAR(guess(all, Rival::trend, Scored::stores_kg, 0, 1, 3)->values[0], 31, 1e-9);
  EXPECT_EQ(guess(all, Rival::trend, Scored::stores_kg, 0, 2, 3)->values[0], 0)
      << "a quarter of 0 + 1 is less than none";
  EXPECT_FALSE(guess(all, Rival::trend, Scored::stores_kg, 0, 0, 1)) << "one look has no trend";
}

// The mean of 100 (m + 1/2) / n * k / (k - 3/2) * exp(0.021 * days), k = 4: the mean of 1 / gamma(k - 1/2) is
// 1 / (k - 3/2). Room: four standard errors of the draws.
TEST(Growth, is_a_distribution_about_the_grown_count) {
  ASSERT_DOUBLE_EQ(observation().value("sample_size").value(), 4.0);
  const std::vector<SeenColony> all{
      colony("a", "s", {washed("2026-05-01", 9, 300), washed("2026-05-29", 0, 300)})};
  const auto found = guess(all, Rival::growth, Scored::mites_per_100_bees);
  ASSERT_TRUE(found);
  double mean = 0;
  double squares = 0;
  for (const double value : found->values) {
    mean += value / static_cast<double>(found->values.size());
    squares += value * value / static_cast<double>(found->values.size());
  }
  const double expected = 100 * 9.5 / 300 * 4 / 2.5 * std::exp(0.021 * 28);
  EXPECT_NEAR(mean, expected,
              4 * std::sqrt((squares - mean * mean) / static_cast<double>(found->values.size())));
  EXPECT_GT(found->values.back(), 2 * found->values[found->values.size() / 2]) << "as wide as counts are";
  EXPECT_FALSE(guess(by_sites(5), Rival::growth, Scored::bees));
}

TEST(Survival, counts_the_others_that_lived_then_and_later) {
  std::vector<SeenColony> all{
      colony("own", "home", {{.date = on("2026-10-01")}, {.date = on("2027-02-10")}})};
  for (int i = 0; i < 5; ++i)
    all.push_back(colony(
        ("c" + std::to_string(i)).c_str(), "far",
        {{.date = on("2026-10-05")}, {.date = on(i < 2 ? "2026-12-01" : "2027-02-12"), .alive = i > 2}}));
  // Two died in December, one was found dead in February, two lived.
  const auto found = guess(all, Rival::climatology, Scored::alive);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->values, (std::vector<double>{0, 0, 0, 1, 1}));
}

TEST(OtherColonies, are_those_of_the_same_round_wherever_they_stand) {
  auto all = by_sites(2);
  all.push_back(colony("neighbour", "home", {bees("2026-05-18", 5), bees("2026-05-19", 77)}));
  const auto found = guess(all, Rival::other_colonies, Scored::bees);
  ASSERT_TRUE(found);
  EXPECT_EQ(found->values, (std::vector<double>{5, 1000, 2000}));
}

}  // namespace
}  // namespace beegarth::garth
