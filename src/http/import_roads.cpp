// A keeper's own file comes in, tried first; the book is checked, and shown as it stood on a day.
#include <algorithm>
#include <array>
#include <initializer_list>
#include <utility>

#include "garth/calc/calc.hpp"
#include "http/queries.hpp"
#include "http/replies.hpp"
#include "http/roads.hpp"

namespace beegarth::http {
namespace {

constexpr std::size_t longest_name = 255;
constexpr std::size_t longest_map = 200'000;
constexpr std::array<std::string_view, 4> forms{"csv", "geojson", "calendar", "jsonl"};
constexpr const char* shape_of_a_draft = R"(send {"file": "own.csv", "text": "...", "kind": "inspection"})";
constexpr const char* shape_of_an_import =
    R"(send {"file": "own.csv", "form": "csv", "text": "...", "map": "...", "keep": false})";

// The body, where it is an object that has these members, each a text, and maybe those.
Expected<Json> texts_in(const Ask& ask, std::initializer_list<const char*> needed,
                        std::initializer_list<const char*> possible, const char* shape) {
  Expected<Json> body = garth::parse_json(ask.body, "body");
  if (!body) return body;
  if (!body->is_object()) return bad_input("a file is sent in an object", "body", shape);
  for (const char* name : needed)
    if (!body->contains(name) || !(*body)[name].is_string())
      return bad_input("the " + std::string(name) + " is missing", name, shape);
  for (const auto& [name, value] : body->items()) {
    const auto is_name = [&member = name](const char* one) { return member == one; };
    if (!std::any_of(needed.begin(), needed.end(), is_name) &&
        !std::any_of(possible.begin(), possible.end(), is_name))
      return bad_input("there is no '" + name.substr(0, 60) + "' in it", "body", shape);
  }
  return body;
}

// It stands in every problem: nothing in it may break a line in two.
Outcome is_name_of_a_file(const std::string& name) {
  const bool sound = !name.empty() && name.size() <= longest_name &&
                     std::none_of(name.begin(), name.end(),
                                  [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; });
  if (!sound) return bad_input("that is no name of a file", "file", "give it 1 to 255 bytes in one line");
  return Done{};
}

Expected<garth::FileToDraft> file_to_draft(const Ask& ask) {
  const auto body = texts_in(ask, {"file", "text", "kind"}, {}, shape_of_a_draft);
  if (!body) return body.problem();
  garth::FileToDraft file{(*body)["file"].get<std::string>(), (*body)["text"].get<std::string>(),
                          (*body)["kind"].get<std::string>()};
  if (const auto named = is_name_of_a_file(file.name); !named) return named.problem();
  if (file.text.empty()) return bad_input("the file is empty", "file", "choose another");
  return file;
}

Outcome map_goes_with(const std::string& form, const std::string& map) {
  if (form == "csv" && map.empty())
    return bad_input("a CSV file needs a mapping", "map", "draft one, or choose one");
  if (form == "jsonl" && !map.empty()) return bad_input("JSON Lines need no mapping", "map", "leave it out");
  if (map.size() > longest_map)
    return bad_input("the mapping is too long", "map", "write one of up to 200,000 bytes");
  return Done{};
}

Expected<garth::FileBroughtIn> file_brought_in(const Ask& ask) {
  const auto body = texts_in(ask, {"file", "text", "form"}, {"map", "keep"}, shape_of_an_import);
  if (!body) return body.problem();
  if (!body->contains("keep") || !(*body)["keep"].is_boolean())
    return bad_input("whether to keep it is missing", "keep", shape_of_an_import);
  if (body->contains("map") && !(*body)["map"].is_string())
    return bad_input("the mapping is no text", "map", shape_of_an_import);
  garth::FileBroughtIn file{.name = (*body)["file"].get<std::string>(),
                            .text = (*body)["text"].get<std::string>(),
                            .form = (*body)["form"].get<std::string>(),
                            .map = body->value("map", std::string()),
                            .keep = (*body)["keep"].get<bool>()};
  if (const auto named = is_name_of_a_file(file.name); !named) return named.problem();
  if (std::find(forms.begin(), forms.end(), file.form) == forms.end())
    return bad_input("there is no form '" + file.form.substr(0, 60) + "'", "form",
                     "give csv, geojson, calendar or jsonl");
  if (file.text.empty()) return bad_input("the file is empty", "file", "choose another");
  if (const auto goes = map_goes_with(file.form, file.map); !goes) return goes.problem();
  return file;
}

Reply draft(const Ask& ask, const Api& api) {
  const auto file = file_to_draft(ask);
  return file ? json_reply(api.draft_map(*file)) : problem_reply(file.problem());
}

Reply bring_in(const Ask& ask, const Api& api) {
  const auto file = file_brought_in(ask);
  return file ? json_reply(api.bring_in(*file)) : problem_reply(file.problem());
}

Reply as_it_stood(const Ask& ask, const Api& api) {
  const auto date = day_asked(ask, "date");
  return date ? json_reply(api.as_it_stood(*date)) : problem_reply(date.problem());
}

constexpr std::array roads_of_the_import{
    Road{"/api/import-maps", "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.maps()); }},
    Road{"/api/import-map",
         "POST",
         [](const Ask& ask, const std::string&, const Api& api) { return draft(ask, api); },
         {},
         Takes::file},
    Road{"/api/import",
         "POST",
         [](const Ask& ask, const std::string&, const Api& api) { return bring_in(ask, api); },
         {},
         Takes::file},
    // Somebody may have changed the file itself: its head does not tell.
    Road{"/api/verify",
         "GET",
         [](const Ask&, const std::string&, const Api& api) { return json_reply(api.check()); },
         {},
         Takes::json,
         false},
    Road{"/api/standing", "GET",
         [](const Ask& ask, const std::string&, const Api& api) { return as_it_stood(ask, api); }, "date"},
};

}  // namespace

std::span<const Road> import_roads() {
  return roads_of_the_import;
}

}  // namespace beegarth::http
