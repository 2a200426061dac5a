// The plan in other forms, and a week of one's own: what is asked in a wrong shape reaches no use case.
#include <gtest/gtest.h>

#include "http/respond.hpp"
#include "unit/http/fake_api.hpp"

namespace beegarth::http {
namespace {

struct WeekRoads : ::testing::Test {
  Reply ask(const std::string& method, const std::string& path, const std::string& body = {},
            const std::string& days = {}) {
    Ask ask{.method = method,
            .path = path,
            .query = {},
            .host = "127.0.0.1:8080",
            .origin = {},
            .content_type = "application/json",
            .if_none_match = {},
            .body = body};
    if (!days.empty()) ask.query["days"] = days;
    return respond(ask, api);
  }
  std::string where(const std::string& body) {
    const Reply reply = ask("POST", "/api/own-week", body);
    EXPECT_EQ(reply.status, 400) << body;
    return Json::parse(reply.body).at("where");
  }
  FakeBook book;
  Api api = fake_api(book);
};

TEST_F(WeekRoads, each_form_of_the_plan_is_a_file_of_its_kind) {
  EXPECT_EQ(ask("GET", "/api/plan.ics").content_type, "text/calendar; charset=utf-8");
  EXPECT_EQ(ask("GET", "/api/plan.gpx", {}, "7").content_type, "application/gpx+xml");
  EXPECT_EQ(ask("GET", "/api/plan.gpx", {}, "7").body,
            std::to_string(static_cast<int>(garth::PlanForm::gpx)) + "/7");
  EXPECT_EQ(ask("GET", "/api/packing.txt").status, 200);
  EXPECT_EQ(ask("GET", "/api/packing.txt", {}, "29").status, 400);
  EXPECT_EQ(ask("GET", "/api/plan.ics", {}, "soon").status, 400);
}
TEST_F(WeekRoads, a_week_is_handed_on_job_by_job) {
  const Reply reply = ask("POST", "/api/own-week",
                          R"({"days": 7, "jobs": [{"date": "2026-06-03", "need": "look-cells/cobble"}]})");
  ASSERT_EQ(reply.status, 200);
  EXPECT_EQ(Json::parse(reply.body), (Json{{"jobs", {"2026-06-03 look-cells/cobble"}}, {"days", 7}}));
}
TEST_F(WeekRoads, what_has_a_wrong_shape_is_refused_with_its_place) {
  EXPECT_EQ(where("[]"), "body");
  EXPECT_EQ(where(R"({"jobs": []})"), "body");
  EXPECT_EQ(where(R"({"days": 0, "jobs": []})"), "days");
  EXPECT_EQ(where(R"({"days": 7, "jobs": [1]})"), "jobs[0]");
  EXPECT_EQ(where(R"({"days": 7, "jobs": [{"date": "2026-06-31", "need": "x"}]})"), "jobs[0].date");
  EXPECT_EQ(where(R"({"days": 7, "jobs": [{"date": "2026-06-03", "need": "none"}]})"), "own");
}

}  // namespace
}  // namespace beegarth::http
