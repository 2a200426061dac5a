// Moving a colony into a hive of another pattern. The two hives are invented.
#include "work/transfers.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "quiet_colony.hpp"

namespace beegarth::work {
namespace {

using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

const CombHome deep{.bar_mm = 432, .depth_mm = 216, .stackable = true};
const CombHome deeper{.bar_mm = 432, .depth_mm = 300, .stackable = true};
const CombHome wide{.bar_mm = 470, .depth_mm = 285, .stackable = true};
const CombHome trough{.form = facts::HiveForm::horizontal, .frames = false, .bar_mm = 432, .depth_mm = 200};
const CombHome hollow{
    .form = facts::HiveForm::upright, .frames = false, .movable = false, .bar_mm = 300, .depth_mm = 400};

std::vector<TransferWayTold> ways(const CombHome& from, const CombHome& to, Date date = day(2026, 5, 10),
                                  std::optional<double> seams = 8, double latitude = 52) {
  return *ways_of_transfer({from, to, date, latitude, seams, 20000}, testing::rows_of("transfers"));
}
TransferWayTold way(const std::vector<TransferWayTold>& all, std::string_view name) {
  return *std::find_if(all.begin(), all.end(), [&](const auto& one) { return one.way == name; });
}
std::vector<std::string> possible(const std::vector<TransferWayTold>& all) {
  std::vector<std::string> names;
  for (const auto& one : all)
    if (one.against.empty()) names.emplace_back(one.way);
  return names;
}

TEST(Transfers, frames_of_one_bar_go_over_into_a_deeper_hive_and_not_into_a_shallower_one) {
  EXPECT_THAT(possible(ways(deep, deeper)), Contains("combs_lifted_over"));
  EXPECT_THAT(way(ways(deeper, deep), "combs_lifted_over").against, Contains(HasSubstr("84 mm too deep")));
  EXPECT_THAT(way(ways(deep, wide), "combs_lifted_over").against, Contains(HasSubstr("432 mm and 470 mm")));
}
TEST(Transfers, combs_on_bars_hang_among_frames_of_the_same_bar) {
  EXPECT_THAT(possible(ways(trough, deep)), Contains("bars_among_frames"));
  EXPECT_THAT(possible(ways(deep, trough)), Not(Contains("bars_among_frames")));
  EXPECT_THAT(possible(ways(trough, wide)), Not(Contains("bars_among_frames")));
}
TEST(Transfers, wild_comb_is_shaken_cut_or_grown_out_of_but_never_lifted) {
  const auto names = possible(ways(hollow, deep));
  EXPECT_THAT(names, ::testing::UnorderedElementsAre("shaken", "cut_and_tied", "grown_down"));
}
TEST(Transfers, nothing_is_tied_into_a_hive_without_frames_and_nothing_stands_on_a_trough) {
  const auto all = ways(deep, trough);
  EXPECT_THAT(possible(all), ::testing::UnorderedElementsAre("shaken", "grown_across"));
}
TEST(Transfers, in_autumn_only_frames_go_over) {
  EXPECT_THAT(possible(ways(deep, deeper, day(2026, 9, 20))), ::testing::ElementsAre("combs_lifted_over"));
  EXPECT_THAT(possible(ways(deep, wide, day(2026, 9, 20))), IsEmpty());
  EXPECT_THAT(possible(ways(hollow, deep, day(2026, 11, 10), 8, -40)), Contains("shaken"))
      << "May in the south";
}
TEST(Transfers, a_weak_stock_is_not_shaken) {
  EXPECT_THAT(way(ways(deep, wide, day(2026, 5, 10), 3), "shaken").against, Contains(HasSubstr("3.0 seams")));
  EXPECT_THAT(way(ways(deep, wide, day(2026, 5, 10), std::nullopt), "shaken").against, IsEmpty())
      << "never said";
}
TEST(Transfers, shaking_loses_all_brood_and_growing_none) {
  const auto all = ways(deep, wide);
  EXPECT_EQ(way(all, "shaken").brood_lost_cells->value, 20000);
  EXPECT_EQ(way(all, "grown_down").brood_lost_cells->value, 0);
  const auto tied = way(all, "cut_and_tied");
  EXPECT_LT(tied.brood_lost_cells->low, tied.brood_lost_cells->value);
  EXPECT_LT(tied.brood_lost_cells->value, tied.brood_lost_cells->high);
}
TEST(Transfers, what_can_be_done_comes_first_and_sets_back_ever_more) {
  const auto all = ways(trough, deep);
  for (std::size_t i = 1; i < all.size(); ++i) {
    EXPECT_LE(all[i - 1].against.empty() ? 0 : 1, all[i].against.empty() ? 0 : 1);
    if (all[i].against.empty()) {
      EXPECT_LE(all[i - 1].setback_days.value, all[i].setback_days.value);
    }
  }
  for (const auto& one : all) EXPECT_THAT(one.sources, Not(IsEmpty())) << one.way;
}
TEST(Transfers, every_way_says_that_the_stock_must_be_healthy) {
  for (const auto& one : ways(deep, wide))
    EXPECT_THAT(one.cautions, Contains(HasSubstr("disease"))) << one.way;
}

}  // namespace
}  // namespace beegarth::work
