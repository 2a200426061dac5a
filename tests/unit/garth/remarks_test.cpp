// What the usual rules say to entries that were just told. Everything invented.
#include "garth/keep/remarks.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <memory>

#include "garth/keep/keep.hpp"

namespace beegarth::garth {
namespace {

using testing::Contains;
using testing::HasSubstr;
using testing::IsEmpty;

const ColonyId alder("alder");

Date on(int month, int day) {
  return *Date::from_ymd(2026, month, day);
}

// Alder at the Bank, ten super combs on from 2 May to 20 July.
class RemarksOn : public testing::Test {
 protected:
  void SetUp() override {
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    path = (folder / "remarks.garth").string();
    auto book = book::Book::open(path, {.create = true}, machine_surroundings());
    ASSERT_TRUE(book);
    const std::vector<book::Draft> drafts{
        {.happened = on(1, 1),
         .payload =
             entries::Site{.site = SiteId("bank"), .name = "Bank", .latitude_deg = 51, .longitude_deg = -1}},
        {.happened = on(1, 1),
         .payload =
             entries::Hive{.hive = HiveId("h"), .name = "H", .site = SiteId("bank"), .type = "National"}},
        {.happened = on(1, 2),
         .payload = entries::ColonyBegan{.colony = alder, .name = "Alder", .hive = HiveId("h")}},
        {.happened = on(5, 2), .payload = entries::Room{.colony = alder, .super_combs = 10}},
        {.happened = on(7, 20), .payload = entries::Room{.colony = alder, .super_combs = -10}},
    };
    ASSERT_TRUE(book->append(drafts));
  }
  void TearDown() override { std::filesystem::remove_all(folder); }

  // The remarks on an entry that is kept, as lines.
  std::vector<std::string> told(Date day, entries::Payload payload) {
    auto session = open_session(path, {.today = *Date::from_ymd(2026, 12, 31), .read_only = false});
    if (!session) return {one_line(session.problem())};
    const auto kept = keep(*session, {{.happened = day, .payload = std::move(payload)}});
    if (!kept) return {one_line(kept.problem())};
    const auto before = remarks_on(*session, *kept);
    if (const auto again = refresh(*session); !again) return {one_line(again.problem())};
    const auto after = remarks_on(*session, *kept);
    if (!before || !after) return {"no answer"};
    std::vector<std::string> lines;
    for (const Remark& remark : *after) lines.push_back(remark.text());
    EXPECT_EQ(before->size(), after->size()) << "whether the book was read again or not";
    return lines;
  }
  void weather(Date day, double lowest, double highest) {
    auto session = open_session(path, {.today = *Date::from_ymd(2026, 12, 31), .read_only = false});
    ASSERT_TRUE(session);
    ASSERT_TRUE(keep(*session, {{.happened = day,
                                 .payload = entries::Weather{.site = SiteId("bank"),
                                                             .temperature_min_C = lowest,
                                                             .temperature_max_C = highest}}}));
  }
  static entries::Treatment treatment(entries::TreatmentKind kind) {
    return {.colony = alder, .kind = kind, .days = 14};
  }

  std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("beegarth-remarks-" + std::to_string(::getpid()));
  std::string path;
};

TEST_F(RemarksOn, a_figure_that_can_be_but_hardly_is) {
  EXPECT_THAT(told(on(6, 10), entries::MiteCount{.colony = alder, .mites = 6000, .days = 1}),
              Contains(HasSubstr("6000 mites a day on the board")));
  EXPECT_THAT(told(on(6, 11), entries::MiteCount{.colony = alder, .mites = 60, .days = 1}), IsEmpty());
  EXPECT_THAT(told(on(4, 10), entries::Inspection{.colony = alder, .brood_combs = 14}),
              Contains(HasSubstr("14 combs with brood, and the hive 'H' holds 11 combs on 2026-04-10")))
      << "nobody has said a word of boxes by then";
  EXPECT_THAT(told(on(6, 12), entries::Inspection{.colony = alder, .brood_combs = 14}), IsEmpty())
      << "ten combs were put on";
  EXPECT_THAT(told(on(6, 13), entries::Inspection{.colony = alder, .brood_combs = 40}),
              Contains(HasSubstr("cannot be")));
}

TEST_F(RemarksOn, a_treatment_under_supers_that_were_on_that_day) {
  EXPECT_THAT(
      told(on(6, 10), treatment(entries::TreatmentKind::thymol)),
      Contains(HasSubstr("Alder, treatment of 2026-06-10: the usual rules speak against it: boxes for "
                         "people are on")));
  EXPECT_THAT(told(on(8, 10), treatment(entries::TreatmentKind::thymol)), IsEmpty())
      << "they are off by then";
}

// Trade facts: thymol not above 30 C, weak below a mean of 15 C.
TEST_F(RemarksOn, a_treatment_by_the_weather_of_its_days) {
  weather(on(8, 12), 15, 32);
  EXPECT_THAT(told(on(8, 10), treatment(entries::TreatmentKind::thymol)),
              Contains(HasSubstr("too hot for thymol")));
  EXPECT_THAT(told(on(8, 13), treatment(entries::TreatmentKind::thymol)), IsEmpty())
      << "a hot day before is past";
  weather(on(10, 1), 6, 14);
  EXPECT_THAT(told(on(10, 1), treatment(entries::TreatmentKind::thymol)),
              Contains(HasSubstr("mind: below a mean of 15 C thymol is weak")));
}

TEST_F(RemarksOn, nothing_of_what_no_gate_is_known_for) {
  EXPECT_THAT(told(on(6, 10), treatment(entries::TreatmentKind::brood_removed)), IsEmpty());
  EXPECT_THAT(told(on(6, 10), entries::Note{.text = "hot"}), IsEmpty());
}

TEST_F(RemarksOn, syrup_in_the_cold_and_not_in_summer) {
  const auto syrup = [](double kg) { return entries::Feed{.colony = alder, .kg = kg}; };
  EXPECT_THAT(told(on(12, 20), syrup(2)), Contains(HasSubstr("syrup at this time of year")));
  EXPECT_THAT(told(on(8, 20), syrup(2)), IsEmpty());
  weather(on(4, 10), 0, 7);
  EXPECT_THAT(told(on(4, 8), syrup(2)), Contains(HasSubstr("its days reach 7 C at most")));
  EXPECT_THAT(told(on(6, 20), syrup(2)), Contains(HasSubstr("boxes for people are on")));
  EXPECT_THAT(told(on(12, 20), entries::Feed{.colony = alder, .kg = 1, .form = entries::FeedForm::fondant}),
              IsEmpty());
}

TEST_F(RemarksOn, a_dead_colony_with_its_steps_and_what_it_died_of) {
  const entries::DeadColony found{.colony = alder, .heads_in_cells = true, .stores_kg = 0};
  const auto lines = told(on(12, 10), found);
  EXPECT_THAT(lines, Contains(HasSubstr("1. Close the entrance at once")));
  EXPECT_THAT(lines, Contains(HasSubstr("it died of starvation")));
  EXPECT_THAT(lines, Contains(HasSubstr("heads in cells")));
  const auto ended = told(on(12, 11), entries::ColonyEnded{.colony = alder});
  EXPECT_THAT(ended, Contains(HasSubstr("it died of starvation"))) << "by what was found the day before";
}

TEST_F(RemarksOn, nothing_of_a_colony_that_has_gone_off) {
  EXPECT_THAT(told(on(12, 11), entries::ColonyEnded{.colony = alder, .how = entries::Ending::absconded}),
              IsEmpty());
}
TEST_F(RemarksOn, a_colony_that_died_and_was_not_looked_into) {
  EXPECT_THAT(told(on(12, 11), entries::ColonyEnded{.colony = alder}),
              Contains(HasSubstr("enter what was found in the hive (dead_colony)")));
}

TEST_F(RemarksOn, a_country_of_which_no_table_has_the_law) {
  EXPECT_THAT(
      told(on(5, 1), entries::Setting{.name = "country", .value = "Gondor"}),
      Contains(HasSubstr("no table has the law of 'Gondor': the careful general one is used (England, "
                         "Wales and Scotland have their own)")));
  for (const char* known : {"England", "wales", "general"})
    EXPECT_THAT(told(on(5, 1), entries::Setting{.name = "country", .value = known}), IsEmpty());
}

}  // namespace
}  // namespace beegarth::garth
