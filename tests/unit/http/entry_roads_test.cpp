// The addresses of the book itself: search, entering, correcting, taking back, registers.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "http/respond.hpp"
#include "unit/http/fake_api.hpp"

namespace beegarth::http {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::StartsWith;

class EntryRoads : public ::testing::Test {
 protected:
  Reply ask(const char* method, std::string path, std::map<std::string, std::string> query,
            std::string body) {
    return respond({.method = method,
                    .path = std::move(path),
                    .query = std::move(query),
                    .host = "127.0.0.1:8080",
                    .origin = {},
                    .content_type = "application/json",
                    .if_none_match = {},
                    .body = std::move(body)},
                   api);
  }
  Reply get(std::string path, std::map<std::string, std::string> query = {}) {
    return ask("GET", std::move(path), std::move(query), {});
  }
  Reply post(std::string path, std::string body) { return ask("POST", std::move(path), {}, std::move(body)); }

  FakeBook book;
  Api api = fake_api(book);
};

Json problem_of(const Reply& reply, int status) {
  EXPECT_EQ(reply.status, status);
  EXPECT_EQ(reply.content_type, "application/problem+json");
  return Json::parse(reply.body);
}

TEST_F(EntryRoads, a_search_hands_on_every_part_of_what_was_asked) {
  EXPECT_EQ(get("/api/entries", {{"text", "queen cells"},
                                 {"kind", "inspection"},
                                 {"about", "alder-5"},
                                 {"from", "2026-05-01"},
                                 {"to", "2026-05-31"},
                                 {"after", "some-id"},
                                 {"limit", "20"}})
                .status,
            200);
  EXPECT_EQ(book.asked.text, "queen cells");
  EXPECT_EQ(book.asked.kind, "inspection");
  EXPECT_EQ(book.asked.about, "alder-5");
  EXPECT_EQ(book.asked.from, *Date::parse("2026-05-01"));
  EXPECT_EQ(book.asked.to, *Date::parse("2026-05-31"));
  EXPECT_EQ(book.asked.after, "some-id");
  EXPECT_EQ(book.asked.limit, 20U);
}

TEST_F(EntryRoads, an_empty_field_of_the_search_form_asks_for_nothing) {
  EXPECT_EQ(get("/api/entries", {{"text", ""}, {"from", ""}, {"to", ""}, {"limit", ""}}).status, 200);
  EXPECT_FALSE(book.asked.from || book.asked.to);
  EXPECT_EQ(book.asked.limit, 50U);
}

TEST_F(EntryRoads, a_search_with_no_sense_is_refused_with_the_part_named) {
  using Query = std::map<std::string, std::string>;
  for (const auto& [query, where] :
       {std::pair(Query{{"from", "May"}}, "from"), std::pair(Query{{"to", "2026-02-30"}}, "to"),
        std::pair(Query{{"from", "2026-06-02"}, {"to", "2026-06-01"}}, "from"),
        std::pair(Query{{"limit", "0"}}, "limit"), std::pair(Query{{"limit", "201"}}, "limit"),
        std::pair(Query{{"limit", "ten"}}, "limit"),
        std::pair(Query{{"text", std::string(201, 'x')}}, "text")})
    EXPECT_EQ(problem_of(get("/api/entries", query), 400).at("where"), where);
}

TEST_F(EntryRoads, an_entry_is_read_whole_and_its_payload_left_to_the_book) {
  EXPECT_EQ(
      post(
          "/api/entries",
          R"({"kind":"weight","payload":{"kg":31,"colony":"a"},"date":"2026-06-04","hour":13.5,"corrects":"x"})")
          .status,
      200);
  EXPECT_EQ(book.filled_in.kind, "weight");
  EXPECT_EQ(Json::parse(book.filled_in.payload), (Json{{"kg", 31}, {"colony", "a"}}));
  EXPECT_EQ(book.filled_in.happened.iso(), "2026-06-04");
  EXPECT_EQ(book.filled_in.hour, 13.5);
  EXPECT_EQ(book.filled_in.corrects, EntryId("x"));
}

TEST_F(EntryRoads, an_entry_of_any_other_shape_is_refused) {
  for (const char* body :
       {"", "[]", "{}", R"({"kind":"note","payload":{}})", R"({"kind":1,"payload":{},"date":"2026-06-04"})",
        R"({"kind":"note","payload":"x","date":"2026-06-04"})",
        R"({"kind":"note","payload":{},"date":"4 June"})",
        R"({"kind":"note","payload":{},"date":"2026-06-04","hour":25})",
        R"({"kind":"note","payload":{},"date":"2026-06-04","hour":null})",
        R"({"kind":"note","payload":{},"date":"2026-06-04","corrects":""})",
        R"({"kind":"note","payload":{},"date":"2026-06-04","corrects":7})",
        R"({"kind":"note","payload":{},"date":"2026-06-04","more":1})"})
    problem_of(post("/api/entries", body), 400);
  EXPECT_THAT(book.kept, IsEmpty());
}

TEST_F(EntryRoads, what_a_gate_refuses_names_the_field) {
  const Json problem = problem_of(
      post("/api/entries",
           R"({"kind":"feed","payload":{"source":"honey_of_unknown_origin"},"date":"2026-06-04"})"),
      400);
  EXPECT_EQ(problem.at("where"), "source");
  EXPECT_EQ(problem.at("detail"), "source: feed sugar");
}

TEST_F(EntryRoads, an_entry_is_taken_back_with_a_reason) {
  EXPECT_EQ(post("/api/entries/look/removal", R"({"reason": "wrong hive"})").status, 200);
  EXPECT_THAT(book.kept, ElementsAre("look back: wrong hive"));
  for (const char* body : {"{}", R"({"reason": ""})", R"({"reason": 1})", R"({"reason": "x", "more": 1})"})
    problem_of(post("/api/entries/look/removal", body), 400);
  EXPECT_EQ(book.kept.size(), 1U);
}

TEST_F(EntryRoads, a_missing_entry_is_not_there_but_a_refused_one_is) {
  problem_of(post("/api/entries/none/removal", R"({"reason": "wrong hive"})"), 404);
  problem_of(post("/api/entries/sign/removal", R"({"reason": "wrong hive"})"), 400);
}

TEST_F(EntryRoads, each_method_of_an_address_is_named) {
  Reply reply = ask("DELETE", "/api/entries", {}, {});
  problem_of(reply, 405);
  EXPECT_EQ(reply.headers.at("Allow"), "GET, HEAD, POST");
  reply = get("/api/entries/look/removal");
  problem_of(reply, 405);
  EXPECT_EQ(reply.headers.at("Allow"), "POST");
}

TEST_F(EntryRoads, a_register_is_shown_and_handed_out_as_a_file_for_a_span_of_days) {
  EXPECT_EQ(get("/api/registers/medicines", {{"from", "2026-01-01"}}).status, 200);
  EXPECT_EQ(book.span.from, *Date::parse("2026-01-01"));
  const Reply csv = get("/api/registers/medicines.csv");
  EXPECT_THAT(csv.content_type, StartsWith("text/csv"));
  EXPECT_THAT(csv.headers.at("Content-Disposition"), HasSubstr("medicines.csv"));
  EXPECT_TRUE(csv.headers.contains("ETag"));
  EXPECT_EQ(get("/api/registers/medicines.pdf").content_type, "application/pdf");
  for (const char* path : {"/api/registers/none", "/api/registers/none.csv", "/api/registers/none.pdf"})
    problem_of(get(path), 404);
  problem_of(get("/api/registers/medicines.pdf", {{"to", "soon"}}), 400);
}

TEST_F(EntryRoads, what_was_known_on_a_day_is_asked_for_by_that_day) {
  get("/api/entries", {{"known", "2026-05-20"}});
  EXPECT_EQ(book.known, *Date::parse("2026-05-20"));
  get("/api/registers/medicines");
  EXPECT_FALSE(book.known);
  get("/api/registers/medicines", {{"known", "2026-05-21"}});
  EXPECT_EQ(book.known, *Date::parse("2026-05-21"));
  for (const char* path : {"/api/entries", "/api/registers/medicines", "/api/registers/medicines.csv"})
    EXPECT_EQ(problem_of(get(path, {{"known", "then"}}), 400).at("where"), "known");
  problem_of(get("/api/registers/medicines", {{"known", "1990-01-01"}}), 400);
}

}  // namespace
}  // namespace beegarth::http
