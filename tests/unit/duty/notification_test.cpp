#include "duty/notification.hpp"

#include <gtest/gtest.h>

#include "overridden.hpp"

namespace beegarth::duty {
namespace {

const FactTable& signs() {
  static const FactTable table = testing::rows_of("duty_signs");
  return table;
}

Notification told(const Suspicion& suspicion, const FactTable& country = testing::rows_of("duty_england")) {
  const auto answer = notification_of(suspicion, country, signs());
  if (answer) return *answer;
  ADD_FAILURE() << one_line(answer.problem());
  return {};
}

TEST(Notification, every_country_has_every_row_for_every_subject) {
  for (const char* country : country_tables) {
    Suspicion all;
    for (std::size_t i = 0; i < subject_keys.size(); ++i) all.subjects.push_back(static_cast<Subject>(i));
    all.date = Date::from_ymd(2026, 6, 1);
    const Notification answer = told(all, testing::rows_of(country));
    EXPECT_EQ(answer.reports.size(), subject_keys.size()) << country;
    for (const Report& report : answer.reports) EXPECT_FALSE(report.law.empty() || report.source.empty());
    EXPECT_FALSE(answer.to.empty());
  }
}

TEST(Notification, the_gravest_stands_first) {
  const Notification answer = told({.subjects = {Subject::varroa, Subject::tropilaelaps}});
  ASSERT_EQ(answer.reports.size(), 2U);
  EXPECT_EQ(answer.reports[0].subject, Subject::tropilaelaps);
  EXPECT_EQ(answer.due, 2);
  EXPECT_NE(answer.at_once.front().find("today"), std::string::npos);
}

TEST(Notification, a_sign_that_stands_for_nothing_is_told_back) {
  const Notification answer = told({.signs = {"chalk_brood", "ropy_larva"}});
  ASSERT_EQ(answer.reports.size(), 1U);
  EXPECT_EQ(answer.reports[0].signs, std::vector<std::string>{"ropy_larva"});
  EXPECT_EQ(answer.signs_of_nothing_notifiable, std::vector<std::string>{"chalk_brood"});
  const Notification harmless = told({.signs = {"chalk_brood"}});
  EXPECT_EQ(harmless.due, 0);
  ASSERT_EQ(harmless.at_once.size(), 1U);
  EXPECT_NE(harmless.at_once[0].find("in doubt ask"), std::string::npos);
}

// An island that is kept free of varroa.
TEST(Notification, a_keeper_whose_place_has_its_own_rule_overrides_the_row) {
  const Suspicion varroa{.subjects = {Subject::varroa}, .hives_at_place = 6};
  EXPECT_FALSE(told(varroa).movement_stops);
  EXPECT_TRUE(told(varroa, overridden("duty_scotland", "varroa_stops_movement", 1)).movement_stops);
  const Suspicion again{.subjects = {Subject::varroa}, .reported_earlier = {Subject::varroa}};
  EXPECT_EQ(told(again).due, 0);
  EXPECT_EQ(told(again, overridden("duty_scotland", "varroa_once_per_place", 0)).due, 1);
}

TEST(Notification, a_table_that_makes_no_sense_is_told_by_its_row) {
  const Suspicion afb{.subjects = {Subject::american_foulbrood}};
  const auto half = notification_of(afb, overridden("duty_england", "american_foulbrood_duty", 1.5), signs());
  ASSERT_FALSE(half);
  EXPECT_EQ(half.problem().where, "duty_england.toml: row 'american_foulbrood_duty'");
  const auto gone = notification_of(afb, without("duty_england", "american_foulbrood_law"), signs());
  ASSERT_FALSE(gone);
  EXPECT_NE(gone.problem().what.find("american_foulbrood_law"), std::string::npos);
}

}  // namespace
}  // namespace beegarth::duty
