// A file comes in at a page; the book is checked, and shown as it stood on a day.
#include "garth/as_it_stood.hpp"
#include "garth/check_book.hpp"
#include "garth/desk/desk.hpp"
#include "garth/imports/draft_map.hpp"
#include "garth/imports/import.hpp"
#include "garth/imports/shipped_maps.hpp"
#include "garth/plan/transfer_ways.hpp"

namespace beegarth::garth {

using nlohmann::json;

namespace {

// At a page the mapping is a text, not a file.
constexpr const char* mapping_name = "mapping";

json refusals_json(const std::vector<Problem>& refused) {
  json list = json::array();
  for (const Problem& one : refused)
    list.push_back({{"what", one.what}, {"where", one.where}, {"remedy", one.remedy}});
  return list;
}

// The parts of an answer by a map and of another book's export, in one shape.
json brought_json(const ImportAnswer& answer, bool keep) {
  const json& told = answer.json;
  const auto known = told.value("known", std::size_t{0});
  json out{
      {"kept", keep},
      {"added", told.contains("added") ? told["added"] : json(told["entries"].get<std::size_t>() - known)},
      {"known", known},
      {"refused", refusals_json(answer.refused)}};
  for (const char* part : {"rows", "kinds", "oddities", "first"})
    if (told.contains(part)) out[part] = told[part];
  if (!answer.remarks.empty()) out["remarks"] = answer.remarks;
  return out;
}

}  // namespace

json Desk::maps() {
  json list = json::array();
  for (const ShippedMap& map : shipped_maps())
    list.push_back({{"name", map.path}, {"form", map.form}, {"about", map.about}, {"map", map.toml}});
  return {{"maps", std::move(list)}};
}

Expected<json> Desk::draft_map(const FileToDraft& file) {
  const auto map = garth::draft_map(file.text, file.name, file.kind);
  if (map) return json{{"map", *map}};
  if (map.problem().where == "--kind")
    return bad_input(map.problem().what, "kind", "choose one of the kinds");
  return map.problem();
}

Expected<json> Desk::bring_in(const FileBroughtIn& file) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  std::optional<MapText> map;
  if (!file.map.empty()) map = MapText{mapping_name, file.map};
  const auto answer = import_text({.book = session_.path,
                                   .file = file.name,
                                   .form = file.form,
                                   .map = {},
                                   .dry_run = !file.keep,
                                   .today = session_.today},
                                  file.text, map);
  if (!answer) return answer.problem();
  // Tried, it is told of every row; kept, it is refused as a whole.
  if (file.keep && !answer->refused.empty()) return as_one(answer->refused);
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  return brought_json(*answer, file.keep);
}

Expected<json> Desk::transfer_ways(std::string_view colony, std::string_view into) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  const auto told = transfer_ways_of(session_, colony, into);
  if (told) return transfer_ways_json(*told);
  Problem problem = told.problem();
  if (problem.where == "--into") problem.where = "into";
  if (problem.where == "COLONY") problem.where = "colony";
  return problem;
}

Expected<json> Desk::check() {
  const auto report = check_book(session_.path);
  if (!report) return report.problem();
  return check_json(*report);
}

Expected<json> Desk::as_it_stood(std::optional<Date> date) {
  const auto outline = open_outline(session_.path, {.today = date.value_or(session_.today)});
  if (!outline && outline.problem().kind == ProblemKind::bad_input)
    return bad_input(outline.problem().what, "date", "give a later day");
  if (!outline) return outline.problem();
  const auto health = seen_health(*outline);
  if (!health) return health.problem();
  return as_it_stood_json(*outline, *health);
}

}  // namespace beegarth::garth
