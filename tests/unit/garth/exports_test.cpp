#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <libical/ical.h>

#include "entries/fields.hpp"
#include "garth/exports/bundle.hpp"
#include "garth/exports/calendar.hpp"
#include "garth/keep/checklists.hpp"
#include "garth/ledgers/dead_colony.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

const Date day = *Date::from_ymd(2026, 6, 5);

struct Component {
  explicit Component(const std::string& text) : root(icalparser_parse_string(text.c_str())) {}
  ~Component() { icalcomponent_free(root); }
  Component(const Component&) = delete;
  Component& operator=(const Component&) = delete;
  icalcomponent* root;
};

// ---- iCalendar, read back by libical ----
TEST(Calendar, is_read_back_by_an_independent_reader) {
  const std::string long_text(300, 'x');
  const std::vector<CalendarDay> days = {
      {"a-1", day, "Plum: thymol ends; take out, count", "first line\nsecond, with a \\ and a ;"},
      {"a-2", day + 30, "Käfer, überall – ein langer Satz " + long_text, ""}};
  const std::string text = calendar_text(days, day);
  const Component calendar(text);
  ASSERT_NE(calendar.root, nullptr);
  EXPECT_EQ(icalcomponent_count_errors(calendar.root), 0);
  EXPECT_EQ(icalrestriction_check(calendar.root), 1);
  std::size_t i = 0;
  for (auto* event = icalcomponent_get_first_component(calendar.root, ICAL_VEVENT_COMPONENT);
       event != nullptr;
       event = icalcomponent_get_next_component(calendar.root, ICAL_VEVENT_COMPONENT), ++i) {
    ASSERT_LT(i, days.size());
    EXPECT_EQ(days[i].summary, icalcomponent_get_summary(event));
    const char* description = icalcomponent_get_description(event);
    EXPECT_EQ(days[i].description, description == nullptr ? "" : description);
    const icaltimetype start = icalcomponent_get_dtstart(event);
    EXPECT_EQ(start.is_date, 1);
    EXPECT_EQ(*Date::from_ymd(start.year, start.month, start.day), days[i].date);
  }
  EXPECT_EQ(i, days.size());
}

TEST(Calendar, has_no_line_longer_than_75_bytes) {
  const std::string text =
      calendar_text({{"a", day, std::string(500, 'o') + "ö" + std::string(100, 'p'), ""}}, day);
  std::size_t from = 0;
  for (std::size_t end = text.find("\r\n"); end != std::string::npos; end = text.find("\r\n", from)) {
    EXPECT_LE(end - from, 75U);
    EXPECT_NE(static_cast<unsigned char>(text[from]) & 0xC0U, 0x80U) << "cut within a character";
    from = end + 2;
  }
  EXPECT_EQ(from, text.size());
}

TEST(Zip, of_the_same_files_has_the_same_bytes_and_begins_as_a_zip) {
  const std::vector<BundledFile> files = {{"README.txt", "hello"}, {"registers/ö.csv", "a,b\r\n"}};
  const std::string once = zip_of(files, day);
  EXPECT_EQ(once, zip_of(files, day));
  EXPECT_EQ(once.substr(0, 4), std::string("PK\x03\x04"));
}

// ---- checklists ----
TEST(Checklists, there_is_one_with_steps_for_every_urgent_thing) {
  const Tables tables = *Tables::built_in();
  for (std::size_t i = 0; i < entries::Words<entries::Urgency>::list.size(); ++i) {
    const auto list = checklist_for(static_cast<entries::Urgency>(i), tables["checklists"], "112");
    ASSERT_TRUE(list) << entries::Words<entries::Urgency>::list[i];
    EXPECT_GE(list->steps.size(), 2U);
    for (const auto& step : list->steps) EXPECT_EQ(step.words.find('{'), std::string::npos);
  }
}

// ---- a dead colony ----
std::string likeliest(const entries::DeadColony& found) {
  return causes_of_death(found, (*Tables::built_in())["dead_colony"])->front().key;
}

TEST(DeadColony, bees_head_first_in_empty_cells_and_no_stores_starved) {
  EXPECT_EQ(
      likeliest({.cluster = true, .heads_in_cells = true, .stores_kg = 0, .stores_within_reach = false}),
      "starved");
}
TEST(DeadColony, the_same_with_stores_out_of_reach_was_isolated) {
  EXPECT_EQ(
      likeliest({.cluster = true, .heads_in_cells = true, .stores_kg = 8, .stores_within_reach = false}),
      "isolated");
}
TEST(DeadColony, few_bees_much_food_and_droppings_in_the_cells_speak_of_mites) {
  EXPECT_EQ(likeliest({.dead_bees = entries::Level::little,
                       .stores_kg = 15,
                       .stores_within_reach = true,
                       .mite_droppings = true}),
            "mites");
}
TEST(DeadColony, ragged_cappings_and_no_stores_speak_of_robbing) {
  EXPECT_EQ(likeliest({.stores_kg = 0, .ragged_cappings = true}), "robbed");
}
TEST(DeadColony, shares_add_up_to_one_and_nothing_found_leaves_what_was_likely_before) {
  const auto causes = causes_of_death({}, (*Tables::built_in())["dead_colony"]);
  double sum = 0;
  for (const auto& cause : *causes) sum += cause.share;
  EXPECT_NEAR(sum, 1, 1e-12);
  EXPECT_EQ(causes->front().key, "mites");
  EXPECT_NEAR(causes->front().share, 0.35, 1e-9);
}

}  // namespace
}  // namespace beegarth::garth
