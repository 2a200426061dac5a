// What the deeds of the book do to the bees.
#include "belief/deeds.hpp"

#include <gtest/gtest.h>

#include "read_rows.hpp"

namespace beegarth::belief {
namespace {

using entries::TransferWay;

// The share of the brood that is gone after a transfer; 0 where nothing is done to it.
double brood_lost(TransferWay how, std::optional<double> kept = std::nullopt) {
  const auto figures = read_deed_figures(testing::rows_of("observation"));
  const auto model = colony::Model::from(testing::rows_of("colony"));
  const auto actions = actions_of(entries::Transfer{.how = how, .brood_kept = kept}, *figures, *model, {});
  if (actions.empty()) return 0;
  EXPECT_EQ(actions.size(), how == TransferWay::shaken ? 2U : 1U);  // their honey stays behind as well
  return std::get<colony::RemoveBrood>(actions.front()).share;
}

TEST(Deeds, a_stock_that_was_shaken_leaves_all_its_brood_and_one_whose_combs_went_along_none) {
  EXPECT_EQ(brood_lost(TransferWay::shaken), 1);
  for (const auto whole : {TransferWay::grown_down, TransferWay::grown_across, TransferWay::bars_among_frames,
                           TransferWay::combs_lifted_over})
    EXPECT_EQ(brood_lost(whole), 0);
}
TEST(Deeds, a_stock_that_was_cut_and_tied_keeps_a_part) {
  EXPECT_GT(brood_lost(TransferWay::cut_and_tied), 0.1);
  EXPECT_LT(brood_lost(TransferWay::cut_and_tied), 0.9);
}
TEST(Deeds, what_the_keeper_wrote_of_the_brood_goes_before_what_is_usual) {
  EXPECT_EQ(brood_lost(TransferWay::shaken, 0.25), 0.75);
  EXPECT_EQ(brood_lost(TransferWay::combs_lifted_over, 0.25), 0.75);
}

}  // namespace
}  // namespace beegarth::belief
