// Ways of acting over HTTP: what is asked in a wrong shape is told in one line and reaches no use case.
#include <gtest/gtest.h>

#include "garth/beliefs/ways_said.hpp"
#include "http/respond.hpp"
#include "unit/http/fake_api.hpp"

namespace beegarth::http {
namespace {

struct SupposeRoads : ::testing::Test {
  Reply post(const std::string& body, const std::string& colony = "nuc/1") {
    const Ask ask{.method = "POST",
                  .path = "/api/colonies/" + colony + "/suppositions",
                  .query = {},
                  .host = "127.0.0.1:8080",
                  .origin = {},
                  .content_type = "application/json",
                  .if_none_match = {},
                  .body = body};
    return respond(ask, api);
  }
  std::string where(const std::string& body) {
    const Reply reply = post(body);
    EXPECT_EQ(reply.status, 400) << body;
    return Json::parse(reply.body).at("where");
  }
  FakeBook book;
  Api api = fake_api(book);
};

TEST_F(SupposeRoads, ways_and_the_last_day_are_handed_on) {
  const Reply reply = post(R"({"ways": ["2026-08-10: formic", "today: fed 4 kg"], "until": "2027-04-01"})");
  ASSERT_EQ(reply.status, 200);
  const Json told = Json::parse(reply.body);
  EXPECT_EQ(told.at("colony"), "nuc/1");
  EXPECT_EQ(told.at("ways").size(), 2U);
  EXPECT_EQ(told.at("until"), "2027-04-01");
  EXPECT_EQ(Json::parse(post(R"({"ways": ["today: treated with formic"]})").body).at("until"), "");
}
TEST_F(SupposeRoads, what_has_a_wrong_shape_is_refused_with_its_place) {
  EXPECT_EQ(where("[]"), "body");
  EXPECT_EQ(where("{}"), "body");
  EXPECT_EQ(where(R"({"ways": [], "keep": true})"), "body");
  EXPECT_EQ(where(R"({"ways": []})"), "ways");
  EXPECT_EQ(where(R"({"ways": [1]})"), "ways");
  EXPECT_EQ(where(R"({"ways": ["today: treated with formic"], "until": 3})"), "until");
  EXPECT_EQ(where(R"({"ways": ["today: treated with formic"], "until": "spring"})"), "until");
  EXPECT_EQ(where(R"({"ways": ["dance"]})"), "ways");
}
TEST_F(SupposeRoads, a_colony_that_is_not_there_is_not_found) {
  EXPECT_EQ(post(R"({"ways": ["today: treated with formic"]})", "none").status, 404);
}

TEST_F(SupposeRoads, take_as_many_ways_as_the_description_says) {
  Ask ask;
  ask.method = "GET";
  ask.path = "/openapi.json";
  ask.host = "127.0.0.1:8080";
  const Json description = Json::parse(respond(ask, api).body);
  const Json& ways = description.at("components").at("schemas").at("SupposeAsk").at("properties").at("ways");
  EXPECT_EQ(ways.at("maxItems"), garth::most_ways);
  Json body{{"ways", Json::array()}};
  for (std::size_t i = 0; i < garth::most_ways; ++i) body["ways"].push_back("today: treated with formic");
  EXPECT_EQ(post(body.dump()).status, 200);
  body["ways"].push_back("today: treated with formic");
  EXPECT_EQ(where(body.dump()), "ways");
}

}  // namespace
}  // namespace beegarth::http
