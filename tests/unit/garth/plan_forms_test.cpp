// A plan as lines, as a packing list, as a calendar and as a way on a map; and a week of one's own read back.
#include "garth/plan/plan_forms.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "garth/plan/own_week.hpp"

namespace beegarth::garth {
namespace {

using ::testing::HasSubstr;
using ::testing::Not;

Date june(int day) {
  return *Date::from_ymd(2026, 6, day);
}

facts::Need a_need(const char* key, const char* colony, const char* what) {
  facts::Need need;
  need.key = key;
  need.what = what;
  need.site = SiteId("withy");
  if (colony != nullptr) need.colony = ColonyId(colony);
  need.earliest = need.best = june(4);
  need.latest = june(17);
  need.minutes = 25;
  need.take = {"smoker and fuel", "1 super"};
  return need;
}

struct PlanForms : ::testing::Test {
  PlanForms() {
    answer.names.sites[SiteId("withy")] = "Withy & Meadow <low>";
    answer.names.colonies[ColonyId("alder-5")] = "Alder 5";
    answer.sites = {{.site = SiteId("withy"),
                     .name = "Withy & Meadow <low>",
                     .grid_reference = "XX 1",
                     .access = "gate"}};
    work::Visit visit;
    visit.date = june(4);
    visit.site = SiteId("withy");
    visit.start_hour = 11.5;
    visit.end_hour = 14 + 10.0 / 60;
    visit.jobs = {{a_need("room/alder-5", "alder-5", "one super on")},
                  {a_need("room/ash", nullptr, "one super on")}};
    answer.plan.visits = {visit};
    answer.plan.undone = {{a_need("feed/ash", nullptr, "feed"), "too little time", 1, "kg", "1 kg"}};
    state.sites[SiteId("withy")] = {
        .site = SiteId("withy"), .name = "Withy", .latitude_deg = 51.5, .longitude_deg = -1.25};
  }
  PlanAnswer answer;
  book::State state;
};

TEST_F(PlanForms, lines_name_day_and_key_and_are_read_back_as_the_same_jobs) {
  const std::string lines = plan_lines(answer.plan, answer.names);
  EXPECT_THAT(lines, HasSubstr("2026-06-04 room/alder-5  # Alder 5: one super on\n"));
  const auto jobs = own_jobs(lines);
  ASSERT_TRUE(jobs);
  ASSERT_EQ(jobs->size(), 2U);  // what is left undone stands there for reading only
  EXPECT_EQ(jobs->front().need, "room/alder-5");
  EXPECT_EQ(jobs->back().date, june(4));
}

TEST_F(PlanForms, a_line_that_is_no_job_is_named) {
  for (const auto& [lines, where] : {std::pair("# a remark\n\n2026-06-04\n", "line 3"),
                                     {"2026-06-04 room/ash\r\nsoon room/ash", "line 2"},
                                     {"2026-06-31 room/ash", "line 1"}}) {
    const auto jobs = own_jobs(lines);
    ASSERT_FALSE(jobs) << lines;
    EXPECT_EQ(jobs.problem().where, where) << lines;
  }
  EXPECT_TRUE(own_jobs("")->empty());
}

TEST_F(PlanForms, what_is_packed_for_a_day_is_added_up) {
  const std::string list = packing_list(answer.plan, answer.names);
  EXPECT_THAT(list, HasSubstr("Thu 4 June  Withy & Meadow <low>\n"));
  EXPECT_THAT(list, HasSubstr("  [ ] 2 supers\n"));
  EXPECT_EQ(list.find("smoker"), list.rfind("smoker"));
  EXPECT_EQ(packing_list({}, answer.names), "no visit, nothing to pack\n");
}

// RFC 5545: 3.3.5 form 1 (local time), 3.6.1, 3.8.1.7; lines end with CR and LF and are 75 bytes at most.
TEST_F(PlanForms, a_visit_is_an_event_from_hour_to_hour_in_local_time) {
  const std::string calendar = plan_calendar(answer, june(3));
  EXPECT_THAT(calendar, HasSubstr("DTSTART:20260604T113000\r\nDTEND:20260604T141000\r\n"));
  EXPECT_THAT(calendar, HasSubstr("SUMMARY:Withy & Meadow <low>: 2 jobs\r\n"));
  EXPECT_THAT(calendar, HasSubstr("LOCATION:Withy & Meadow <low>\\, XX 1\r\n"));
  EXPECT_THAT(calendar, Not(HasSubstr("TRANSP")));
  std::size_t longest = 0;
  for (std::size_t at = 0; at < calendar.size();) {
    const std::size_t end = calendar.find("\r\n", at);
    ASSERT_NE(end, std::string::npos);
    longest = std::max(longest, end - at);
    at = end + 2;
  }
  EXPECT_LE(longest, 75U);
}

// GPX 1.1 schema: waypoints before routes; a point has lat and lon as attributes, and name before desc.
TEST_F(PlanForms, the_way_of_a_day_is_a_route_through_the_sites) {
  EXPECT_EQ(plan_gpx(answer, state),
            "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
            "<gpx version=\"1.1\" creator=\"beegarth\" xmlns=\"http://www.topografix.com/GPX/1/1\">\n"
            "<wpt lat=\"51.500000\" lon=\"-1.250000\"><name>Withy &amp; Meadow &lt;low&gt;</name>"
            "<desc>gate</desc></wpt>\n"
            "<rte><name>Thu 4 June</name>\n"
            "<rtept lat=\"51.500000\" lon=\"-1.250000\"><name>Withy &amp; Meadow &lt;low&gt;</name>"
            "<desc>Alder 5: one super on; one super on</desc></rtept>\n"
            "</rte>\n</gpx>\n");
  state.sites.clear();  // a site that was closed since
  EXPECT_THAT(plan_gpx(answer, state), Not(HasSubstr("wpt")));
}

}  // namespace
}  // namespace beegarth::garth
