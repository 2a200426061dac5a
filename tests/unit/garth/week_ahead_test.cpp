// The weather ahead typed as rows: what is left out says nothing, a wrong row is named, all is kept or none.
// Everything invented.
#include "garth/plan/week_ahead.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <memory>

#include "garth/keep/keep.hpp"

namespace beegarth::garth {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::SizeIs;

const Date today = *Date::from_ymd(2026, 6, 3);

class WeekAheadTyped : public ::testing::Test {
 protected:
  void SetUp() override {
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    const std::string path = (folder / "week.garth").string();
    ASSERT_TRUE(book::Book::open(path, {.create = true}, machine_surroundings()));
    auto opened = open_session(path, {.today = today, .read_only = false});
    ASSERT_TRUE(opened);
    session = std::make_unique<Session>(*std::move(opened));
    ASSERT_TRUE(keep(
        *session, {{.happened = today,
                    .payload = entries::Site{
                        .site = SiteId("bank"), .name = "Bank", .latitude_deg = 51, .longitude_deg = -1}}}));
    ASSERT_TRUE(refresh(*session));
  }
  void TearDown() override {
    session.reset();
    std::filesystem::remove_all(folder);
  }
  Expected<WeekAhead> typed(const std::string& rows, bool keep_it = true, const char* site = "all") {
    const auto days = days_in_lines(rows);
    if (!days) return days.problem();
    return foretell(*session, site, *days, keep_it);
  }
  std::size_t entries_kept() const { return session->book.entries()->size(); }

  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("beegarth-week-" + std::to_string(::getpid()));
  std::unique_ptr<Session> session;
};

TEST_F(WeekAheadTyped, becomes_one_forecast_a_day_of_what_was_said) {
  const auto week =
      typed("-- a copied forecast\n2026-06-03  19 9 2 4 9\n2026-06-04, 21.5, -, 0\n2026-06-05 - -\n\n", true,
            "Bank");
  ASSERT_TRUE(week) << one_line(week.problem());
  ASSERT_THAT(week->entries, SizeIs(2));
  EXPECT_TRUE(week->kept);
  const auto& first = std::get<entries::Weather>(week->entries[0].payload);
  EXPECT_EQ(first.site, SiteId("bank"));
  EXPECT_TRUE(first.forecast);
  EXPECT_EQ(first.gust_m_s, 9);
  const auto& second = std::get<entries::Weather>(week->entries[1].payload);
  EXPECT_EQ(week->entries[1].happened, today + 1);
  EXPECT_EQ(second.temperature_max_C, 21.5);
  EXPECT_FALSE(second.temperature_min_C);
  EXPECT_EQ(second.rain_mm, 0);
  EXPECT_FALSE(second.wind_m_s);
}

TEST_F(WeekAheadTyped, is_only_judged_until_it_is_to_be_kept) {
  const std::size_t before = entries_kept();
  const auto week = typed("2026-06-03 19\n", false);
  ASSERT_TRUE(week);
  EXPECT_FALSE(week->kept);
  EXPECT_EQ(entries_kept(), before);
}

TEST_F(WeekAheadTyped, with_one_wrong_row_keeps_nothing_and_names_it) {
  const std::size_t before = entries_kept();
  for (const auto& [row, what] : {std::pair("2026-06-04 warm", "no number for max C"),
                                  {"Thursday 19", "is not a date"},
                                  {"2026-06-02 19", "is over"},
                                  {"2026-06-18 19", "more than two weeks away"},
                                  {"2026-06-03 20", "stands there twice"},
                                  {"2026-06-04 19 9 2 4 9 7", "more than five"},
                                  {"2026-06-04 9 19", "minimum is above"},
                                  {"2026-06-04 19 9 2 9 4", "weaker than the wind"},
                                  {"2026-06-04 nan", "no number"},
                                  {"2026-06-04 90", "temperature_max_C"}}) {
    const auto week = typed(std::string("2026-06-03 19\n") + row + "\n");
    ASSERT_FALSE(week) << row;
    EXPECT_THAT(one_line(week.problem()), HasSubstr(what)) << row;
    EXPECT_EQ(week.problem().where, "line 2") << row;
  }
  EXPECT_FALSE(typed("-- nothing\n2026-06-03 - -\n"));
  EXPECT_FALSE(typed("2026-06-03 19\n", true, "Nowhere"));
  EXPECT_EQ(entries_kept(), before);
}

TEST_F(WeekAheadTyped, as_printed_to_be_filled_in_reads_back_as_seven_empty_days) {
  const auto days = days_in_lines(week_to_fill_in(today));
  ASSERT_TRUE(days);
  EXPECT_THAT(*days, SizeIs(7));
  for (const DayAhead& day : *days) EXPECT_TRUE(day.is_empty());
  EXPECT_EQ(days->back().date, today + 6);
}

}  // namespace
}  // namespace beegarth::garth
