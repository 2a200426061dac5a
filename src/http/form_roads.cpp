// Queens, photos, checklists, the book in other forms, a filled sheet that comes back, and the weather ahead.
#include <array>
#include <utility>

#include "garth/calc/calc.hpp"
#include "http/queries.hpp"
#include "http/replies.hpp"
#include "http/roads.hpp"

namespace beegarth::http {
namespace {

// ---- photos ----
Reply show_photo(const std::string& id, const Api& api) {
  auto photo = api.photo(id);
  if (!photo) return json_reply(Expected<Json>(photo.problem()), 404);
  return {200, photo->type, std::move(photo->bytes), {}};
}

Reply add_photo(const Ask& ask, const Api& api) {
  const auto date = day_asked(ask, "date");
  if (!date) return problem_reply(date.problem());
  if (!*date)
    return problem_reply(bad_input("the day of the photo is missing", "date", "say when it was taken"));
  if (ask.body.empty()) return problem_reply(bad_input("the picture is empty", "picture", "choose a photo"));
  return json_reply(api.add_photo({.file = said(ask, "name"),
                                   .about = said(ask, "about"),
                                   .entry = said(ask, "entry"),
                                   .caption = said(ask, "caption"),
                                   .happened = **date},
                                  ask.body));
}

// ---- a filled sheet ----
constexpr std::size_t most_boxes = 5000;
constexpr std::size_t longest_value = 20'000;

Expected<garth::KeyInWish> sheet_asked(const std::string& site, const std::string& date_text,
                                       const std::string& printed_text) {
  if (site.empty()) return bad_input("the site of the sheet is missing", "site", "choose one");
  const auto date = Date::parse(date_text);
  if (!date) return bad_input(date.problem().what, "date", date.problem().remedy);
  garth::KeyInWish wish{.site = site, .date = *date, .printed = {}};
  if (printed_text.empty()) return wish;
  const auto printed = Date::parse(printed_text);
  if (!printed) return bad_input(printed.problem().what, "printed", printed.problem().remedy);
  wish.printed = *printed;
  return wish;
}

Reply sheet_boxes(const Ask& ask, const Api& api) {
  const auto wish = sheet_asked(said(ask, "site"), said(ask, "date"), said(ask, "printed"));
  if (!wish) return problem_reply(wish.problem());
  return json_reply(api.sheet_boxes(*wish));
}

constexpr const char* shape_of_a_sheet =
    R"(send {"site": "...", "date": "2026-06-05", "boxes": [{"row": "...", "box": "...", "value": "..."}], "keep": false})";

Expected<std::vector<garth::WrittenBox>> boxes_in(const Json& list) {
  std::vector<garth::WrittenBox> boxes;
  if (!list.is_array() || list.size() > most_boxes)
    return bad_input("the boxes are a list of up to 5000", "body.boxes", shape_of_a_sheet);
  for (const Json& one : list) {
    const auto text = [&](const char* name) {
      return one.contains(name) && one[name].is_string() ? one[name].get<std::string>() : std::string();
    };
    const bool shaped = one.is_object() && one.size() == 3 && one.contains("value") &&
                        one["value"].is_string() && !text("row").empty() && !text("box").empty();
    if (!shaped || text("value").size() > longest_value)
      return bad_input("a box is its row, its name and what was written in it", "body.boxes",
                       shape_of_a_sheet);
    boxes.push_back({text("row"), text("box"), text("value")});
  }
  return boxes;
}

Expected<garth::SheetFilledIn> filled_sheet(const Ask& ask) {
  const Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return body.problem();
  if (!body->is_object()) return bad_input("a filled sheet is an object", "body", shape_of_a_sheet);
  for (const auto& [name, value] : body->items()) {
    const bool text = name == "site" || name == "date" || name == "printed";
    if ((!text && name != "boxes" && name != "keep") || (text && !value.is_string()))
      return bad_input("a filled sheet is not of that shape", "body", shape_of_a_sheet);
  }
  if (!body->contains("boxes") || !body->contains("keep") || !(*body)["keep"].is_boolean())
    return bad_input("the boxes, or whether to keep them, are missing", "body", shape_of_a_sheet);
  auto wish = sheet_asked(body->value("site", ""), body->value("date", ""), body->value("printed", ""));
  if (!wish) return wish.problem();
  auto boxes = boxes_in((*body)["boxes"]);
  if (!boxes) return boxes.problem();
  return garth::SheetFilledIn{*std::move(wish), *std::move(boxes), (*body)["keep"].get<bool>()};
}

Reply key_in(const Ask& ask, const Api& api) {
  const auto filled_in = filled_sheet(ask);
  if (!filled_in) return problem_reply(filled_in.problem());
  return json_reply(api.key_in(*filled_in));
}

// ---- the weather ahead ----
constexpr std::size_t most_days = 15;
constexpr const char* shape_of_a_week =
    R"(send {"site": "all", "days": [{"date": "2026-06-05", "max_C": 19, "min_C": 9, "rain_mm": 2, "wind_m_s": 4, "gust_m_s": 9}], "keep": false})";

std::optional<double>* field_of(garth::DayAhead& day, const std::string& name) {
  if (name == "max_C") return &day.max_C;
  if (name == "min_C") return &day.min_C;
  if (name == "rain_mm") return &day.rain_mm;
  if (name == "wind_m_s") return &day.wind_m_s;
  return name == "gust_m_s" ? &day.gust_m_s : nullptr;
}

Expected<garth::DayAhead> day_typed(const Json& one) {
  if (!one.is_object() || !one.contains("date") || !one["date"].is_string())
    return bad_input("a day has no date", "body.days", shape_of_a_week);
  const auto date = Date::parse(one["date"].get<std::string>());
  if (!date) return bad_input(date.problem().what, "body.days", date.problem().remedy);
  garth::DayAhead day{.date = *date, .where = date->iso()};
  for (const auto& [name, value] : one.items()) {
    if (name == "date") continue;
    auto* const field = field_of(day, name);
    if (field == nullptr)
      return bad_input("a day has no '" + name.substr(0, 40) + "'", date->iso(), shape_of_a_week);
    if (!value.is_number())
      return bad_input("what was typed is no number", date->iso() + ": " + name,
                       "write a number, or leave it out");
    *field = value.get<double>();
  }
  return day;
}

Expected<garth::WeekTyped> week_typed(const Ask& ask) {
  const Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return body.problem();
  const bool shaped = body->is_object() && body->size() == 3 && body->contains("site") &&
                      (*body)["site"].is_string() && body->contains("days") && (*body)["days"].is_array() &&
                      (*body)["days"].size() <= most_days && body->contains("keep") &&
                      (*body)["keep"].is_boolean();
  if (!shaped) return bad_input("a week ahead is not of that shape", "body", shape_of_a_week);
  garth::WeekTyped week{
      .site = (*body)["site"].get<std::string>(), .days = {}, .keep = (*body)["keep"].get<bool>()};
  for (const Json& one : (*body)["days"]) {
    auto day = day_typed(one);
    if (!day) return day.problem();
    week.days.push_back(*std::move(day));
  }
  return week;
}

Reply week_ahead(const Ask& ask, const Api& api) {
  const auto week = week_typed(ask);
  if (!week) return problem_reply(week.problem());
  return json_reply(api.week_ahead(*week));
}

constexpr std::array roads_of_the_forms{
    Road{"/api/lines", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.lines()); }},
    Road{"/api/pedigree.svg", "GET",
         [](const Ask&, const std::string&, const Api& api) {
           return bytes_reply(api.pedigree(), "image/svg+xml");
         }},
    Road{"/api/photos", "POST",
         [](const Ask& ask, const std::string&, const Api& api) { return add_photo(ask, api); },
         "date name entry about caption", Takes::picture},
    Road{"/api/photos/*", "GET",
         [](const Ask&, const std::string& key, const Api& api) { return show_photo(key, api); }},
    Road{"/api/checklists", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.checklists()); }},
    Road{"/api/sheet-boxes", "GET",
         [](const Ask& ask, const std::string&, const Api& api) { return sheet_boxes(ask, api); },
         "site date printed"},
    Road{"/api/sheet-boxes", "POST",
         [](const Ask& ask, const std::string&, const Api& api) { return key_in(ask, api); }},
    Road{"/api/week-ahead", "POST",
         [](const Ask& ask, const std::string&, const Api& api) { return week_ahead(ask, api); }},
    Road{"/api/export.jsonl", "GET",
         [](const Ask&, const std::string&, const Api& api) {
           return named_file(
               bytes_reply(api.exported(garth::BookForm::jsonl), "application/jsonl; charset=utf-8"),
               "attachment; filename=\"book.jsonl\"");
         }},
    Road{"/api/export.zip", "GET",
         [](const Ask&, const std::string&, const Api& api) {
           return named_file(bytes_reply(api.exported(garth::BookForm::zip), "application/zip"),
                             "attachment; filename=\"book.zip\"");
         }},
    Road{"/api/export.geojson", "GET",
         [](const Ask&, const std::string&, const Api& api) {
           return named_file(bytes_reply(api.exported(garth::BookForm::geojson), "application/geo+json"),
                             "attachment; filename=\"places.geojson\"");
         }},
    Road{"/api/export.ics", "GET",
         [](const Ask&, const std::string&, const Api& api) {
           return named_file(
               bytes_reply(api.exported(garth::BookForm::calendar), "text/calendar; charset=utf-8"),
               "attachment; filename=\"dates.ics\"");
         }},
};

}  // namespace

std::span<const Road> form_roads() {
  return roads_of_the_forms;
}

}  // namespace beegarth::http
