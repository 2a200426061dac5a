// The desk's answers about the book itself: entries found, entered, corrected and taken back; kinds;
// registers.
#include <algorithm>

#include "garth/desk/desk.hpp"
#include "garth/entry_json.hpp"
#include "garth/keep/checklists.hpp"
#include "garth/keep/keep.hpp"
#include "garth/keep/remarks.hpp"
#include "garth/kind_groups.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

json ids_json(const std::vector<EntryId>& ids) {
  json list = json::array();
  for (const EntryId& id : ids) list.push_back(id.text());
  return list;
}

json named(const std::string& key, const std::string& name) {
  return {{"key", key}, {"name", name.empty() ? key : name}};
}

// The keys that a form can choose from, by what they are keys of.
json names_in(const Session& session) {
  json names{{"site", json::array()},  {"hive", json::array()},  {"colony", json::array()},
             {"queen", json::array()}, {"part", json::array()},  {"combs", json::array()},
             {"lot", json::array()},   {"patch", json::array()}, {"object", json::array()}};
  for (const auto& [id, site] : session.state.sites) names["site"].push_back(named(id.text(), site.name));
  for (const auto& [id, hive] : session.state.hives) names["hive"].push_back(named(id.text(), hive.name));
  for (const auto& [id, colony] : session.state.colonies) {
    json one = named(id.text(), colony.began.name);
    if (colony.ended) one["ended"] = true;
    names["colony"].push_back(std::move(one));
  }
  const auto put = [&](const char* what, const std::string& key, const std::string& name) {
    for (json& one : names[what])
      if (one["key"] == key) {
        one = named(key, name);  // the last word on it
        return;
      }
    names[what].push_back(named(key, name));
  };
  for (const auto& entry : session.standing) {
    if (const auto* queen = std::get_if<entries::QueenBegan>(&entry.payload))
      put("queen", queen->queen.text(), queen->name);
    if (const auto* part = std::get_if<entries::Part>(&entry.payload))
      put("part", part->part.text(), part->name);
    if (const auto* combs = std::get_if<entries::Combs>(&entry.payload))
      put("combs", combs->combs.text(), combs->name);
    if (const auto* lot = std::get_if<entries::Lot>(&entry.payload)) put("lot", lot->lot.text(), lot->name);
    if (const auto* patch = std::get_if<entries::Patch>(&entry.payload))
      put("patch", patch->patch.text(), patch->name);
    if (const auto* object = std::get_if<entries::GroundObject>(&entry.payload))
      put("object", object->object.text(), object->name);
  }
  return names;
}

// What shows what was seen: the photos that belong to any entry of the line.
json photos_of(const Session& session, const EntryLine& line) {
  json photos = json::array();
  for (const auto& entry : session.standing) {
    const auto* photo = std::get_if<entries::Photo>(&entry.payload);
    if (photo == nullptr) continue;
    const bool of_it = std::any_of(line.entries.begin(), line.entries.end(), [&](const FoundEntry& one) {
      return one.entry.id == entry.id || photo->entry == one.entry.id;
    });
    if (of_it) photos.push_back(shown_entry(entry, session.state));
  }
  return photos;
}

}  // namespace

// The book as it was known on the evening of a day, UTC, as it stands today: nothing written later is in it.
Expected<const Session*> Desk::known_on(Date day) {
  if (then_ && then_->known_on == day) return &*then_;
  auto then = open_session(session_.path, {.today = session_.today, .known_on = day});
  if (!then) return bad_input(then.problem().what, "known", "give a later day");
  then_ = *std::move(then);
  return &*then_;
}

Expected<json> Desk::entries(const EntrySearch& search, std::optional<Date> known) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  const Session* session = &session_;
  if (known) {
    const auto then = known_on(*known);
    if (!then) return then.problem();
    session = *then;
  }
  const auto found = known ? search_known(session_.book, session->state, search, *end_of(known))
                           : search_entries(session_.book, session_.state, search);
  if (!found) return found.problem();
  json list = json::array();
  for (const auto& one : found->entries) list.push_back(found_json(one, session->state));
  return json{{"entries", std::move(list)}, {"count", found->count}, {"more", found->more}};
}

Expected<json> Desk::entry(std::string_view id) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  const auto line = line_of_entry(session_.book, EntryId(std::string(id)));
  if (!line) return line.problem();
  json shown;
  json told = json::array();
  for (const auto& one : line->entries) {
    told.push_back(found_json(one, session_.state));
    if (one.entry.id.text() == id) shown = told.back();
  }
  shown["line"] = std::move(told);
  shown["known_then"] = ids_json(line->known_then);
  shown["known_now"] = ids_json(line->known_now);
  shown["photos"] = photos_of(session_, *line);
  return shown;
}

Expected<json> Desk::kept(const book::Draft& draft) {
  const auto kept = keep(session_, {draft});
  if (!kept) return kept.problem();
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  json told{{"kept", true}, {"entries", json::array({shown_entry(kept->front(), session_.state)})}};
  const auto remarks = remarks_on(session_, *kept);
  if (!remarks) return remarks.problem();
  if (!remarks->empty()) told["remarks"] = remarks_json(*remarks);
  const auto lists = checklists_for(session_, *kept);
  if (!lists) return lists.problem();
  for (const auto& list : *lists) told["checklists"].push_back(checklist_json(list));
  return told;
}

Expected<json> Desk::enter(const FilledIn& filled_in) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  if (filled_in.kind == "removed")
    return bad_input("an entry is not taken back in this way", "kind", "post to its own address, /removal");
  auto payload = book::payload_from_json(filled_in.kind, filled_in.payload, {});
  if (!payload) return payload.problem();
  if (const Outcome likely = likely_date(filled_in.happened, session_.today, "date"); !likely)
    return likely.problem();
  return kept({.happened = filled_in.happened,
               .happened_hour = filled_in.hour,
               .payload = *std::move(payload),
               .supersedes = filled_in.corrects});
}

Expected<json> Desk::take_back(std::string_view id, std::string_view reason) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  entries::Removed removed{.entry = EntryId(std::string(id))};
  if (!reason.empty()) removed.reason = std::string(reason);
  return kept({.happened = session_.today, .payload = removed});
}

Expected<json> Desk::kinds() {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  json groups = json::array();
  for (const KindGroup& group : kind_groups()) {
    json list = json::array();
    for (const GroupedKind& one : group.kinds) {
      json kind{
          {"kind", one.kind}, {"by_hand", one.by_hand}, {"schema", json::parse(book::schema_json(one.kind))}};
      if (!one.brings_in.empty()) kind["brings_in"] = one.brings_in;
      list.push_back(std::move(kind));
    }
    groups.push_back({{"group", group.name}, {"words", group.words}, {"kinds", std::move(list)}});
  }
  return json{{"groups", std::move(groups)}, {"names", names_in(session_)}};
}

json Desk::registers() {
  json list = json::array();
  for (const auto& one : register_kinds())
    list.push_back({{"name", one.name}, {"title", one.title}, {"says", one.says}});
  return {{"registers", std::move(list)}};
}

Expected<Register> Desk::register_known(std::string_view name, const RegisterWish& wish) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  if (!wish.known) return register_of(session_, name, wish.span);
  const auto then = known_on(*wish.known);
  if (!then) return then.problem();
  return register_of(**then, name, wish.span);
}

Expected<json> Desk::register_shown(std::string_view name, const RegisterWish& wish) {
  const auto shown = register_known(name, wish);
  if (!shown) return shown.problem();
  return register_json(*shown);
}

Expected<std::string> Desk::register_as_csv(std::string_view name, const RegisterWish& wish) {
  const auto shown = register_known(name, wish);
  if (!shown) return shown.problem();
  return register_csv(*shown);
}

Expected<std::string> Desk::register_as_pdf(std::string_view name, const RegisterWish& wish) {
  const auto shown = register_known(name, wish);
  if (!shown) return shown.problem();
  return register_pdf(*shown, wish.span, wish.known.value_or(session_.today), scene::Paper::a4_across);
}

}  // namespace beegarth::garth
