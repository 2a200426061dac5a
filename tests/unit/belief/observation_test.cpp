#include "belief/observation.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

#include "belief/densities.hpp"

namespace beegarth::belief {
namespace {

// Round figures, so that the sums below can be checked by hand.
ObservationErrors errors() {
  ObservationErrors e{};
  e.seams_error = 0.2;
  e.bees_error = 0.2;
  e.brood_combs_error = 0.2;
  e.capped_cells_error = 0.2;
  e.stores_error = 0.2;
  e.harvest_error = 0.2;
  e.super_share_error = 0.5;
  e.floor_seams = 0.5;
  e.floor_cells = 400;
  e.floor_stores = 1;
  e.board_size = 5;
  e.sample_size = 4;
  e.brood_correlation = 0.05;
  e.eggs_seen = 0.9;
  e.eggs_half = 50;
  e.brood_seen = 0.98;
  e.brood_half = 50;
  e.queen_seen = 0.5;
  e.virgin_seen = 0.2;
  e.cell_seen = 0.8;
  e.drones_seen = 0.8;
  e.drones_half = 50;
  e.pollen_error = 0.7;
  e.pollen_little_kg = 0.1;
  e.pollen_some_kg = 0.4;
  e.pollen_plenty_kg = 1;
  e.pollen_in_brood = 0.8;
  e.pollen_in_broodless = 0.4;
  e.calm_queenright = 0.85;
  e.calm_queenless = 0.6;
  e.laying_workers_said = 0.3;
  e.laying_workers_mistaken = 0.003;
  e.quick_look = 0.1;
  e.outside_look = 0.01;
  e.false_sight = 0.01;
  e.mistaken = 1e-6;  // all but switched off
  e.wrong_look_trouble = 0.5;
  e.wrong_look_sound = 0.05;
  e.scale_error = 1;
  e.live_bee_kg = 0.0001;
  e.brood_cell_kg = 0.0001;
  e.comb_kg = 0.5;
  return e;
}

Visible colony() {
  return {.bees = 20000,
          .drones = 200,
          .eggs = 4000,
          .larvae = 8000,
          .capped_cells = 16000,
          .brood_cells = 28000,
          .stores_kg = 10,
          .pollen_kg = 1,
          .mites = 1000,
          .mites_on_adults = 400,
          .infested_share = 0.05};
}

double judge(const Sight& sight, const Visible& there, double fallen = 0, bool swarmed = false) {
  return log_likelihood(sight, there, fallen, swarmed, ObserverTraits{}, errors());
}

TEST(Observation, of_nothing_says_nothing) {
  EXPECT_EQ(judge(entries::Inspection{}, colony()), 0.0);
}

TEST(Observation, of_laying_workers_speaks_for_a_stock_without_a_queen_and_their_eggs_for_no_queen) {
  Visible queenless = colony();
  queenless.laying_queen = false;
  queenless.eggs = queenless.larvae = 0;
  entries::Inspection seen;
  seen.eggs = true;
  EXPECT_GT(judge(seen, colony()), judge(seen, queenless));
  seen.signs = {"laying_workers"};
  EXPECT_GT(judge(seen, queenless), judge(seen, colony()) + 4);
}

TEST(Observation, of_queen_cells_not_looked_for_is_not_none_seen) {
  Visible with_cells = colony();
  with_cells.charged_cells = 8;
  entries::Inspection not_looked;
  not_looked.seams = 10;
  EXPECT_EQ(judge(not_looked, with_cells), judge(not_looked, colony()));

  entries::Inspection full;
  full.charged_cells = 0;
  // Eight cells each missed with 0.2: as good as impossible, up to the slip of 1 %.
  const double missed = 1 - (0.01 + 0.98 * (1 - std::pow(0.2, 8)));
  EXPECT_NEAR(judge(full, with_cells), std::log(missed), 1e-9);
  EXPECT_NEAR(judge(full, colony()), std::log(0.99), 1e-9);

  entries::Inspection outside = full;
  outside.look = entries::Look::outside;
  EXPECT_GT(judge(outside, with_cells), std::log(0.9));  // says next to nothing
}

TEST(Observation, counts_as_far_as_was_looked) {
  entries::Inspection look;
  look.capped_cells = 0;
  look.drone_cells = 0;
  EXPECT_LT(judge(look, colony()), -10) << "a full look that finds none says that there is none";
  look.look = entries::Look::quick;
  EXPECT_EQ(judge(look, colony()), 0) << "who lifts no comb sees none";
  look.seams = 1;
  EXPECT_LT(judge(look, colony()), -3) << "seams are seen from above";
  look.look = entries::Look::outside;
  EXPECT_EQ(judge(look, colony()), 0);
}

TEST(Observation, of_several_queen_cells_is_less_likely_a_mistake_than_of_one) {
  entries::Inspection one;
  one.charged_cells = 1;
  entries::Inspection four;
  four.charged_cells = 4;
  EXPECT_NEAR(judge(one, colony()), std::log(0.01), 1e-9);
  EXPECT_NEAR(judge(four, colony()), std::log(0.01 / 4), 1e-9);
  Visible with_cells = colony();
  with_cells.charged_cells = 4;
  EXPECT_NEAR(judge(four, with_cells), std::log(0.99 - (0.99 - 0.01 / 4) * std::pow(0.2, 4)), 1e-9);
}

TEST(Observation, of_the_queen_proves_her_but_missing_her_proves_little) {
  Visible queenless = colony();
  queenless.laying_queen = false;
  entries::Inspection seen;
  seen.queen = true;
  EXPECT_NEAR(judge(seen, colony()) - judge(seen, queenless), std::log(0.5) - std::log(0.01), 1e-9);
  seen.queen = false;
  EXPECT_NEAR(judge(seen, colony()) - judge(seen, queenless), std::log(0.5) - std::log(0.99), 1e-9);
}

TEST(Observation, of_eggs_depends_on_how_many_there_are) {
  entries::Inspection look;
  look.eggs = false;
  Visible few = colony();
  few.eggs = 50;
  Visible none = colony();
  none.eggs = 0;
  EXPECT_NEAR(judge(look, none), std::log(0.99), 1e-9);
  EXPECT_NEAR(judge(look, few), std::log(1 - (0.01 + 0.98 * 0.45)), 1e-9);
  EXPECT_LT(judge(look, colony()), judge(look, few));
}

TEST(Observation, of_seams_is_an_interval_about_the_bees_per_seam) {
  entries::Inspection look;
  look.seams = 8;
  EXPECT_NEAR(judge(look, colony()), log_grained_lognormal(8, 10, 0.2, 0.5, 0.5), 1e-4);
  ObserverTraits sees_less;
  sees_less.bees_factor = 0.8;
  EXPECT_GT(log_likelihood(look, colony(), 0, false, sees_less, errors()), judge(look, colony()));
}

TEST(Observation, of_a_board_is_negative_binomial_in_days_share_and_factor) {
  entries::MiteCount board;
  board.mites = 12;
  board.days = 3;
  board.board_share = 0.5;
  ObserverTraits half;
  half.board_factor = 0.5;
  // 60 fallen in three days, half the board counted, half of them found: 15 expected.
  EXPECT_NEAR(log_likelihood(board, colony(), 60, false, half, errors()), log_negative_binomial(12, 15, 5),
              1e-3);
  board.days = 1.5;  // stands for two whole days of the model, three quarters of the time
  EXPECT_EQ(board_days(board), 2);
  EXPECT_NEAR(judge(board, colony(), 40), log_negative_binomial(12, 15, 5), 1e-3);
}

TEST(Observation, of_a_full_board_is_all_counts_from_there_on) {
  entries::MiteCount board;
  board.mites = 20;
  board.days = 3;
  board.at_least = true;
  double fewer = 0;
  for (int n = 0; n < 20; ++n) fewer += std::exp(log_negative_binomial(n, 15, 5));
  EXPECT_NEAR(judge(board, colony(), 15), std::log(1 - fewer), 1e-3);
  board.mites = 0;  // so many or more there always are
  EXPECT_NEAR(judge(board, colony(), 15), 0, 1e-12);
}

TEST(Observation, of_infested_cells_or_more_is_the_sum_of_all_of_them) {
  entries::MiteCount brood;
  brood.method = entries::MiteMethod::brood;
  brood.cells = 40;
  brood.at_least = true;
  brood.mites = 3;
  double fewer = 0;
  for (int n = 0; n < 3; ++n) fewer += std::exp(log_beta_binomial(n, 40, colony().infested_share, 0.05));
  EXPECT_NEAR(judge(brood, colony()), std::log(1 - fewer), 1e-3);
}

TEST(Observation, of_a_roll_is_negative_binomial_in_the_mites_on_bees) {
  entries::MiteCount roll;
  roll.method = entries::MiteMethod::sugar_roll;
  roll.mites = 6;
  roll.bees = 300;
  // 400 mites on 20,000 bees, 300 bees, 0.9 recovered: 5.4.
  EXPECT_NEAR(judge(roll, colony()), log_negative_binomial(6, 5.4, 4), 1e-3);
}

TEST(Observation, of_opened_cells_is_beta_binomial) {
  entries::MiteCount brood;
  brood.method = entries::MiteMethod::brood;
  brood.mites = 4;
  brood.cells = 100;
  EXPECT_NEAR(judge(brood, colony()), log_beta_binomial(4, 100, 0.05, 0.05), 1e-4);
}

TEST(Observation, of_the_whole_weight_tells_of_change_whatever_the_tare) {
  Visible later = colony();
  later.stores_kg += 5;
  EXPECT_NEAR(whole_hive_kg(later, 30, errors()) - whole_hive_kg(colony(), 30, errors()), 5.0, 1e-12);
}

TEST(Observation, a_harvest_says_that_so_much_was_there_and_nothing_of_what_was_left) {
  const auto with = [](double kg) {
    Visible there = colony();
    there.stores_kg = kg;
    return judge(Taken{20}, there);
  };
  EXPECT_LT(with(5), with(20) - 2);
  EXPECT_LT(with(20), with(30));
  EXPECT_NEAR(with(60), with(120), 1e-3);
  Visible nest = colony();  // with boxes on it is they that are taken
  nest.stores_kg = 60;
  nest.super_kg = 3;
  nest.dwelling.super_combs = 10;
  EXPECT_LT(judge(Taken{20}, nest), with(60) - 2);
}

TEST(Observation, is_never_impossible_and_never_nonsense) {
  Visible dead;
  dead.alive = false;
  dead.laying_queen = false;
  entries::Inspection busy;
  busy.seams = 12;
  busy.eggs = true;
  entries::MiteCount many;
  many.mites = 100000;
  const std::vector<Sight> sights{busy,      many,        entries::Weight{}, DeadOut{},
                                  LivedOn{}, SwarmSeen{}, Taken{1000}};
  for (const Sight& sight : sights) {
    for (const Visible& there : {dead, colony(), Visible{}}) {
      const double log = judge(sight, there);
      EXPECT_TRUE(std::isfinite(log));
      EXPECT_GE(log, -60.0);
    }
  }
  EXPECT_GT(judge(DeadOut{}, dead), judge(DeadOut{}, colony()));
  EXPECT_LT(judge(busy, dead), judge(busy, colony()));
}

}  // namespace
}  // namespace beegarth::belief
