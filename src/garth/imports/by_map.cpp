#include "garth/imports/by_map.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <system_error>
#include <utility>

#include "book/state.hpp"
#include "garth/imports/events.hpp"
#include "garth/imports/geojson.hpp"
#include "garth/imports/import_plan.hpp"
#include "garth/imports/shipped_maps.hpp"
#include "garth/keep/keep.hpp"
#include "garth/session.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

Expected<MapText> map_for(const std::optional<MapText>& given, const std::string& form) {
  if (given) return *given;
  const std::string name = form == "geojson" ? "maps/places.toml" : "maps/calendar.toml";
  for (const ShippedMap& map : shipped_maps()) {
    if (map.path == name) return MapText{name, std::string(map.toml)};
  }
  return bad_input("the program's own map is not there", name, "give one with --map");
}

Expected<ImportPlan> plan_for(const ImportWish& wish, const std::string& form, const std::string& bytes,
                              const std::optional<MapText>& given, const book::State& state, Date today) {
  const auto map = map_for(given, form);
  if (!map) return map.problem();
  if (form == "csv") return plan_import(bytes, wish.file, map->toml, map->name);
  if (form == "geojson") {
    auto rows = feature_rows(bytes, wish.file, state, today);
    if (!rows) return rows.problem();
    return plan_import(*rows, map->toml, map->name);
  }
  auto events = event_rows(bytes, wish.file, state, today);
  if (!events) return events.problem();
  auto plan = plan_import(events->rows, map->toml, map->name);
  if (plan) plan->oddities.insert(plan->oddities.begin(), events->oddities.begin(), events->oddities.end());
  return plan;
}

// What a place is told of by: its kind and key. Empty for what is no place.
std::string place_key(const entries::Payload& payload) {
  if (const auto* site = std::get_if<entries::Site>(&payload)) return "site/" + site->site.text();
  if (const auto* object = std::get_if<entries::GroundObject>(&payload))
    return "object/" + object->object.text();
  if (const auto* patch = std::get_if<entries::Patch>(&payload)) return "patch/" + patch->patch.text();
  return {};
}

// Takes out the drafts that an entry of the book already tells, so that a file can be imported again after it
// has grown. Places that the book knows are left as they are: it knows more of them than GeoJSON says.
std::size_t leave_out_known(const std::vector<entries::Entry>& there, bool places,
                            std::vector<ImportDraft>& drafts) {
  std::set<std::string> told;
  const auto key = [&](Date date, const entries::Payload& payload) {
    std::string place = places ? place_key(payload) : std::string();
    if (!place.empty()) return place;
    return date.iso() + std::string(entries::kind_name(payload)) + book::payload_json(payload);
  };
  for (const auto& entry : there) told.insert(key(entry.happened, entry.payload));
  return std::erase_if(
      drafts, [&](const ImportDraft& draft) { return told.contains(key(draft.happened, draft.payload)); });
}

// Nothing of a file that holds something would go in: the wrong map, or none where one is needed.
std::optional<Problem> nothing_found(const ImportWish& wish, const std::string& form, bool own_map,
                                     const ImportPlan& plan) {
  if (form != "geojson" || !plan.drafts.empty() || plan.rows == 0) return std::nullopt;
  return bad_input("no feature is one that the map knows", wish.file,
                   own_map ? "look at its only_when and skip_when"
                           : "give a map with --map, such as maps/own_points.toml");
}

ImportAnswer answer_of(const ImportPlan& plan, bool dry_run, std::size_t known, bool places) {
  json kinds = json::object();
  for (const auto& [kind, count] : plan.kinds) kinds[kind] = kinds.value(kind, std::size_t{0}) + count;
  ImportAnswer answer{{{"rows", plan.rows},
                       {"entries", plan.drafts.size()},
                       {"kinds", std::move(kinds)},
                       {"oddities", plan.oddities},
                       {"first", plan.first_entries},
                       {"known", known},
                       {"dry_run", dry_run}},
                      ""};
  for (const std::string& line : report(plan)) answer.text += line + "\n";
  if (known > 0)
    answer.text += fmt::format("{} of them are in the book already{}, and are left out\n", known,
                               places ? "" : ", the same to the word");
  return answer;
}

ImportAnswer refused_answer(const ImportPlan& plan, std::vector<Problem> refused, bool dry_run) {
  return {.json = {{"rows", plan.rows}, {"entries", 0}, {"dry_run", dry_run}},
          .text = {},
          .refused = std::move(refused)};
}

}  // namespace

Expected<std::optional<book::Book>> book_to_import_into(const ImportWish& wish) {
  const bool there = std::filesystem::exists(wish.book);
  if (!there && wish.dry_run) return std::optional<book::Book>();
  auto book = book::Book::open(wish.book, {.create = !there, .read_only = wish.dry_run, .who = wish.who},
                               machine_surroundings());
  if (!book) return book.problem();
  return std::optional<book::Book>(*std::move(book));
}

void take_back_book(const std::string& path) {
  std::error_code ignored;
  for (const char* tail : {"", "-wal", "-shm"}) std::filesystem::remove(path + tail, ignored);
}

Expected<ImportAnswer> import_by_map(const ImportWish& wish, const std::string& form,
                                     const std::string& bytes, const std::optional<MapText>& map) {
  const Date today = wish.today.value_or(machine_today());
  const bool made_here = !std::filesystem::exists(wish.book);
  std::optional<book::Book> book;
  std::vector<entries::Entry> there;
  if (!made_here) {
    auto opened = book_to_import_into(wish);
    if (!opened) return opened.problem();
    book = *std::move(opened);
    const auto all = book->entries();
    if (!all) return all.problem();
    there.assign(all->begin(), all->end());
  }
  const book::State state = book::state_of(book::standing_entries(there, today), today);
  const auto plan = plan_for(wish, form, bytes, map, state, today);
  if (!plan) return plan.problem();
  if (!plan->ready()) return refused_answer(*plan, plan->problems, wish.dry_run);
  if (const auto nothing = nothing_found(wish, form, map.has_value(), *plan)) return *nothing;
  std::vector<ImportDraft> fresh = plan->drafts;
  const std::size_t known = leave_out_known(there, form == "geojson", fresh);
  std::vector<book::Draft> drafts;
  drafts.reserve(fresh.size());
  for (const ImportDraft& draft : fresh)
    drafts.push_back({.happened = draft.happened, .happened_hour = draft.hour, .payload = draft.payload});
  const auto tables = Tables::built_in();
  if (!tables) return tables.problem();
  const auto line_of = [&](std::size_t draft) { return fmt::format("{}:{}", wish.file, fresh[draft].line); };
  if (const auto objection = objection_to(there, drafts, *tables)) {
    return refused_answer(*plan, {told(*objection, line_of)}, wish.dry_run);
  }
  ImportAnswer answer = answer_of(*plan, wish.dry_run, known, form == "geojson");
  if (wish.dry_run) {
    answer.text += "nothing was written: a dry run\n";
    return answer;
  }
  if (!book) {
    auto made = book_to_import_into(wish);
    if (!made) return made.problem();
    book = *std::move(made);
  }
  const auto kept = book->append(drafts, [&](std::span<const entries::Entry> now) -> Outcome {
    if (const auto objection = objection_to(now, drafts, *tables)) return told(*objection, line_of);
    return Done{};
  });
  if (!kept) {
    if (made_here) {
      book.reset();
      take_back_book(wish.book);
    }
    return kept.problem();
  }
  answer.text += fmt::format("kept: {} entries\n", kept->size());
  return answer;
}

}  // namespace beegarth::garth
