// What a keeper sees through the year and the season has to give back; each failed before its cause was
// mended. common practice throughout.
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "colony_years.hpp"

namespace beegarth {
namespace {

using nlohmann::json;

double median_on(const json& out, const char* quantity, std::size_t day) {
  for (const auto& fan : out["fans"])
    if (fan["quantity"] == quantity) return fan["levels"]["50"].at(day);
  throw std::logic_error("no such quantity");
}

json warm_days(int days) {
  json list = json::array();
  for (int day = 0; day < days; ++day)
    list.push_back({{"temperature_min_C", 13}, {"temperature_max_C", 25}, {"wind_m_s", 2}});
  return list;
}

TEST(SeasonOfBees, a_warm_august_keeps_no_swarms_going) {
  const auto swarmed = [](const char* start) {
    const json out = testing::answer(
        "season",
        {{"start", start},
         {"days", 30},
         {"members", 256},
         {"weather", warm_days(30)},
         {"begin", {{"bees", 30000}, {"brood_cells", 20000}, {"stores_kg", 10}, {"winter_share", 0}}},
         {"dwelling", {{"brood_combs", 11}}}});
    return out["happened"]["swarm"].get<double>();
  };
  EXPECT_GT(swarmed("2026-06-01"), 0.3);
  EXPECT_LT(swarmed("2026-08-10"), 0.03);
}

TEST(SeasonOfBees, winter_bees_alone_do_not_last_the_summer) {
  const json out = testing::answer(
      "season",
      {{"start", "2026-03-01"},
       {"days", 214},
       {"members", 128},
       {"begin", {{"bees", 12000}, {"brood_cells", 0}, {"stores_kg", 15}, {"winter_share", 1}}},
       {"actions", {{{"date", "2026-03-02"}, {"kind", "queen"}, {"fields", {{"event", "removed"}}}}}}});
  EXPECT_LT(median_on(out, "bees", 214), 1200);  // on 1 October: a tenth
}

TEST(SeasonOfBees, feed_that_finds_no_comb_stays_in_the_feeder) {
  const json out = testing::answer(
      "season",
      {{"start", "2026-09-01"},
       {"days", 2},
       {"members", 32},
       {"begin", {{"bees", 8000}, {"brood_cells", 0}, {"stores_kg", 2}}},
       {"dwelling", {{"brood_combs", 5}, {"honey_kg_per_comb", 2}}},
       {"actions",
        {{{"date", "2026-09-02"}, {"kind", "feed"}, {"fields", {{"kg", 40}, {"form", "syrup"}}}}}}});
  EXPECT_LE(median_on(out, "stores_kg", 2), 10);
}

TEST(SeasonOfBees, a_harvest_with_boxes_on_leaves_what_is_by_the_brood) {
  const json out = testing::answer(
      "season", {{"start", "2026-07-01"},
                 {"days", 2},
                 {"members", 32},
                 {"begin", {{"bees", 25000}, {"brood_cells", 15000}, {"stores_kg", 16}}},
                 {"dwelling", {{"brood_combs", 11}, {"super_combs", 10}}},
                 {"actions", {{{"date", "2026-07-02"}, {"kind", "harvest"}, {"fields", {{"kg", 30}}}}}}});
  EXPECT_GT(median_on(out, "stores_kg", 2), 3);
}

// Aurell et al. 2024 (zenodo 10612430): brood in early February at a warm place; none is usual at 55 degrees.
TEST(SeasonOfBees, brood_begins_sooner_where_winter_days_are_longer) {
  const auto brood_at = [](double latitude) {
    json mild = json::array();
    for (int day = 0; day < 45; ++day)
      mild.push_back({{"temperature_min_C", 4}, {"temperature_max_C", 16}, {"wind_m_s", 3}});
    const json out = testing::answer(
        "season", {{"start", "2026-12-24"},
                   {"days", 45},
                   {"members", 64},
                   {"latitude_deg", latitude},
                   {"weather", mild},
                   {"begin", {{"bees", 8000}, {"brood_cells", 0}, {"stores_kg", 15}, {"winter_share", 1}}}});
    return median_on(out, "brood_cells", 45);
  };
  EXPECT_GT(brood_at(33), 2 * brood_at(55) + 300);
}

}  // namespace
}  // namespace beegarth
