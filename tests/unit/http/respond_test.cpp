#include "http/respond.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "unit/http/fake_api.hpp"

namespace beegarth::http {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::StartsWith;

class Respond : public ::testing::Test {
 protected:
  Reply get(std::string path, std::map<std::string, std::string> query = {}) {
    Ask ask{.method = "GET", .path = std::move(path), .query = std::move(query), .host = "127.0.0.1:8080"};
    return respond(ask, api);
  }
  Ask to_post(std::string path, std::string body) {
    return {.method = "POST",
            .path = std::move(path),
            .query = {},
            .host = "localhost:8080",
            .origin = {},
            .content_type = "application/json",
            .if_none_match = {},
            .body = std::move(body)};
  }
  Reply post(std::string path, std::string body) {
    return respond(to_post(std::move(path), std::move(body)), api);
  }

  FakeBook book;
  Api api = fake_api(book);
};

void expect_problem(const Reply& reply, int status, const char* kind) {
  EXPECT_EQ(reply.status, status);
  EXPECT_EQ(reply.content_type, "application/problem+json");
  const Json body = Json::parse(reply.body);
  EXPECT_EQ(body.at("status"), status);
  EXPECT_EQ(body.at("kind"), kind);
  EXPECT_FALSE(body.at("title").get<std::string>().empty());
}

TEST_F(Respond, plans_fourteen_days_unless_told_otherwise) {
  EXPECT_EQ(Json::parse(get("/api/plan").body).at("days"), 14);
  EXPECT_EQ(Json::parse(get("/api/plan", {{"days", "3"}}).body).at("days"), 3);
}

TEST_F(Respond, refuses_days_that_are_no_number_of_days) {
  for (const char* days : {"", "0", "-1", "61", "7.5", "seven", "7 ", " 7", "99999999999999999999"})
    expect_problem(get("/api/plan", {{"days", days}}), 400, "bad_input");
  EXPECT_EQ(book.plans, 0);
}

TEST_F(Respond, maps_each_kind_of_problem_to_its_status) {
  expect_problem(get("/api/colonies"), 503, "storage");
  expect_problem(get("/api/colonies/nowhere"), 404, "bad_input");
  expect_problem(get("/api/entries/none"), 404, "bad_input");
  expect_problem(post("/api/calc/check", "{}"), 409, "answer_is_no");
  expect_problem(post("/api/calc/none", "{}"), 404, "wrong_use");
  expect_problem(get("/api/honey"), 404, "wrong_use");
}

TEST_F(Respond, tells_of_doubted_looks_apart_from_the_colonies) {
  const Reply reply = get("/api/doubts");
  EXPECT_EQ(reply.status, 200);
  EXPECT_EQ(Json::parse(reply.body), (Json{{"doubts", Json::array()}}));
}

TEST_F(Respond, says_where_and_what_to_do) {
  const Json body = Json::parse(get("/api/colonies").body);
  EXPECT_EQ(body.at("title"), "the book is locked");
  EXPECT_EQ(body.at("detail"), "invented.garth: close the other program");
}

TEST_F(Respond, survives_a_bug_in_a_use_case) {
  expect_problem(get("/api/entries/broken"), 500, "fault");
}

TEST_F(Respond, answers_304_without_planning_again_while_nothing_changed) {
  const Reply first = get("/api/plan");
  ASSERT_EQ(first.status, 200);
  const std::string tag = first.headers.at("ETag");
  Ask again{.method = "GET",
            .path = "/api/plan",
            .query = {},
            .host = "127.0.0.1",
            .origin = {},
            .content_type = {},
            .if_none_match = tag};
  const Reply second = respond(again, api);
  EXPECT_EQ(second.status, 304);
  EXPECT_THAT(second.body, IsEmpty());
  EXPECT_EQ(book.plans, 1);
  book.version = "head-2";
  EXPECT_EQ(respond(again, api).status, 200);
  EXPECT_EQ(book.plans, 2);
}

TEST_F(Respond, refuses_any_host_that_is_not_this_machine) {
  Ask ask{.method = "GET", .path = "/api/book"};
  for (const char* host : {"", "bees.example", "bees.example:8080", "127.0.0.1.bees.example",
                           "localhost:", "localhost:80a", "localhost:123456", "127.0.0.2", "[::2]:80"}) {
    ask.host = host;
    expect_problem(respond(ask, api), 421, "wrong_use");
  }
  for (const char* host : {"localhost", "localhost:80", "127.0.0.1:8080", "[::1]", "[::1]:8080"}) {
    ask.host = host;
    EXPECT_EQ(respond(ask, api).status, 200) << host;
  }
}

TEST_F(Respond, lets_no_page_from_elsewhere_write) {
  Ask ask = to_post("/api/notes", R"({"line": "Alder 5 six seams", "keep": true})");
  ask.origin = "http://bees.example";
  expect_problem(respond(ask, api), 403, "wrong_use");
  ask.origin = "http://localhost:9";  // another program on this machine
  expect_problem(respond(ask, api), 403, "wrong_use");
  ask.origin = {};
  ask.content_type = "text/plain";  // what a plain form could send
  expect_problem(respond(ask, api), 415, "wrong_use");
  EXPECT_THAT(book.kept, IsEmpty());
  ask.content_type = "application/json; charset=utf-8";
  ask.origin = "http://localhost:8080";
  EXPECT_EQ(respond(ask, api).status, 200);
  EXPECT_THAT(book.kept, ElementsAre("Alder 5 six seams"));
}

TEST_F(Respond, shows_a_note_without_keeping_it) {
  EXPECT_EQ(post("/api/notes", R"({"line": "Alder 5 six seams", "keep": false})").status, 200);
  EXPECT_THAT(book.kept, IsEmpty());
}

TEST_F(Respond, refuses_a_note_of_any_other_shape) {
  for (const char* body :
       {"", "{", "[]", "null", "{}", R"({"line": "x"})", R"({"keep": true})", R"({"line": 1, "keep": true})",
        R"({"line": "x", "keep": "true"})", R"({"line": "", "keep": true})",
        R"({"line": "x", "keep": true, "more": 1})", R"({"line": "x", "line": "y", "keep": true})",
        "{\"line\": \"\xff\", \"keep\": true}"})
    expect_problem(post("/api/notes", body), 400, "bad_input");
  expect_problem(post("/api/notes", Json{{"line", std::string(2001, 'x')}, {"keep", true}}.dump()), 400,
                 "bad_input");
  EXPECT_THAT(book.kept, IsEmpty());
}

TEST_F(Respond, keeps_an_answer_to_a_need_whose_key_has_a_slash) {
  EXPECT_EQ(post("/api/needs/look-cells/alder-5", R"({"answer": "rained_off"})").status, 200);
  EXPECT_THAT(book.kept, ElementsAre("look-cells/alder-5 rained_off"));
  expect_problem(post("/api/needs/look-cells/alder-5", R"({"answer": "perhaps"})"), 400, "bad_input");
  EXPECT_EQ(post("/api/needs/look-cells/alder-5", R"({"answer": "put_off", "until": "2026-06-12"})").status,
            200);
  EXPECT_EQ(book.kept.back(), "look-cells/alder-5 put_off 2026-06-12");
  for (const char* body :
       {R"({"answer": "put_off", "until": "12 June"})", R"({"answer": "put_off", "until": 12})",
        R"({"answer": "done", "until": "2026-06-12"})"})
    expect_problem(post("/api/needs/look-cells/alder-5", body), 400, "bad_input");
  expect_problem(post("/api/needs/look-cells/none", R"({"answer": "done"})"), 404, "bad_input");
  EXPECT_EQ(book.kept.size(), 2U);
}

TEST_F(Respond, names_the_methods_that_an_address_takes) {
  Ask ask = to_post("/api/plan", "{}");
  Reply reply = respond(ask, api);
  expect_problem(reply, 405, "wrong_use");
  EXPECT_EQ(reply.headers.at("Allow"), "GET, HEAD");
  reply = get("/api/notes");
  expect_problem(reply, 405, "wrong_use");
  EXPECT_EQ(reply.headers.at("Allow"), "POST");
  ask.path = "/";
  expect_problem(respond(ask, api), 405, "wrong_use");
}

TEST_F(Respond, makes_a_sheet_for_a_day_that_exists) {
  const Reply reply = get("/api/sheet", {{"date", "2026-06-05"}, {"site", "withy-meadow"}});
  EXPECT_EQ(reply.content_type, "application/pdf");
  EXPECT_EQ(reply.body, "%PDF-invented 2026-06-05 withy-meadow");
  expect_problem(get("/api/sheet", {{"date", "2026-06-31"}, {"site", "withy-meadow"}}), 400, "bad_input");
  expect_problem(get("/api/sheet", {{"date", "2026-06-05"}}), 400, "bad_input");
}

TEST_F(Respond, serves_the_page_at_each_of_its_places) {
  for (const char* path :
       {"/", "/colonies", "/colonies/alder-5", "/book", "/book/new", "/book/registers/lots"}) {
    const Reply reply = get(path);
    EXPECT_EQ(reply.status, 200) << path;
    EXPECT_THAT(reply.content_type, StartsWith("text/html"));
    EXPECT_THAT(reply.body, StartsWith("<!doctype html>"));
  }
}

TEST_F(Respond, serves_nothing_that_was_not_compiled_in) {
  for (const char* path : {"", "/../etc/passwd", "/assets/../../etc/passwd", "//etc/passwd", "/.", "/assets/",
                           "/etc/passwd", "/index.html/", "/bookshelf", "/coloniesque"})
    expect_problem(get(path), 404, "wrong_use");
}

TEST_F(Respond, serves_its_own_description) {
  const Reply reply = get("/openapi.json");
  EXPECT_EQ(reply.content_type, "application/json");
  const Json description = Json::parse(reply.body);
  EXPECT_EQ(description.at("openapi"), "3.1.0");
  EXPECT_TRUE(description.at("paths").contains("/api/plan"));
}

TEST_F(Respond, passes_by_no_query_that_it_does_not_know) {
  expect_problem(get("/api/plan", {{"day", "3"}}), 400, "bad_input");
  expect_problem(get("/api/entries", {{"tex", "swarm"}}), 400, "bad_input");
  expect_problem(get("/api/entries", {{"text kind", "swarm"}}), 400, "bad_input");
  EXPECT_THAT(Json::parse(get("/api/plan", {{"day", "3"}}).body).at("detail").get<std::string>(),
              HasSubstr("it takes days"));
  expect_problem(get("/api/book", {{"days", "3"}}), 400, "bad_input");
}

TEST_F(Respond, refuses_an_address_that_is_not_utf8) {
  expect_problem(get("/api/colonies/\xff"), 400, "bad_input");
  expect_problem(get("/api/entries", {{"text", "\xff"}}), 400, "bad_input");
}

// The description and the roads are two lists: each described address must be there, with its method.
TEST_F(Respond, has_every_address_that_it_describes) {
  const Json description = Json::parse(get("/openapi.json").body);
  int seen = 0;
  for (const auto& [path, methods] : description.at("paths").items()) {
    for (const auto& [method, told] : methods.items()) {
      std::string real = path;
      if (const auto open = real.find('{'); open != std::string::npos)
        real.replace(open, real.find('}') - open + 1, "some-key");
      Ask ask = to_post(real, "{}");
      ask.method = method == "get" ? "GET" : "POST";
      for (const Json& one : told.value("parameters", Json::array()))
        if (one.at("in") == "query") ask.query[one.at("name").get<std::string>()] = "";
      const Reply reply = respond(ask, api);
      EXPECT_THAT(reply.body, ::testing::Not(HasSubstr("is not asked for"))) << path;
      EXPECT_NE(reply.status, 405) << path;
      EXPECT_THAT(reply.body, ::testing::Not(HasSubstr("nothing at this address"))) << path;
      ++seen;
    }
  }
  EXPECT_EQ(seen, 43);
}

}  // namespace
}  // namespace beegarth::http
