// What a hive offers the one or the two colonies in it.
#include "garth/plan/dwelling.hpp"

#include <gtest/gtest.h>

namespace beegarth::garth {
namespace {

book::State with_hive_of_two(int colonies) {
  book::State state;
  entries::Hive hive;
  hive.hive = HiveId("long");
  hive.form = entries::HiveForm::horizontal;
  hive.brood_combs = 21;
  hive.super_combs = 10;
  hive.conductance_W_K = 2.0;
  hive.two_colonies = true;
  state.hives.emplace(hive.hive, hive);
  for (const char* name : {"alder", "birch"}) {
    if (colonies-- == 0) break;
    book::ColonyState colony;
    colony.hive = hive.hive;
    state.colonies.emplace(ColonyId(name), colony);
  }
  return state;
}

TEST(Dwelling, two_colonies_in_one_hive_have_half_of_it_each_and_a_warm_wall) {
  const auto state = with_hive_of_two(2);
  const auto home = home_of(state, state.colonies.at(ColonyId("alder")));
  EXPECT_EQ(home.brood_combs, 11);
  EXPECT_EQ(home.super_combs, 5);
  EXPECT_DOUBLE_EQ(home.conductance_W_K, 1.0);
  EXPECT_TRUE(home.two_colonies);
}

TEST(Dwelling, one_colony_alone_has_the_whole_hive_made_for_two) {
  const auto state = with_hive_of_two(1);
  const auto home = home_of(state, state.colonies.at(ColonyId("alder")));
  EXPECT_EQ(home.brood_combs, 21);
  EXPECT_FALSE(home.two_colonies);
}

TEST(Dwelling, a_colony_whose_neighbour_has_ended_has_the_whole_again) {
  auto state = with_hive_of_two(2);
  state.colonies.at(ColonyId("birch")).ended = entries::ColonyEnded{};
  EXPECT_EQ(home_of(state, state.colonies.at(ColonyId("alder"))).brood_combs, 21);
}

TEST(Dwelling, a_hive_that_was_never_entered_is_the_usual_one) {
  const book::State state;
  book::ColonyState colony;
  colony.hive = HiveId("nowhere");
  EXPECT_EQ(home_of(state, colony).brood_combs, facts::Dwelling{}.brood_combs);
}

}  // namespace
}  // namespace beegarth::garth
