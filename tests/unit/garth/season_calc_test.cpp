// One colony day by day, as `beegarth calc season` answers it.
#include <gtest/gtest.h>

#include "calc_answers.hpp"

namespace beegarth::garth {
namespace {

using testing::answer;
using testing::refuses;

Json asked() {
  return {{"start", "2026-06-01"},
          {"days", 60},
          {"members", 64},
          {"begin", {{"bees", 20000}, {"brood_cells", 18000}, {"stores_kg", 12}, {"mites", 300}}},
          {"dwelling", {{"brood_combs", 22}, {"super_combs", 20}}}};
}

double middle_on_last_day(const Json& out, std::string_view quantity) {
  for (const Json& fan : out["fans"])
    if (fan["quantity"] == quantity) return fan["levels"]["50"].back();
  ADD_FAILURE() << "no fan of " << quantity;
  return 0;
}

TEST(SeasonCalc, gives_a_quantile_for_the_start_and_for_every_day_after) {
  const Json out = answer("season", asked());
  for (const Json& fan : out["fans"]) {
    EXPECT_EQ(fan["dates"].size(), 61U);
    EXPECT_EQ(fan["levels"]["50"].size(), 61U);
  }
  EXPECT_EQ(out["eggs_laid_mean"].size(), 61U);
  EXPECT_EQ(out["under"],
            "invented weather of a temperate year at this latitude; forage of a stand-in year "
            "(tables/forage.toml)");
  EXPECT_NEAR(out["fans"][0]["levels"]["50"][0].get<double>(), 20000, 0.01);
}

TEST(SeasonCalc, the_same_seed_gives_the_same_answer_and_another_seed_another) {
  auto other = asked();
  other["seed"] = 2;
  EXPECT_EQ(answer("season", asked()), answer("season", asked()));
  EXPECT_NE(answer("season", asked()), answer("season", other));
}

TEST(SeasonCalc, a_treatment_leaves_fewer_mites_and_a_harvest_less_honey) {
  auto treated = asked();
  treated["actions"] = Json::array(
      {{{"date", "2026-06-20"}, {"kind", "treatment"}, {"fields", {{"kind", "formic"}, {"days", 10}}}}});
  auto robbed = asked();
  robbed["actions"] = Json::array({{{"date", "2026-07-30"}, {"kind", "harvest"}, {"fields", {{"kg", 8}}}}});
  const Json left = answer("season", asked());
  EXPECT_LT(middle_on_last_day(answer("season", treated), "mites"), middle_on_last_day(left, "mites"));
  EXPECT_LT(middle_on_last_day(answer("season", robbed), "stores_kg"), middle_on_last_day(left, "stores_kg"));
}

TEST(SeasonCalc, a_colony_behind_a_warm_wall_eats_less_in_winter_than_one_in_the_wind) {
  Json winter = {{"start", "2026-11-01"},
                 {"days", 100},
                 {"members", 64},
                 {"begin", {{"bees", 9000}, {"stores_kg", 18}, {"mites", 0}, {"winter_share", 1}}},
                 {"dwelling", {{"conductance_W_K", 2.4}}}};
  const double in_the_wind = middle_on_last_day(answer("season", winter), "stores_kg");
  winter["dwelling"] = {{"conductance_W_K", 1.2}, {"two_colonies", true}, {"sheltered", true}};
  EXPECT_GT(middle_on_last_day(answer("season", winter), "stores_kg"), in_the_wind + 0.5);
}

TEST(SeasonCalc, tells_what_befell_the_colony) {
  auto hungry = asked();
  hungry["start"] = "2026-11-01";
  hungry["days"] = 120;
  hungry["begin"]["stores_kg"] = 1;
  hungry["begin"]["brood_cells"] = 0;
  const Json out = answer("season", hungry);
  EXPECT_GT(out["happened"]["starvation"], 0.9);
  EXPECT_GT(out["happened"]["death"], 0.9);
  EXPECT_LT(out["alive"], 0.1);
  EXPECT_EQ(out["happened"]["swarm"], 0.0);
}

TEST(SeasonCalc, what_cannot_be_is_refused) {
  auto bad = asked();
  bad["overrides"] = {{"no_such_row", 1}};
  EXPECT_TRUE(refuses("season", bad));
  bad = asked();
  bad["dwelling"]["undrawn_combs"] = 43;
  EXPECT_TRUE(refuses("season", bad));
  bad = asked();
  bad["days"] = 0;
  EXPECT_TRUE(refuses("season", bad));
  bad = asked();
  bad["weather"] = Json::array({{{"temperature_min_C", 20}, {"temperature_max_C", 10}}});
  EXPECT_TRUE(refuses("season", bad));
}

}  // namespace
}  // namespace beegarth::garth
