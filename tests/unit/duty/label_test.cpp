#include "duty/label.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "duty/best_before.hpp"
#include "overridden.hpp"

namespace beegarth::duty {
namespace {

using ::testing::HasSubstr;

TEST(BestBefore, is_read_as_labels_are_written) {
  struct Case {
    const char* text;
    int year;
    std::optional<int> month, day;
  };
  for (const Case& c : {Case{"May 2027", 2027, 5, {}},
                        {"14 May 2027", 2027, 5, 14},
                        {"14th of May 2027", 2027, 5, 14},
                        {"May 14, 2027", 2027, 5, 14},
                        {"2027-05-14", 2027, 5, 14},
                        {"14/05/2027", 2027, 5, 14},
                        {"14.5.2027", 2027, 5, 14},
                        {"05/2027", 2027, 5, {}},
                        {"2027-05", 2027, 5, {}},
                        {"2027", 2027, {}, {}},
                        {"Best before end: Sept 2027", 2027, 9, {}},
                        {"BEST BEFORE END DEC 2027", 2027, 12, {}},
                        {"29 February 2028", 2028, 2, 29}}) {
    const auto date = read_best_before(c.text);
    ASSERT_TRUE(date) << c.text;
    EXPECT_EQ(date->year, c.year) << c.text;
    EXPECT_EQ(date->month, c.month) << c.text;
    EXPECT_EQ(date->day, c.day) << c.text;
  }
}

TEST(BestBefore, refuses_what_is_no_date) {
  for (const char* text :
       {"", "soon", "May", "29 February 2027", "31/04/2027", "0/2027", "13/2027", "14/05/27", "May June 2027",
        "1 2 3 2027", "14 5 May 2027", "99999", "2027 2028", "14 Mai 2027"})
    EXPECT_FALSE(read_best_before(text)) << text;
}

LabelAnswer judged(const Label& label, const FactTable& country = testing::rows_of("duty_england")) {
  const auto answer = judge_label(label, country, testing::rows_of("honey"));
  if (answer) return *answer;
  ADD_FAILURE() << one_line(answer.problem());
  return {};
}

// At 50 g the sources disagree; the larger figure satisfies both.
TEST(Label, figures_at_the_limits_of_weight) {
  for (const auto& [grams, mm] :
       {std::pair{49.9, 2.0}, {50.0, 3.0}, {200.0, 3.0}, {200.1, 4.0}, {1000.0, 4.0}, {1000.1, 6.0}}) {
    for (const char* country : country_tables)
      EXPECT_EQ(judged({.net_weight_g = grams}, testing::rows_of(country)).figure_height_min_mm, mm) << grams;
  }
}

TEST(Label, a_day_in_the_date_makes_the_lot_needless) {
  Label label{.net_weight_g = 454, .name = "Honey", .address = "a", .origin = "b", .best_before = "May 2027"};
  EXPECT_EQ(judged(label).missing, std::vector<std::string>{"lot"});
  label.best_before = "14 May 2027";
  EXPECT_TRUE(judged(label).complete);
  EXPECT_FALSE(judged(label).lot_needed);
}

TEST(Label, a_name_says_what_is_in_the_jar) {
  const auto faults = [](Label label) {
    label.net_weight_g = 454;
    std::string all;
    for (const std::string& fault : judged(label).faults) all += fault + ". ";
    return all;
  };
  EXPECT_EQ(faults({.name = "Pure Honey"}), "");
  EXPECT_THAT(faults({.name = "Heather Honey"}), HasSubstr("heather, and how much"));
  EXPECT_THAT(faults({.name = "Heather Honey", .named_plant_share_pct = 60}), HasSubstr("wholly or mainly"));
  EXPECT_EQ(faults({.name = "Heather Honey", .named_plant_share_pct = 90}), "");
  EXPECT_EQ(faults({.name = "Honey from Lingfield Court"}), "") << "a word in a word is none";
  EXPECT_THAT(faults({.name = "Forest honey", .source = HoneySource::blossom}), HasSubstr("of blossom"));
  EXPECT_THAT(faults({.name = "Blossom honey", .source = HoneySource::honeydew}), HasSubstr("is honeydew"));
}

TEST(Label, what_is_for_cooking_only_says_so_in_the_reserved_words) {
  const auto faults = [](const char* name, bool bakers, bool words) {
    return judged({.net_weight_g = 454, .name = name, .bakers = bakers, .says_cooking_only = words})
        .faults.size();
  };
  EXPECT_EQ(faults("Honey", true, true), 1U);
  EXPECT_EQ(faults("Baker's Honey", true, false), 1U);
  EXPECT_EQ(faults("Baker's Honey", true, true), 0U);
  EXPECT_EQ(faults("Baker's Honey, intended for cooking only", true, false), 0U);
  EXPECT_EQ(faults("Baker's Honey", false, false), 1U) << "whatever is in it";
}

TEST(Label, what_is_advised_can_be_made_a_must) {
  const Label label{.net_weight_g = 454};
  const auto strict = judged(label, overridden("duty_wales", "label_infant_caution", 2));
  EXPECT_EQ(strict.missing.back(), "infant_caution");
  EXPECT_TRUE(strict.advised.empty());
}

TEST(Label, small_figures_and_a_plant_in_name_only_are_faults) {
  const auto answer = judged({.net_weight_g = 1100, .figure_height_mm = 5.9, .named_plant_share_pct = 40});
  EXPECT_EQ(answer.faults.size(), 2U);
}

}  // namespace
}  // namespace beegarth::duty
