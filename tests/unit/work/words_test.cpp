#include "work/words.hpp"

#include <gtest/gtest.h>

namespace beegarth::work {
namespace {

using List = std::vector<std::string>;

TEST(Packed, NamesAThingOnceAndAddsUpAmounts) {
  EXPECT_EQ(packed({"hive tool", "1 super", "hive tool", "1 super"}), (List{"hive tool", "2 supers"}));
  EXPECT_EQ(packed({"nucleus box, in case of cells", "water", "nucleus box"}),
            (List{"water", "nucleus box"}));
  EXPECT_EQ(packed({"nucleus box, in case of cells", "water"}),
            (List{"nucleus box, in case of cells", "water"}));
  EXPECT_EQ(packed({"syrup for 1.0 kg of sugar", "1 feeder", "syrup for 1.5 kg of sugar", "1 feeder"}),
            (List{"syrup for 2.5 kg of sugar in all", "2 feeders"}));
  EXPECT_EQ(packed({"1 count board, oiled or sticky", "1 count board, oiled or sticky"}),
            (List{"2 count boards, oiled or sticky"}));
}

TEST(Packed, LeavesNumbersThatDescribeAThing) {
  EXPECT_EQ(packed({"measure for 300 bees", "measure for 300 bees"}), (List{"measure for 300 bees"}));
  EXPECT_EQ(packed({"1 super"}), (List{"1 super"}));
  EXPECT_EQ(packed({}), List{});
}

}  // namespace
}  // namespace beegarth::work
