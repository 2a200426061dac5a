// A file that comes in, the book checked, the ways into another hive, and what stood where on a day.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "http/respond.hpp"
#include "unit/http/fake_api.hpp"

namespace beegarth::http {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;

class ImportRoads : public ::testing::Test {
 protected:
  Ask to(const char* method, std::string path) {
    return {.method = method,
            .path = std::move(path),
            .query = {},
            .host = "127.0.0.1:8080",
            .origin = {},
            .content_type = {},
            .if_none_match = {},
            .body = {}};
  }
  Reply get(std::string path, std::map<std::string, std::string> query = {}) {
    Ask ask = to("GET", std::move(path));
    ask.query = std::move(query);
    return respond(ask, api);
  }
  Ask to_post(std::string path, std::string body) {
    Ask ask = to("POST", std::move(path));
    ask.content_type = "application/json";
    ask.body = std::move(body);
    return ask;
  }
  Reply bring_in(std::string body) { return respond(to_post("/api/import", std::move(body)), api); }
  Reply draft(std::string body) { return respond(to_post("/api/import-map", std::move(body)), api); }

  FakeBook book;
  Api api = fake_api(book);
};

Json refusal(const Reply& reply, int status) {
  EXPECT_EQ(reply.status, status) << reply.body;
  EXPECT_EQ(reply.content_type, "application/problem+json");
  return Json::parse(reply.body);
}

// ---- a mapping ----
TEST_F(ImportRoads, a_mapping_is_drafted_from_a_table_and_a_kind) {
  const Reply reply = draft(R"({"file": "own.csv", "text": "date,seams\n", "kind": "inspection"})");
  EXPECT_EQ(Json::parse(reply.body).at("map"), "invented map");
  EXPECT_EQ(book.to_draft.name, "own.csv");
  EXPECT_EQ(book.to_draft.text, "date,seams\n");
}

TEST_F(ImportRoads, a_draft_of_any_other_shape_is_refused) {
  for (const char* body : {"", "[]", "{}", R"({"file": "own.csv", "text": "a\n"})",
                           R"({"file": "own.csv", "text": "a\n", "kind": 7})",
                           R"({"file": "own.csv", "text": "", "kind": "inspection"})",
                           R"({"file": "", "text": "a\n", "kind": "inspection"})",
                           R"({"file": "own\n.csv", "text": "a\n", "kind": "inspection"})",
                           R"({"file": "own.csv", "text": "a\n", "kind": "inspection", "keep": true})"})
    refusal(draft(body), 400);
  EXPECT_EQ(refusal(draft(R"({"file": "own.csv", "text": "a\n", "kind": "honey"})"), 400).at("where"),
            "kind");
}

TEST_F(ImportRoads, the_mappings_that_come_with_the_program_are_listed) {
  EXPECT_TRUE(Json::parse(get("/api/import-maps").body).contains("maps"));
}

// ---- a file ----
TEST_F(ImportRoads, a_file_is_tried_without_being_kept_and_then_kept) {
  EXPECT_EQ(
      bring_in(R"({"file": "own.csv", "form": "csv", "text": "a\n1\n", "map": "[date]", "keep": false})")
          .status,
      200);
  EXPECT_EQ(book.brought.form, "csv");
  EXPECT_EQ(book.brought.map, "[date]");
  EXPECT_THAT(book.kept, IsEmpty());
  EXPECT_EQ(bring_in(R"({"file": "book.jsonl", "form": "jsonl", "text": "{}\n", "keep": true})").status, 200);
  EXPECT_EQ(book.kept, std::vector<std::string>{"file"});
}

TEST_F(ImportRoads, a_file_of_any_other_shape_is_refused_and_nothing_is_kept) {
  using Case = std::pair<const char*, const char*>;
  for (const auto& [body, where] :
       {Case{"", "body"}, Case{"[]", "body"}, Case{"{}", "file"},
        Case{R"({"file": "a.csv", "form": "csv", "text": "a\n", "map": "x"})", "keep"},
        Case{R"({"file": "a.csv", "form": "csv", "text": "a\n", "map": "x", "keep": "yes"})", "keep"},
        Case{R"({"file": "a.csv", "form": "csv", "text": "a\n", "map": 7, "keep": true})", "map"},
        Case{R"({"file": "a.csv", "form": "csv", "text": "a\n", "keep": true})", "map"},
        Case{R"({"file": "a.jsonl", "form": "jsonl", "text": "a\n", "map": "x", "keep": true})", "map"},
        Case{R"({"file": "a.csv", "form": "table", "text": "a\n", "map": "x", "keep": true})", "form"},
        Case{R"({"file": "a.csv", "form": "csv", "text": 7, "map": "x", "keep": true})", "text"},
        Case{R"({"file": "a.csv", "form": "csv", "text": "", "map": "x", "keep": true})", "file"},
        Case{R"({"file": "a\tb", "form": "csv", "text": "a\n", "map": "x", "keep": true})", "file"},
        Case{R"({"file": "a.csv", "form": "csv", "text": "a\n", "map": "x", "keep": true, "who": "x"})",
             "body"}})
    EXPECT_EQ(refusal(bring_in(body), 400).at("where"), where) << body;
  EXPECT_THAT(book.kept, IsEmpty());
}

TEST_F(ImportRoads, what_the_program_finds_wrong_is_told_with_its_place) {
  const Json told =
      refusal(bring_in(R"({"file": "a.csv", "form": "csv", "text": "torn", "map": "x", "keep": true})"), 400);
  EXPECT_EQ(told.at("where"), "a.csv:1");
  EXPECT_THAT(book.kept, IsEmpty());
}

TEST_F(ImportRoads, a_file_that_is_not_utf_8_is_refused) {
  const Json told = refusal(
      bring_in(
          "{\"file\": \"a.csv\", \"form\": \"csv\", \"text\": \"caf\xE9\", \"map\": \"x\", \"keep\": true}"),
      400);
  EXPECT_THAT(told.at("detail").get<std::string>(), HasSubstr("UTF-8"));
  EXPECT_THAT(book.kept, IsEmpty());
}

TEST_F(ImportRoads, a_file_may_be_larger_than_other_bodies_but_not_without_end) {
  const auto body = [](std::size_t bytes) {
    return R"({"file": "a.jsonl", "form": "jsonl", "keep": true, "text": ")" + std::string(bytes, 'x') +
           "\"}";
  };
  EXPECT_EQ(bring_in(body(2 * body_limit_bytes)).status, 200);
  EXPECT_EQ(refusal(bring_in(body(file_limit_bytes)), 413).at("where"), "file");
  EXPECT_EQ(book.kept.size(), 1U);
}

TEST_F(ImportRoads, a_page_from_elsewhere_brings_nothing_in) {
  Ask ask = to_post("/api/import", R"({"file": "a.jsonl", "form": "jsonl", "text": "{}", "keep": true})");
  ask.origin = "http://bees.example";
  refusal(respond(ask, api), 403);
  ask.origin = {};
  for (const char* type : {"", "text/plain", "multipart/form-data; boundary=x", "application/octet-stream"}) {
    ask.content_type = type;
    refusal(respond(ask, api), 415);
  }
  EXPECT_THAT(book.kept, IsEmpty());
}

TEST_F(ImportRoads, what_is_not_asked_for_behind_the_question_mark_is_refused) {
  Ask ask = to_post("/api/import", R"({"file": "a.jsonl", "form": "jsonl", "text": "{}", "keep": true})");
  ask.query = {{"dry_run", "true"}};
  refusal(respond(ask, api), 400);
  refusal(get("/api/verify", {{"quick", "yes"}}), 400);
  refusal(get("/api/standing", {{"day", "2026-06-04"}}), 400);
  refusal(get("/api/colonies/nuc/1/transfer-ways", {{"into", "meadow-3"}, {"date", "2026-06-04"}}), 400);
  EXPECT_THAT(book.kept, IsEmpty());
}

// ---- into another hive ----
TEST_F(ImportRoads, the_ways_into_another_hive_are_asked_for_by_colony_and_hive) {
  EXPECT_EQ(Json::parse(get("/api/colonies/nuc/1/transfer-ways", {{"into", "meadow-3"}}).body).at("colony"),
            "nuc/1");
  EXPECT_EQ(refusal(get("/api/colonies/nuc/1/transfer-ways"), 400).at("where"), "into");
  EXPECT_EQ(refusal(get("/api/colonies/nuc/1/transfer-ways", {{"into", "none"}}), 400).at("where"), "into");
  refusal(get("/api/colonies/none/transfer-ways", {{"into", "meadow-3"}}), 404);
}

// ---- whether the book is sound ----
TEST_F(ImportRoads, the_book_is_checked_each_time_whatever_its_head_says) {
  const Reply first = get("/api/verify");
  EXPECT_EQ(first.status, 200);
  EXPECT_FALSE(first.headers.contains("ETag"));
  EXPECT_EQ(first.headers.at("Cache-Control"), "no-store");
  Ask again = to("GET", "/api/verify");
  again.if_none_match = "\"head-1\"";
  EXPECT_EQ(respond(again, api).status, 200);
  EXPECT_EQ(book.checks, 2);
}

// ---- as it stood ----
TEST_F(ImportRoads, what_stands_where_is_asked_for_by_day_or_for_today) {
  EXPECT_EQ(get("/api/standing", {{"date", "2026-06-04"}}).status, 200);
  EXPECT_EQ(book.stood_on, *Date::parse("2026-06-04"));
  EXPECT_EQ(get("/api/standing").status, 200);
  EXPECT_FALSE(book.stood_on);
  for (const char* date : {"June", "1999-01-01"})
    EXPECT_EQ(refusal(get("/api/standing", {{"date", date}}), 400).at("where"), "date");
}

}  // namespace
}  // namespace beegarth::http
