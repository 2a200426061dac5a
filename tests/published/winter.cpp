// Winter use of honey and the heat behind it, each figure with its source.
#include <gtest/gtest.h>

#include "calc_answers.hpp"
#include "colony/winter_need.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth {
namespace {

using garth::Json;

const colony::WinterTable& table() {
  static const auto read = colony::WinterTable::from((*garth::Tables::built_in())["winter"]);
  return *read;
}

// Southwick 1985, J Comp Physiol B 156:143, abstract; watts and honey by 21.1 J/mL and 13.6 kJ/g are
// arithmetic.
TEST(Cluster, a_kilogram_of_bees_at_two_degrees_uses_what_was_measured) {
  EXPECT_NEAR(colony::cluster_oxygen_mL_per_g_h(1000, table()), 0.830, 0.005);
  EXPECT_NEAR(colony::cluster_heat_W(1000, table()), 4.86, 4.86 * 0.05);
  EXPECT_NEAR(colony::honey_kg_per_30_days(colony::cluster_heat_W(1000, table()), table()), 0.93,
              0.93 * 0.05);
}
TEST(Cluster, heat_grows_with_a_little_more_than_the_root_of_its_mass) {
  struct Case {
    double kg, power_W, honey_kg;
  };
  for (const Case& c : {Case{0.5, 3.39, 0.65}, Case{1.2, 5.35, 1.02}, Case{2.0, 6.98, 1.33}}) {
    const double power = colony::cluster_heat_W(1000 * c.kg, table());
    EXPECT_NEAR(power, c.power_W, c.power_W * 0.05) << c.kg;
    EXPECT_NEAR(colony::honey_kg_per_30_days(power, table()), c.honey_kg, c.honey_kg * 0.05) << c.kg;
  }
}

// Weighed hives: 1 to 1.5 kg a month; as heat 5.25 and 7.87 W (arithmetic).
TEST(Cluster, a_month_of_weighed_honey_is_so_many_watts) {
  EXPECT_NEAR(colony::power_W_of_honey(1.0, table()), 5.25, 5.25 * 0.02);
  EXPECT_NEAR(colony::power_W_of_honey(1.5, table()), 7.87, 7.87 * 0.02);
}

// Mitchell 2016, Int J Biometeorol, abstract: common wooden hives pass four to seven times the heat of a tree
// cavity; a colony of 2 kg has more than 2.5 W/K in wood and less than 0.4 W/K in a tree.
TEST(Cluster, costs_more_honey_in_a_wooden_hive_than_in_a_hollow_tree) {
  const double wood_W_K = 2.5, tree_W_K = 0.4;
  for (const double air_C : {-15.0, -5.0, 2.0, 8.0, 15.0})
    EXPECT_GT(colony::heat_in_hive_W(2000, air_C, wood_W_K, false, table()),
              colony::heat_in_hive_W(2000, air_C, tree_W_K, false, table()))
        << air_C;
}
TEST(Cluster, in_no_hive_at_all_uses_what_was_measured_in_the_chamber) {
  EXPECT_NEAR(colony::heat_in_hive_W(1000, 2, 1e9, false, table()), colony::cluster_heat_W(1000, table()),
              1e-6);
}

// Harbo 1983, abstract: 6.7 mg a bee and day at 4,400 bees, 4.5 at 8,900, 4.2 at 34,000.
TEST(WinterNeed, by_the_bee_is_what_was_weighed_at_three_sizes) {
  for (const auto& [bees, g_per_day] : {std::pair{4400.0, 29.5}, {8900.0, 40.1}, {34000.0, 142.8}}) {
    const auto out = testing::answer("winter-need", {{"bees", bees},
                                                     {"start", "2026-12-01"},
                                                     {"end", "2026-12-25"},
                                                     {"temperatures", {8}},
                                                     {"conductance_W_K", 1.2}});
    EXPECT_NEAR(out["by_rule"][1]["honey_kg"].get<double>() / 25 * 1000, g_per_day, 0.06) << bees;
  }
}

TEST(WinterNeed, keeps_every_rule_and_lies_between_them) {
  const auto out = testing::answer("winter-need", {{"bees", 10000},
                                                   {"start", "2026-11-01"},
                                                   {"end", "2027-02-28"},
                                                   {"temperatures", {4}},
                                                   {"conductance_W_K", 1.2}});
  const double low = out["honey_kg"]["low"], mid = out["honey_kg"]["mid"], high = out["honey_kg"]["high"];
  EXPECT_LE(low, mid);
  EXPECT_LE(mid, high);
  for (const auto& rule : out["by_rule"]) {
    EXPECT_GE(rule["honey_kg"].get<double>(), low);
    EXPECT_LE(rule["honey_kg"].get<double>(), high);
    EXPECT_FALSE(rule["source"].get<std::string>().empty());
  }
  EXPECT_NEAR(out["by_rule"][2]["honey_kg"].get<double>(), 4.0, 1e-9) << "120 days at a kilogram a month";
}

// Arithmetic: the mean of three ways lies between the least and the most, and colder air asks for more.
TEST(WinterNeed, has_a_middle_of_its_own_that_follows_the_air) {
  double before = 0;
  for (const double air_C : {20.0, 10.0, 4.0, 0.0, -5.0, -10.0, -20.0, -40.0}) {
    for (const double bees : {500.0, 10000.0, 60000.0}) {
      const auto out = testing::answer("winter-need", {{"bees", bees},
                                                       {"start", "2026-11-01"},
                                                       {"end", "2027-02-28"},
                                                       {"temperatures", {air_C}},
                                                       {"conductance_W_K", 1.2}});
      const double low = out["honey_kg"]["low"], mid = out["honey_kg"]["mid"], high = out["honey_kg"]["high"];
      EXPECT_LT(low, mid) << air_C << " C, " << bees;
      EXPECT_LT(mid, high) << air_C << " C, " << bees;
      if (bees != 10000.0) continue;
      if (air_C < 8) {
        EXPECT_GT(mid, before) << air_C << " C";
      }
      before = mid;
    }
  }
}

}  // namespace
}  // namespace beegarth
