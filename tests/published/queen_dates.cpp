// The calendar of queens and brood. Stage tables ("Honey Bee Biology"; encyclopedia page "Queen Bee -
// Development"); Heidinger et al. 2014 for the flights; the sums over them are arithmetic.
#include <gtest/gtest.h>

#include "calc_answers.hpp"
#include "colony/marking.hpp"

namespace beegarth {
namespace {

using garth::Json;

Json dates(const Json& input) {
  return testing::answer("queen-dates", input)["dates"];
}

// The row of that name, or null.
Json row(const Json& rows, std::string_view what) {
  for (const Json& r : rows) {
    if (r["what"] == what) return r;
  }
  return nullptr;
}

TEST(QueenDates, a_queen_caged_for_25_days_leaves_no_capped_brood_from_day_21_or_24_to_day_34) {
  const auto rows =
      dates({{"event", "queen_caged"}, {"date", "2026-07-01"}, {"released_date", "2026-07-26"}});
  EXPECT_EQ(row(rows, "window_worker_only_start")["likely"], "2026-07-22");
  EXPECT_EQ(row(rows, "window_start")["likely"], "2026-07-25");
  EXPECT_EQ(row(rows, "window_end")["likely"], "2026-08-04");
  EXPECT_EQ(row(rows, "no_open_brood")["likely"], "2026-07-10");
}

TEST(QueenDates, a_short_caging_leaves_no_window) {
  const auto rows =
      dates({{"event", "queen_caged"}, {"date", "2026-07-01"}, {"released_date", "2026-07-09"}});
  EXPECT_TRUE(row(rows, "window_start").is_null());
  EXPECT_TRUE(row(rows, "window_end").is_null());
}

TEST(QueenDates, a_queen_raised_from_an_old_larva_lays_after_18_to_22_days) {
  const auto rows = dates({{"event", "queen_lost"}, {"date", "2026-06-01"}, {"brood_age_days", 4.5}});
  EXPECT_EQ(row(rows, "laying")["earliest"], "2026-06-19");  // 18.5 days, rounded down
  EXPECT_EQ(row(rows, "laying")["latest"], "2026-06-23");    // 21.5 days, rounded up
}

TEST(QueenDates, after_a_swarm_the_young_queen_lays_from_day_14_to_18) {
  const auto rows = dates({{"event", "swarm_left"}, {"date", "2026-06-01"}});
  EXPECT_EQ(row(rows, "laying")["earliest"], "2026-06-15");
  EXPECT_EQ(row(rows, "laying")["latest"], "2026-06-19");
  EXPECT_EQ(row(rows, "virgin_emerges")["earliest"], "2026-06-08");
  EXPECT_EQ(row(rows, "window_end")["earliest"], "2026-06-24");
  EXPECT_EQ(row(rows, "window_end")["latest"], "2026-06-28");
}

TEST(QueenDates, a_grafted_larva_is_sealed_after_four_days_and_out_after_twelve) {
  const auto rows = dates({{"event", "larva_grafted"}, {"date", "2026-05-01"}});
  EXPECT_EQ(row(rows, "cell_sealed")["likely"], "2026-05-05");
  EXPECT_EQ(row(rows, "virgin_emerges")["likely"], "2026-05-13");
}

TEST(QueenDates, rows_come_in_order_and_every_range_is_one) {
  for (const char* event : {"egg_laid", "larva_grafted", "queen_lost", "swarm_left", "queen_caged",
                            "queen_released", "cell_sealed", "virgin_emerged"}) {
    std::string before;
    const auto rows = dates({{"event", event}, {"date", "2026-05-20"}});
    EXPECT_FALSE(rows.empty()) << event;
    for (const Json& r : rows) {
      const std::string earliest = r["earliest"];
      EXPECT_LE(before, earliest) << event;
      EXPECT_LE(earliest, r["likely"].get<std::string>()) << event << " " << r["what"];
      EXPECT_LE(r["likely"].get<std::string>(), r["latest"].get<std::string>()) << event << " " << r["what"];
      before = earliest;
    }
  }
}

// Arithmetic: what follows from another never comes before it, at the earliest, likely or latest.
TEST(QueenDates, nothing_comes_before_what_it_follows_from) {
  const std::vector<std::pair<const char*, const char*>> in_order = {
      {"cell_sealed", "virgin_emerges"}, {"virgin_emerges", "mating_from"}, {"mating_from", "mating_until"},
      {"mating_from", "laying"},         {"virgin_emerges", "laying"},      {"laying", "eggs_visible"},
      {"eggs_visible", "worker_capped"}};
  for (const char* event : {"egg_laid", "larva_grafted", "queen_lost", "swarm_left", "queen_caged",
                            "queen_released", "cell_sealed", "virgin_emerged"}) {
    const auto rows = dates({{"event", event}, {"date", "2026-05-20"}});
    for (const auto& [before, after] : in_order) {
      const Json first = row(rows, before), then = row(rows, after);
      if (first.is_null() || then.is_null()) continue;
      for (const char* when : {"earliest", "likely", "latest"})
        EXPECT_LE(first[when].get<std::string>(), then[when].get<std::string>())
            << event << ": " << when << " " << before << ", " << after;
    }
  }
}

TEST(QueenDates, what_cannot_be_is_refused) {
  EXPECT_TRUE(testing::refuses("queen-dates",
                               {{"event", "queen_lost"}, {"date", "2026-06-01"}, {"brood_age_days", 5}}));
  EXPECT_TRUE(testing::refuses("queen-dates",
                               {{"event", "swarm_left"}, {"date", "2026-06-01"}, {"brood_age_days", 4}}));
  EXPECT_TRUE(testing::refuses(
      "queen-dates", {{"event", "egg_laid"}, {"date", "2026-06-01"}, {"released_date", "2026-06-02"}}));
  EXPECT_TRUE(testing::refuses(
      "queen-dates", {{"event", "queen_caged"}, {"date", "2026-06-10"}, {"released_date", "2026-06-02"}}));
  EXPECT_TRUE(testing::refuses("queen-dates", {{"event", "wedding"}, {"date", "2026-06-10"}}));
}

// Handbook page on swarm arithmetic: sealed at 8 days, so seven days for an egg missed, four for a larva of
// one day.
TEST(NextLook, is_over_before_a_cell_can_be_sealed) {
  const auto days = [](Json more) {
    more["date"] = "2026-05-20";
    return testing::answer("next-look", more)["days"].get<double>();
  };
  EXPECT_EQ(days(Json::object()), 7);
  EXPECT_EQ(days({{"oldest_larva_days", 1}}), 4);
  EXPECT_EQ(testing::answer("next-look", {{"date", "2026-05-20"}})["next_look"], "2026-05-27");
}

// The same page.
TEST(SplitDates, the_brood_is_moved_again_a_day_before_the_virgin) {
  const auto rows = dates({{"event", "cell_sealed"}, {"date", "2026-05-01"}});
  EXPECT_EQ(row(rows, "split_moved_again")["likely"], "2026-05-08");
  EXPECT_EQ(row(rows, "virgin_emerges")["likely"], "2026-05-09");
}

// Club and list pages on queen marking colours: an international convention.
TEST(Marking, follows_the_last_figure_of_the_year) {
  EXPECT_EQ(colony::marking_colour(2026), "white");
  EXPECT_EQ(colony::marking_colour(2027), "yellow");
  EXPECT_EQ(colony::marking_colour(2028), "red");
  EXPECT_EQ(colony::marking_colour(2029), "green");
  EXPECT_EQ(colony::marking_colour(2030), "blue");
}

}  // namespace
}  // namespace beegarth
