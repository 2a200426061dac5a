// The label of a jar: height of figures, lot, and what must be on it, each with its source.
#include <gtest/gtest.h>

#include "calc_answers.hpp"

namespace beegarth {
namespace {

using garth::Json;

Json label(double net_weight_g, const char* best_before = nullptr) {
  Json input{{"country", "england"}, {"net_weight_g", net_weight_g}};
  if (best_before) input["best_before"] = best_before;
  return testing::answer("honey-label", input);
}

// A label supplier's page and a club's page on labelling: 2 mm below 50 g, 3 mm from 50 to 200 g, 4 mm from
// 200 to 1000 g, 6 mm above 1 kg.
TEST(HoneyLabel, the_figures_grow_with_the_weight) {
  struct Case {
    double net_weight_g, height_mm;
  };
  for (const Case& c : {Case{28, 2}, {42, 2}, {113, 3}, {227, 4}, {340, 4}, {454, 4}, {1000, 4}, {1100, 6}})
    EXPECT_EQ(label(c.net_weight_g)["figure_height_min_mm"], c.height_mm) << c.net_weight_g;
}

// Food Standards guidance on the Food (Lot Marking) Regulations 1996, and a label supplier's and a club's
// page: a lot mark, unless the best-before date has day, month and year.
TEST(HoneyLabel, a_lot_is_needed_unless_the_best_before_has_a_day) {
  for (const char* without : {"May 2027", "end of May 2027", "2027-05", "05/2027", "2027"})
    EXPECT_EQ(label(454, without)["lot_needed"], true) << without;
  for (const char* with : {"14 May 2027", "2027-05-14", "14/05/2027", "14.5.2027", "May 14 2027"})
    EXPECT_EQ(label(454, with)["lot_needed"], false) << with;
}

// The same pages: name, net weight, address, country of origin, best-before, lot.
TEST(HoneyLabel, names_everything_that_must_be_on_it) {
  const Json bare = label(454);
  EXPECT_EQ(bare["missing"], Json::array({"name", "address", "origin", "best_before", "lot"}));
  EXPECT_EQ(bare["complete"], false);
  for (const auto& fact : bare["facts"]) EXPECT_FALSE(fact["source"].get<std::string>().empty());
  Json input{{"country", "scotland"},
             {"net_weight_g", 340},
             {"name", "Honey"},
             {"address", "Larkmoor Bees, Larkmoor (invented)"},
             {"origin", "Produce of Scotland"},
             {"best_before", "May 2027"},
             {"lot", "L4"},
             {"figure_height_mm", 4}};
  EXPECT_EQ(testing::answer("honey-label", input)["complete"], true);
  input["figure_height_mm"] = 3;
  const Json small = testing::answer("honey-label", input);
  EXPECT_EQ(small["complete"], false);
  EXPECT_EQ(small["faults"].size(), 1U);
  // A label page: a caution for infants under 12 months is advised, which is not a fault.
  EXPECT_EQ(small["advised"], Json::array({"infant_caution"}));
}

// As clubs read "wholly or mainly": three quarters of a plant that the label names.
TEST(HoneyLabel, a_plant_may_be_named_where_three_quarters_are_of_it) {
  const auto faults = [](double share) {
    return testing::answer(
               "honey-label",
               {{"country", "wales"}, {"net_weight_g", 454}, {"named_plant_share_pct", share}})["faults"]
        .size();
  };
  EXPECT_EQ(faults(75), 0U);
  EXPECT_EQ(faults(74), 1U);
}

TEST(HoneyLabel, a_date_that_is_none_is_refused) {
  for (const char* none : {"31 February 2027", "soon", "14 Mai 2027 or so", "13/2027", "May", "2027-05-14-3"})
    EXPECT_TRUE(testing::refuses("honey-label",
                                 {{"country", "england"}, {"net_weight_g", 454}, {"best_before", none}}))
        << none;
}

}  // namespace
}  // namespace beegarth
