#include "duty/medicine_record.hpp"

#include <gtest/gtest.h>

#include "duty/years.hpp"
#include "overridden.hpp"

namespace beegarth::duty {
namespace {

Date day(int year, int month, int of_month) {
  return *Date::from_ymd(year, month, of_month);
}

TEST(YearsAfter, no_day_is_lost_where_the_day_does_not_exist) {
  EXPECT_EQ(years_after(day(2026, 8, 14), 5), day(2031, 8, 14));
  EXPECT_EQ(years_after(day(2028, 2, 29), 5), day(2033, 3, 1));
  EXPECT_EQ(years_after(day(2028, 2, 29), 4), day(2032, 2, 29));
  EXPECT_EQ(years_after(day(2026, 8, 31), 0.5), day(2027, 3, 1));
  EXPECT_EQ(years_after(day(2026, 12, 31), 1.0 / 12), day(2027, 1, 31));
  EXPECT_EQ(years_after(day(2026, 1, 1), 0), day(2026, 1, 1));
  EXPECT_FALSE(years_after(day(2998, 1, 1), 5));
}

TEST(YearsAfter, is_never_earlier_than_the_day_and_grows_with_the_years) {
  for (Date date = day(2027, 1, 1); date < day(2029, 1, 1); ++date) {
    Date before = date;
    for (int months = 1; months <= 72; ++months) {
      const auto after = years_after(date, months / 12.0);
      ASSERT_TRUE(after);
      ASSERT_GT(*after, before) << date.iso() << " " << months;
      before = *after;
    }
  }
}

MedicineRecord giving() {
  MedicineRecord record;
  record.date = day(2026, 8, 14);
  record.product = "strips (invented)";
  record.amount = "two";
  record.withdrawal_days = 3;
  record.colonies = {"wren"};
  return record;
}

TEST(MedicineRecord, a_batch_is_good_practice_at_the_giving_until_the_keeper_makes_it_a_must) {
  const auto usual = judge_record(giving(), testing::rows_of("duty_england"));
  ASSERT_TRUE(usual);
  EXPECT_TRUE(usual->missing.empty());
  EXPECT_EQ(usual->advised, std::vector<std::string>{"batch"});
  const auto strict = judge_record(giving(), overridden("duty_england", "giving_batch", 2));
  ASSERT_TRUE(strict);
  EXPECT_EQ(strict->missing, std::vector<std::string>{"batch"});
}

TEST(MedicineRecord, honey_goes_the_day_after_the_last_day_of_waiting) {
  MedicineRecord record = giving();
  for (const auto& [taken, may] : {std::pair{day(2026, 8, 13), true},
                                   {day(2026, 8, 14), false},
                                   {day(2026, 8, 17), false},
                                   {day(2026, 8, 18), true}}) {
    record.honey_taken = taken;
    const auto answer = judge_record(record, testing::rows_of("duty_wales"));
    ASSERT_TRUE(answer);
    EXPECT_EQ(answer->withdrawal_end, day(2026, 8, 17));
    EXPECT_EQ(answer->honey_may_be_offered, may) << taken.iso();
  }
}

TEST(MedicineRecord, strips_that_are_still_on_count_to_the_day_they_come_off) {
  MedicineRecord record = giving();
  record.ended = day(2026, 10, 2);
  record.honey_taken = day(2026, 8, 30);
  const auto answer = judge_record(record, testing::rows_of("duty_scotland"));
  ASSERT_TRUE(answer);
  EXPECT_EQ(answer->honey_may_be_offered, false);
  EXPECT_EQ(answer->keep_until, day(2031, 10, 2));
  record.ended = day(2026, 8, 1);
  const auto refused = judge_record(record, testing::rows_of("duty_scotland"));
  ASSERT_FALSE(refused);
  EXPECT_EQ(refused.problem().where, "ended");
}

TEST(MedicineRecord, a_purchase_says_nothing_of_honey) {
  MedicineRecord record;
  record.kind = RecordKind::purchase;
  record.date = day(2026, 7, 1);
  for (const char* country : country_tables) {
    const auto answer = judge_record(record, testing::rows_of(country));
    ASSERT_TRUE(answer);
    EXPECT_FALSE(answer->honey_may_be_offered);
    EXPECT_FALSE(answer->withdrawal_end);
    EXPECT_EQ(answer->keep_until, day(2031, 7, 1));
  }
  EXPECT_FALSE(judge_record(record, overridden("duty_england", "record_keep_years", 500)));
}

}  // namespace
}  // namespace beegarth::duty
