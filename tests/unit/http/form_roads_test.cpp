// Queens, photos, checklists, the book in other forms, and a filled sheet that comes back.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "http/respond.hpp"
#include "unit/http/fake_api.hpp"

namespace beegarth::http {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;

const std::string a_picture = std::string("\xFF\xD8\xFF invented");

class FormRoads : public ::testing::Test {
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
  Ask photo(std::string body, std::string type = "image/jpeg") {
    Ask ask = to("POST", "/api/photos");
    ask.query = {
        {"date", "2026-06-04"}, {"name", "comb.jpg"}, {"entry", "look"}, {"caption", "patchy brood"}};
    ask.content_type = std::move(type);
    ask.body = std::move(body);
    return ask;
  }
  Reply sheet(std::string body) {
    Ask ask = to("POST", "/api/sheet-boxes");
    ask.content_type = "application/json";
    ask.body = std::move(body);
    return respond(ask, api);
  }

  FakeBook book;
  Api api = fake_api(book);
};

Json problem_of(const Reply& reply, int status) {
  EXPECT_EQ(reply.status, status) << reply.body;
  EXPECT_EQ(reply.content_type, "application/problem+json");
  return Json::parse(reply.body);
}

// ---- photos ----
TEST_F(FormRoads, a_photo_is_handed_on_with_what_it_belongs_to) {
  EXPECT_EQ(respond(photo(a_picture), api).status, 200);
  EXPECT_EQ(book.photo.file, "comb.jpg");
  EXPECT_EQ(book.photo.entry, "look");
  EXPECT_EQ(book.photo.caption, "patchy brood");
  EXPECT_EQ(book.photo.happened.iso(), "2026-06-04");
  EXPECT_EQ(book.photo_bytes, a_picture.size());
}

TEST_F(FormRoads, what_is_no_picture_or_has_no_day_is_refused_in_one_line) {
  EXPECT_EQ(problem_of(respond(photo("not a picture"), api), 400).at("title"),
            "that is no JPEG, PNG or WebP picture");
  EXPECT_EQ(problem_of(respond(photo(""), api), 400).at("where"), "picture");
  Ask no_day = photo(a_picture);
  no_day.query.erase("date");
  EXPECT_EQ(problem_of(respond(no_day, api), 400).at("where"), "date");
  no_day.query["date"] = "June";
  EXPECT_EQ(problem_of(respond(no_day, api), 400).at("where"), "date");
  EXPECT_THAT(book.kept, IsEmpty());
}

TEST_F(FormRoads, a_picture_may_be_larger_than_other_bodies_but_not_without_end) {
  EXPECT_EQ(respond(photo(a_picture + std::string(2 * body_limit_bytes, 'x')), api).status, 200);
  problem_of(respond(photo(a_picture + std::string(picture_limit_bytes, 'x')), api), 413);
  EXPECT_EQ(book.kept.size(), 1U);
}

TEST_F(FormRoads, a_page_from_elsewhere_can_send_no_picture) {
  Ask from_elsewhere = photo(a_picture);
  from_elsewhere.origin = "http://bees.example";
  problem_of(respond(from_elsewhere, api), 403);
  // These three a browser sends from any page without asking first.
  for (const char* type :
       {"text/plain", "multipart/form-data; boundary=x", "application/x-www-form-urlencoded"})
    problem_of(respond(photo(a_picture, type), api), 415);
  Ask named = photo(a_picture);
  named.host = "bees.example";
  problem_of(respond(named, api), 421);
  EXPECT_THAT(book.kept, IsEmpty());
}

TEST_F(FormRoads, json_is_not_taken_as_a_picture_nor_a_picture_as_json) {
  problem_of(respond(photo("{}", "application/json"), api), 415);
  Ask note = photo(a_picture);
  note.path = "/api/notes";
  problem_of(respond(note, api), 415);
}

TEST_F(FormRoads, a_photo_is_served_as_the_picture_that_it_is) {
  const Reply reply = get("/api/photos/comb");
  EXPECT_EQ(reply.content_type, "image/jpeg");
  EXPECT_EQ(reply.body, a_picture);
  EXPECT_EQ(common_headers().at("X-Content-Type-Options"), "nosniff");
  problem_of(get("/api/photos/none"), 404);
}

// ---- other forms ----
TEST_F(FormRoads, the_book_is_handed_out_in_each_form_as_a_file) {
  EXPECT_EQ(get("/api/export.jsonl").body, "{}\n");
  for (const auto& [path, type, name] :
       {std::tuple("/api/export.jsonl", "application/jsonl; charset=utf-8", "book.jsonl"),
        std::tuple("/api/export.zip", "application/zip", "book.zip"),
        std::tuple("/api/export.geojson", "application/geo+json", "places.geojson"),
        std::tuple("/api/export.ics", "text/calendar; charset=utf-8", "dates.ics")}) {
    const Reply reply = get(path);
    EXPECT_EQ(reply.content_type, type);
    EXPECT_EQ(reply.headers.at("Content-Disposition"), "attachment; filename=\"" + std::string(name) + "\"");
    EXPECT_TRUE(reply.headers.contains("ETag"));
  }
}

TEST_F(FormRoads, queens_their_pedigree_and_checklists_are_shown) {
  EXPECT_TRUE(Json::parse(get("/api/lines").body).contains("queens"));
  EXPECT_EQ(get("/api/pedigree.svg").content_type, "image/svg+xml");
  EXPECT_EQ(Json::parse(get("/api/checklists").body).at("emergency_number"), "112");
}

// ---- a filled sheet ----
TEST_F(FormRoads, the_boxes_of_a_sheet_are_asked_for_by_site_and_day) {
  EXPECT_EQ(get("/api/sheet-boxes", {{"site", "withy"}, {"date", "2026-06-04"}}).status, 200);
  using Query = std::map<std::string, std::string>;
  for (const auto& [query, where] :
       {std::pair(Query{{"date", "2026-06-04"}}, "site"), std::pair(Query{{"site", "withy"}}, "date"),
        std::pair(Query{{"site", "withy"}, {"date", "2026-06-04"}, {"printed", "May"}}, "printed"),
        std::pair(Query{{"site", "none"}, {"date", "2026-06-04"}}, "none")})
    EXPECT_EQ(problem_of(get("/api/sheet-boxes", query), 400).at("where"), where);
}

TEST_F(FormRoads, a_filled_sheet_is_handed_on_box_by_box) {
  EXPECT_EQ(sheet(R"({"site":"withy","date":"2026-06-04","printed":"2026-06-03","keep":true,
                      "boxes":[{"row":"#1 Alder","box":"eggs","value":"yes"}]})")
                .status,
            200);
  EXPECT_EQ(book.sheet.sheet.site, "withy");
  EXPECT_EQ(book.sheet.sheet.printed, *Date::parse("2026-06-03"));
  ASSERT_EQ(book.sheet.written.size(), 1U);
  EXPECT_EQ(book.sheet.written[0].row, "#1 Alder");
  EXPECT_EQ(book.sheet.written[0].value, "yes");
  EXPECT_THAT(book.kept, ElementsAre("sheet"));
}

TEST_F(FormRoads, a_sheet_of_any_other_shape_is_refused) {
  for (const char* body :
       {"", "[]", "{}", R"({"site":"withy","date":"2026-06-04","keep":true})",
        R"({"site":"withy","date":"2026-06-04","boxes":[]})",
        R"({"site":"withy","date":"2026-06-04","boxes":{},"keep":true})",
        R"({"site":"withy","date":"4 June","boxes":[],"keep":true})",
        R"({"site":7,"date":"2026-06-04","boxes":[],"keep":true})",
        R"({"site":"withy","date":"2026-06-04","boxes":[],"keep":"yes"})",
        R"({"site":"withy","date":"2026-06-04","boxes":[],"keep":true,"more":1})",
        R"({"site":"withy","date":"2026-06-04","boxes":[7],"keep":true})",
        R"({"site":"withy","date":"2026-06-04","boxes":[{"row":"","box":"eggs","value":"yes"}],"keep":true})",
        R"({"site":"withy","date":"2026-06-04","boxes":[{"row":"#1","box":"eggs","value":1}],"keep":true})",
        R"({"site":"withy","date":"2026-06-04","boxes":[{"row":"#1","box":"eggs"}],"keep":true})"})
    EXPECT_THAT(problem_of(sheet(body), 400).dump(), HasSubstr("\"kind\":\"bad_input\"")) << body;
  EXPECT_THAT(book.kept, IsEmpty());
}

// ---- the weather ahead ----
TEST_F(FormRoads, a_week_ahead_is_handed_on_as_it_was_typed) {
  Ask ask = to("POST", "/api/week-ahead");
  ask.content_type = "application/json";
  ask.body =
      R"({"site": "all", "keep": true, "days": [{"date": "2026-06-04", "max_C": 19, "gust_m_s": 9.5}]})";
  EXPECT_EQ(respond(ask, api).status, 200);
  ASSERT_EQ(book.week.days.size(), 1U);
  EXPECT_EQ(book.week.days[0].max_C, 19);
  EXPECT_EQ(book.week.days[0].gust_m_s, 9.5);
  EXPECT_FALSE(book.week.days[0].rain_mm);
  EXPECT_EQ(book.kept, std::vector<std::string>{"week"});
}

TEST_F(FormRoads, a_week_of_another_shape_is_refused) {
  for (const char* body :
       {"", "[]", R"({"site": "all", "days": []})", R"({"site": 1, "days": [], "keep": true})",
        R"({"site": "all", "days": [{}], "keep": true})", R"({"site": "all", "days": [7], "keep": true})",
        R"({"site": "all", "days": [{"date": "soon"}], "keep": true})",
        R"({"site": "all", "days": [{"date": "2026-06-04", "max_C": "19"}], "keep": true})",
        R"({"site": "all", "days": [{"date": "2026-06-04", "sun": 9}], "keep": true})"}) {
    Ask ask = to("POST", "/api/week-ahead");
    ask.content_type = "application/json";
    ask.body = body;
    problem_of(respond(ask, api), 400);
  }
  EXPECT_TRUE(book.kept.empty());
}

}  // namespace
}  // namespace beegarth::http
