// iCalendar by its standard. Source of the texts: RFC 5545, the sections named beside each; the texts are
// quoted from memory.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "garth/imports/content_lines.hpp"
#include "garth/imports/events.hpp"

namespace beegarth::garth {
namespace {

using testing::ElementsAre;

ContentLine one_line_of(const std::string& text) {
  const auto lines = content_lines(text, "rfc5545.ics");
  EXPECT_TRUE(lines) << (lines ? "" : one_line(lines.problem()));
  return lines ? lines->front() : ContentLine{};
}

// 3.1: the long description, folded twice.
TEST(Calendar, a_folded_line_is_one_line) {
  const ContentLine line =
      one_line_of("DESCRIPTION:This is a lo\r\n ng description\r\n  that exists on a long line.\r\n");
  EXPECT_EQ(line.name, "DESCRIPTION");
  EXPECT_EQ(line.value, "This is a long description that exists on a long line.");
}

// 3.1.1: lists of values and parameters.
TEST(Calendar, parameters_and_lists_of_them) {
  const ContentLine attendee =
      one_line_of("ATTENDEE;RSVP=TRUE;ROLE=REQ-PARTICIPANT:mailto:\r\n jsmith@example.com\r\n");
  EXPECT_EQ(*attendee.parameter("ROLE"), "REQ-PARTICIPANT");
  EXPECT_EQ(attendee.value, "mailto:jsmith@example.com");
  const ContentLine rdate = one_line_of("RDATE;VALUE=DATE:19970304,19970504,19970704,19970904\r\n");
  EXPECT_EQ(*rdate.parameter("VALUE"), "DATE");
  EXPECT_EQ(rdate.value, "19970304,19970504,19970704,19970904");
}

// 3.2.1 and 3.2.11: quoted values of parameters.
TEST(Calendar, a_quoted_parameter_may_hold_colons_and_commas) {
  const ContentLine line =
      one_line_of("DESCRIPTION;ALTREP=\"CID:part3.msg.970415T083000@example.com\":Project XYZ Review\r\n");
  EXPECT_EQ(*line.parameter("ALTREP"), "CID:part3.msg.970415T083000@example.com");
  EXPECT_EQ(line.value, "Project XYZ Review");
  const ContentLine members = one_line_of(
      "ATTENDEE;MEMBER=\"mailto:projectA@example.com\",\"mailto:pr\r\n"
      " ojectB@example.com\":mailto:janedoe@example.com\r\n");
  EXPECT_THAT(members.parameters.front().values,
              ElementsAre("mailto:projectA@example.com", "mailto:projectB@example.com"));
}

// 3.3.11: "Project XYZ Final Review / Conference Room - 3B / Come Prepared."
TEST(Calendar, escapes_in_a_text) {
  EXPECT_EQ(plain_text("Project XYZ Final Review\\nConference Room - 3B\\nCome Prepared."),
            "Project XYZ Final Review\nConference Room - 3B\nCome Prepared.");
  EXPECT_EQ(plain_text("a\\, b\\; c\\\\ d\\N"), "a, b; c\\ d\n");
}

CalendarEvent event_with(const std::string& lines, double offset = 0) {
  const auto events = calendar_events(
      "BEGIN:VCALENDAR\r\nVERSION:2.0\r\nBEGIN:VEVENT\r\n" + lines + "END:VEVENT\r\nEND:VCALENDAR\r\n",
      "rfc5545.ics", offset);
  EXPECT_TRUE(events) << (events ? "" : one_line(events.problem()));
  return events && !events->empty() ? events->front() : CalendarEvent{};
}

struct Moment {
  const char* section;
  const char* line;
  const char* day;
  std::optional<double> hour;
};
const std::vector<Moment> moments = {
    {"3.3.4", "DTSTART;VALUE=DATE:19970714\r\n", "1997-07-14", std::nullopt},
    {"3.3.5, form 1: local time", "DTSTART:19980118T230000\r\n", "1998-01-18", 23},
    {"3.3.5, form 2: UTC", "DTSTART:19980119T070000Z\r\n", "1998-01-19", 7},
    {"3.3.5, form 3: with a zone", "DTSTART;TZID=America/New_York:19980119T020000\r\n", "1998-01-19", 2},
    {"3.3.5, a leap second", "DTSTART:19970630T235960Z\r\n", "1997-06-30", 23 + 59 / 60.0 + 59 / 3600.0}};

TEST(Calendar, days_and_times_in_each_form) {
  for (const Moment& moment : moments) {
    const CalendarEvent event = event_with(moment.line);
    EXPECT_EQ(event.day.iso(), moment.day) << moment.section;
    EXPECT_EQ(event.hour.has_value(), moment.hour.has_value()) << moment.section;
    EXPECT_NEAR(event.hour.value_or(0), moment.hour.value_or(0), 1e-9) << moment.section;
  }
  // Arithmetic: an hour ahead of UTC, the clock shows the next day.
  EXPECT_EQ(event_with("DTSTART:19980118T233000Z\r\n", 1).day.iso(), "1998-01-19");
}

// 3.6.1: an event of several days; its DTEND is not part of it.
TEST(Calendar, an_all_day_event_ends_the_day_before_its_dtend) {
  const CalendarEvent event = event_with(
      "UID:20070423T123432Z-541111@example.com\r\nDTSTAMP:20070423T123432Z\r\n"
      "DTSTART;VALUE=DATE:20070628\r\nDTEND;VALUE=DATE:20070709\r\n"
      "SUMMARY:Festival International de Jazz de Montreal\r\nTRANSP:TRANSPARENT\r\n");
  EXPECT_EQ(event.day.iso(), "2007-06-28");
  EXPECT_EQ(event.last_day->iso(), "2007-07-08");
  EXPECT_EQ(event.summary, "Festival International de Jazz de Montreal");
}

// Section 4, the first example: a three-day conference.
TEST(Calendar, the_first_example_of_section_4) {
  const auto events = calendar_events(
      "BEGIN:VCALENDAR\r\nPRODID:-//xyz Corp//NONSGML PDA Calendar Version 1.0//EN\r\nVERSION:2.0\r\n"
      "BEGIN:VEVENT\r\nDTSTAMP:19960704T120000Z\r\nUID:uid1@example.com\r\n"
      "ORGANIZER:mailto:jsmith@example.com\r\nDTSTART:19960918T143000Z\r\nDTEND:19960920T220000Z\r\n"
      "STATUS:CONFIRMED\r\nCATEGORIES:CONFERENCE\r\nSUMMARY:Networld+Interop Conference\r\n"
      "DESCRIPTION:Networld+Interop Conference\r\n  and Exhibit\\nAtlanta World Congress Center\\n\r\n"
      " Atlanta\\, Georgia\r\nEND:VEVENT\r\nEND:VCALENDAR\r\n",
      "rfc5545.ics", 0);
  ASSERT_TRUE(events) << one_line(events.problem());
  const CalendarEvent& event = events->front();
  EXPECT_EQ(event.uid, "uid1@example.com");
  EXPECT_EQ(event.day.iso(), "1996-09-18");
  EXPECT_DOUBLE_EQ(*event.hour, 14.5);
  EXPECT_EQ(event.last_day->iso(), "1996-09-20");
  EXPECT_EQ(event.status, "confirmed");
  EXPECT_EQ(event.description,
            "Networld+Interop Conference and Exhibit\nAtlanta World Congress Center\nAtlanta, Georgia");
}

}  // namespace
}  // namespace beegarth::garth
