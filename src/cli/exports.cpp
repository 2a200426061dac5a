// Other forms of the whole book: places, dates, and everything in one zip; photos and checklists.
#include <algorithm>
#include <array>
#include <iostream>
#include <nlohmann/json.hpp>
#include <string_view>

#include "cli/call.hpp"
#include "entries/fields.hpp"
#include "garth/exports/bundle.hpp"
#include "garth/exports/calendar.hpp"
#include "garth/exports/places.hpp"
#include "garth/files.hpp"
#include "garth/keep/checklists.hpp"
#include "garth/photos.hpp"

namespace beegarth::cli {

using nlohmann::json;

std::string export_form(const Call& call) {
  if (!call.form.empty()) return call.form;
  for (const auto& [ending, form] :
       {std::pair{".geojson", "geojson"}, std::pair{".ics", "calendar"}, std::pair{".zip", "zip"}}) {
    const std::string_view out = call.out;
    if (out.size() > std::string_view(ending).size() && out.ends_with(ending)) return form;
  }
  return "jsonl";
}

int export_as(const Call& call, const std::string& form) {
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  const auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  std::string bytes;
  if (form == "geojson") bytes = garth::places_geojson(*session).dump(1) + "\n";
  if (form == "calendar") bytes = garth::calendar_text(garth::calendar_days(*session), session->today);
  if (form == "zip") {
    if (call.out.empty())
      return report({ProblemKind::wrong_use, "a zip needs a file", "--out", "name the file to write"});
    const auto files = garth::bundled_files(*session);
    if (!files) return report(files.problem());
    bytes = garth::zip_of(*files, session->today);
  }
  if (call.out.empty()) {
    std::cout << bytes;
    return 0;
  }
  const Outcome written = garth::write_file(call.out, bytes);
  return written ? 0 : report(written.problem());
}

int photo_command(const Call& call) {
  auto options = session_options(call, false);
  if (!options) return report(options.problem());
  const auto today = options->today;
  options->today.reset();
  auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  Date happened = today.value_or(session->today);
  if (!call.date.empty()) {
    const auto date = Date::parse(call.date);
    if (!date) return report(bad_input(date.problem().what, "--date", date.problem().remedy));
    happened = *date;
  }
  const auto kept = garth::keep_photo(*session, {.file = call.subject,
                                                 .about = call.about,
                                                 .entry = call.entry,
                                                 .caption = call.caption,
                                                 .happened = happened});
  if (!kept) return report(kept.problem());
  const std::string path = garth::photo_path(call.book, std::get<entries::Photo>(kept->payload));
  if (call.json)
    std::cout << json{{"entry", kept->id.text()}, {"file", path}}.dump(2) << '\n';
  else
    std::cout << "kept: " << path << '\n';
  return 0;
}

int checklist_command(const Call& call) {
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  const auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  const auto& words = entries::Words<entries::Urgency>::list;
  if (call.subject.empty()) {
    for (const auto& word : words) std::cout << word << '\n';
    return 0;
  }
  const auto at = std::find(words.begin(), words.end(), call.subject);
  if (at == words.end()) {
    std::string all;
    for (const auto& word : words) all += (all.empty() ? "" : ", ") + std::string(word);
    return report(bad_input("there is no checklist '" + call.subject + "'", "WHAT", "use one of: " + all));
  }
  const auto list = garth::checklist_for(static_cast<entries::Urgency>(at - words.begin()),
                                         session->tables["checklists"], garth::emergency_number(*session));
  if (!list) return report(list.problem());
  if (call.json)
    std::cout << garth::checklist_json(*list).dump(2) << '\n';
  else
    std::cout << garth::checklist_text(*list);
  return 0;
}

}  // namespace beegarth::cli
