#include <gtest/gtest.h>

#include "entries/entry.hpp"
#include "entries/fields.hpp"

namespace beegarth::entries {
namespace {

TEST(Validate, negative_bees_are_refused_with_the_field_named) {
  Inspection look;
  look.colony = ColonyId("alder-5");
  look.bees = -3;
  const auto answer = validate(look);
  ASSERT_FALSE(answer);
  EXPECT_EQ(answer.problem().where, "bees");
}

TEST(Validate, a_board_count_needs_its_days) {
  MiteCount count;
  count.colony = ColonyId("alder-5");
  EXPECT_FALSE(validate(count));
  count.days = 7;
  EXPECT_TRUE(validate(count));
}

TEST(Validate, a_wash_needs_its_bees_and_brood_its_cells) {
  EXPECT_FALSE(validate(MiteCount{.colony = ColonyId("a"), .method = MiteMethod::wash, .mites = 4}));
  EXPECT_FALSE(validate(MiteCount{.colony = ColonyId("a"), .method = MiteMethod::brood, .mites = 4}));
  EXPECT_FALSE(
      validate(MiteCount{.colony = ColonyId("a"), .method = MiteMethod::brood, .mites = 9, .cells = 5}));
}

TEST(Validate, a_sign_nobody_knows_is_refused) {
  Inspection look{.colony = ColonyId("a")};
  look.signs = {"purple_larvae"};
  EXPECT_FALSE(validate(look));
  look.signs = {"chalk_brood"};
  EXPECT_TRUE(validate(look));
}

TEST(Validate, a_missing_key_is_refused) {
  EXPECT_FALSE(validate(Inspection{}));
}

TEST(Kinds, every_kind_has_a_name_that_leads_back_to_it) {
  for (std::size_t i = 0; i < kind_count; ++i) {
    const auto payload = empty_payload(kind_name_at(i));
    ASSERT_TRUE(payload) << kind_name_at(i);
    EXPECT_EQ(payload->index(), i);
  }
  EXPECT_FALSE(empty_payload("unheard_of"));
}

TEST(Kinds, an_entry_knows_whom_it_is_about) {
  EXPECT_EQ(colony_of(Feed{.colony = ColonyId("alder-5"), .kg = 2}).text(), "alder-5");
  EXPECT_EQ(site_of(Site{.site = SiteId("bank"), .name = "Bank"}).text(), "bank");
  EXPECT_TRUE(colony_of(Note{.text = "rain"}).empty());
}

}  // namespace
}  // namespace beegarth::entries
