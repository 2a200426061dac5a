#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <libical/ical.h>

#include <cstdio>
#include <string>
#include <vector>

#include "garth/exports/calendar.hpp"
#include "garth/imports/content_lines.hpp"
#include "garth/imports/events.hpp"

namespace beegarth::garth {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;

const Date today = *Date::from_ymd(2026, 6, 5);

std::string calendar(const std::string& inside) {
  return "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:-//invented//diary//EN\r\n" + inside + "END:VCALENDAR\r\n";
}
std::string event(const std::string& lines) {
  return "BEGIN:VEVENT\r\nUID:1@invented\r\nDTSTAMP:20260601T000000Z\r\n" + lines + "END:VEVENT\r\n";
}

// ---- the same as libical reads ----
TEST(CalendarImport, reads_what_libical_reads) {
  const std::vector<std::string> texts = {
      calendar(event("DTSTART:20260601T143000\r\nSUMMARY:two boxes\\, one roof\\; a \\\\ too\r\n"
                     "LOCATION:Lower Yard\r\nDESCRIPTION:first\\nsecond\r\n")),
      calendar(event("DTSTART;VALUE=DATE:20260601\r\nDTEND;VALUE=DATE:20260603\r\nSUMMARY:K\u00e4fer und "
                     "ein langer Satz der\r\n  gefaltet ist\r\n") +
               event("DTSTART:20260602T090000Z\r\nSUMMARY;LANGUAGE=en;X-A=\"b:c,d;e\":quoted\r\n")),
      calendar("BEGIN:VTIMEZONE\r\nTZID:Invented/Zone\r\nBEGIN:STANDARD\r\nDTSTART:19701025T030000\r\n"
               "TZOFFSETFROM:+0200\r\nTZOFFSETTO:+0100\r\nEND:STANDARD\r\nEND:VTIMEZONE\r\n" +
               event("DTSTART;TZID=Invented/Zone:20260601T070000\r\nSUMMARY:early\r\nBEGIN:VALARM\r\n"
                     "ACTION:DISPLAY\r\nDESCRIPTION:wake\r\nTRIGGER:-PT15M\r\nEND:VALARM\r\n"))};
  for (const std::string& text : texts) {
    const auto ours = calendar_events(text, "c.ics", 0);
    ASSERT_TRUE(ours) << one_line(ours.problem());
    icalcomponent* root = icalparser_parse_string(text.c_str());
    std::size_t i = 0;
    for (auto* one = icalcomponent_get_first_component(root, ICAL_VEVENT_COMPONENT); one != nullptr;
         one = icalcomponent_get_next_component(root, ICAL_VEVENT_COMPONENT), ++i) {
      ASSERT_LT(i, ours->size());
      const CalendarEvent& read = (*ours)[i];
      const icaltimetype start = icalcomponent_get_dtstart(one);
      const auto text_or_none = [](const char* said) { return std::string(said == nullptr ? "" : said); };
      EXPECT_EQ(read.summary, text_or_none(icalcomponent_get_summary(one)));
      EXPECT_EQ(read.description, text_or_none(icalcomponent_get_description(one)));
      EXPECT_EQ(read.location, text_or_none(icalcomponent_get_location(one)));
      EXPECT_EQ(read.day, *Date::from_ymd(start.year, start.month, start.day));
      EXPECT_EQ(read.hour.has_value(), start.is_date == 0);
      EXPECT_NEAR(read.hour.value_or(0), start.is_date ? 0 : start.hour + start.minute / 60.0, 1e-9);
    }
    EXPECT_EQ(i, ours->size());
    icalcomponent_free(root);
  }
}

TEST(CalendarImport, reads_back_what_the_export_wrote_and_leaves_it_out_of_the_book) {
  const std::vector<CalendarDay> days = {
      {"a-1", today, "Plum: thymol ends; take out, count", "first line\nsecond, with a \\ and a ;"},
      {"a-2", today - 30, "K\u00e4fer, \u00fcberall " + std::string(300, 'x'), ""}};
  const std::string text = calendar_text(days, today);
  const auto events = calendar_events(text, "c.ics", 0);
  ASSERT_TRUE(events) << one_line(events.problem());
  ASSERT_EQ(events->size(), days.size());
  for (std::size_t i = 0; i < days.size(); ++i) {
    EXPECT_EQ((*events)[i].summary, days[i].summary);
    EXPECT_EQ((*events)[i].description, days[i].description);
    EXPECT_EQ((*events)[i].day, days[i].date);
  }
  const auto rows = event_rows(text, "c.ics", {}, today);
  ASSERT_TRUE(rows);
  EXPECT_THAT(rows->oddities, ElementsAre(HasSubstr("2 events left out: dates that beegarth's own")));
}

TEST(CalendarImport, an_event_that_tells_of_foulbrood_is_worth_a_look) {
  const auto rows = event_rows(
      calendar(event("DTSTART:20260601T143000\r\nSUMMARY:Cobble: foulbrood seen\r\n")), "c.ics", {}, today);
  ASSERT_TRUE(rows);
  EXPECT_THAT(rows->oddities, ElementsAre(HasSubstr("nothing is made suspect by it")));
}

// ---- what is broken ----
TEST(CalendarImport, what_is_broken_is_refused_with_its_line) {
  const std::vector<std::pair<std::string, std::string>> cases = {
      {"", "c.ics:1: there is no calendar"},
      {"BEGIN:VEVENT\r\nEND:VEVENT\r\n", "c.ics:1: a calendar begins with BEGIN:VCALENDAR"},
      {"BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\nEND:VCALENDAR\r\n",
       "c.ics:3: END:VCALENDAR where VEVENT of line 2"},
      {"BEGIN:VCALENDAR\r\nBEGIN:VEVENT\r\n", "c.ics:2: VEVENT has no end"},
      {"BEGIN:VCALENDAR\r\nno colon\r\nEND:VCALENDAR\r\n", "c.ics:2: that is no iCalendar line: no colon"},
      {"BEGIN:VCALENDAR\r\nX;A=\"b:c\r\nEND:VCALENDAR\r\n", "c.ics:2: that is no iCalendar line: a quote"},
      {"BEGIN:VCALENDAR\r\nX;=b:c\r\nEND:VCALENDAR\r\n", "c.ics:2: that is no iCalendar line: a parameter"},
      {"BEGIN:VCALENDAR\r\nX:a\x01\r\nEND:VCALENDAR\r\n", "c.ics:2: that is no iCalendar line: a control"},
      {"BEGIN:VCALENDAR\r\nX:\xff\r\nEND:VCALENDAR\r\n", "c.ics:2: the line is not UTF-8"},
      {calendar(event("SUMMARY:no day\r\n")), "c.ics:4: the event has no DTSTART"},
      {calendar(event("DTSTART:20260230\r\n")), "c.ics:7: DTSTART '20260230' is no day or time"},
      {calendar(event("DTSTART:20260601T250000\r\n")), "c.ics:7: DTSTART '20260601T250000' is no day"},
      {calendar(event("DTSTART:20260601\r\nDTEND:20260501\r\n")),
       "c.ics:8: the event ends before it begins"}};
  for (const auto& [text, what] : cases) {
    const auto events = calendar_events(text, "c.ics", 0);
    ASSERT_FALSE(events) << text;
    EXPECT_THAT(one_line(events.problem()), HasSubstr(what));
  }
}

TEST(CalendarImport, an_end_in_another_zone_is_not_compared) {
  const auto events = calendar_events(calendar(event("DTSTART;TZID=Europe/London:20260601T200000\r\n"
                                                     "DTEND;TZID=America/New_York:20260601T190000\r\n")),
                                      "c.ics", 0);
  ASSERT_TRUE(events) << one_line(events.problem());
  EXPECT_DOUBLE_EQ(*events->front().hour, 20);
  EXPECT_FALSE(events->front().last_day);
}

TEST(CalendarImport, components_inside_each_other_come_to_an_end) {
  std::string deep = "BEGIN:VCALENDAR\r\n";
  for (int i = 0; i < 100'000; ++i) deep += "BEGIN:X\r\n";
  EXPECT_FALSE(calendar_components(deep, "c.ics"));
}

}  // namespace
}  // namespace beegarth::garth
