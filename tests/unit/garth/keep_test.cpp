#include "garth/keep/keep.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;

// Where the first of several drafts stands that may not be kept.
std::string where(const std::vector<book::Draft>& drafts) {
  const ToldBook book;
  const auto fit = may_be_kept(book.all(), drafts, *Tables::built_in());
  return fit ? "kept" : fit.problem().where;
}
book::Draft on(int month, int day, entries::Payload payload) {
  return {.happened = day_of(month, day), .payload = std::move(payload)};
}

TEST(Keep, of_one_entry_its_field_alone_is_named) {
  EXPECT_EQ(where({on(5, 1, entries::Note{.text = " \u00a0\n"})}), "text");
}

TEST(Keep, of_several_the_one_at_fault_is_counted_out_with_what_it_is_refused_for) {
  EXPECT_EQ(where({on(5, 1, ropy(alder)), on(5, 2, entries::Note{.text = "hot"}),
                   on(5, 3, entries::Room{.colony = alder, .super_combs = 10})}),
            "entry 3 of the 3 given, entry 1 of the 3 given");
  EXPECT_EQ(where({on(5, 2, entries::Note{.text = "hot"}), on(5, 3, entries::Feed{.colony = ColonyId("x")})}),
            "entry 2 of the 2 given, kg");
}

TEST(Keep, a_needed_text_is_not_blank_in_any_script) {
  for (const char* blank : {" ", "\t\n", "\u3000", "\u2009\u200b", "\ufeff"})
    EXPECT_EQ(where({on(5, 1, entries::Cleared{.colony = alder, .by = blank})}), "by") << blank;
  EXPECT_EQ(where({on(5, 1, entries::Cleared{.colony = alder, .by = "\u00e9"})}), "kept");
}

TEST(Keep, what_is_printed_inside_a_line_is_written_on_one) {
  const auto planted = [](const char* plant, const char* remark) {
    return on(5, 1, entries::Planted{.site = SiteId("bank"), .plant = plant, .remark = remark});
  };
  EXPECT_EQ(where({planted("goat\nwillow", "in the ditch")}), "plant");
  EXPECT_EQ(where({planted("goat willow", "in the ditch,\nhalf of it wet")}), "kept");
}

TEST(Keep, what_is_likelier_a_slip_is_refused_at_the_door_and_no_rule_of_the_book) {
  const auto wash = [](int mites, int bees) {
    return on(5, 1,
              entries::MiteCount{
                  .colony = alder, .method = entries::MiteMethod::wash, .mites = mites, .bees = bees});
  };
  EXPECT_EQ(where({wash(300, 9)}), "mites");
  EXPECT_EQ(where({wash(300, 200)}), "kept");
  EXPECT_EQ(where({on(5, 1, entries::Weather{.site = SiteId("bank"), .wind_m_s = 9, .gust_m_s = 4})}),
            "gust_m_s");
  EXPECT_EQ(where({on(5, 1, entries::Planted{.site = SiteId("bank"), .plant = "willow", .count = 0})}),
            "count");
  EXPECT_TRUE(entries::validate(wash(300, 9).payload)) << "an old book that has it can still be read";
}

TEST(Keep, a_setting_that_nothing_asks_for_is_refused) {
  EXPECT_EQ(where({on(5, 1, entries::Setting{.name = "label_adress", .value = "x"})}), "name");
  EXPECT_EQ(where({on(5, 1, entries::Setting{.name = "label_address", .value = "x"})}), "kept");
}

TEST(Keep, a_setting_has_a_value_that_can_be_read) {
  const std::vector<std::pair<entries::Setting, const char*>> cases = {
      {{"people", "2"}, "kept"},
      {{"people", "2.5"}, "value"},
      {{"people", "some"}, "value"},
      {{"people", "11"}, "value"},
      {{"price_per_hour", "12.5"}, "kept"},
      {{"price_per_hour", "nan"}, "value"},
      {{"price_per_hour", "12 pounds"}, "value"},
      {{"label_infant_caution", "yes"}, "kept"},
      {{"label_infant_caution", "maybe"}, "value"},
      {{"emergency_number", "999"}, "kept"},
      {{"emergency_number", "the doctor"}, "value"},
      {{"today", "2026-05-03"}, "kept"},
      {{"today", "3 May"}, "value"}};
  for (const auto& [setting, at] : cases)
    EXPECT_EQ(where({on(5, 1, setting)}), at) << setting.name << " = " << setting.value;
}

TEST(Keep, more_honey_than_any_comb_holds_and_an_end_in_nobody_are_refused) {
  EXPECT_EQ(where({on(7, 1, entries::Harvest{.colony = alder, .kg = 300, .combs = 1})}), "kg");
  EXPECT_EQ(where({on(7, 1, entries::Harvest{.colony = alder, .kg = 9, .combs = 1})}), "kept");
  EXPECT_EQ(where({on(7, 1, entries::ColonyEnded{.colony = alder, .how = entries::Ending::united})}), "how");
}

TEST(Keep, an_answer_to_a_need_that_is_never_made_is_refused) {
  EXPECT_EQ(where({on(5, 1, entries::NeedAnswered{.need = "fed/alder"})}), "need");
  EXPECT_EQ(where({on(5, 1, entries::NeedAnswered{.need = "feed/alder"})}), "kept");
}

TEST(Keep, nothing_is_put_off_into_the_past) {
  using Answer = entries::NeedAnswered::Answer;
  const auto until = [](Date day) {
    return on(5, 10, entries::NeedAnswered{.need = "feed/alder", .answer = Answer::put_off, .until = day});
  };
  EXPECT_EQ(where({until(day_of(5, 9))}), "until");
  EXPECT_EQ(where({until(day_of(5, 10))}), "kept");
}

TEST(Keep, combs_are_not_younger_than_the_day_they_are_told_of) {
  const entries::Combs combs{.combs = CombsId("c"), .name = "c", .count = 3, .drawn_year = 2027};
  EXPECT_EQ(where({on(5, 1, combs)}), "drawn_year");
}

}  // namespace
}  // namespace beegarth::garth
