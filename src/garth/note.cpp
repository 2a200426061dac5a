#include "garth/note.hpp"

#include <algorithm>
#include <functional>

#include "garth/entry_json.hpp"
#include "garth/keep/keep.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

constexpr std::size_t longest_note = 20'000;

// Begun and not ended, however long ago: strips stay in until somebody takes them out.
std::vector<entries::TreatmentKind> treatments_on(const book::ColonyState& colony) {
  std::vector<entries::TreatmentKind> on;
  for (const auto& entry : colony.history) {
    if (const auto* begun = std::get_if<entries::Treatment>(&entry.payload)) on.push_back(begun->kind);
    if (const auto* ended = std::get_if<entries::TreatmentEnded>(&entry.payload)) std::erase(on, ended->kind);
  }
  return on;
}

}  // namespace

entries::NameBook names_for_notes(const book::State& state) {
  entries::NameBook book;
  for (const auto& [id, site] : state.sites)
    book.names.push_back({id.text(), site.name, entries::NamedThing::site, {}});
  for (const auto& [id, colony] : state.colonies) {
    if (colony.ended) continue;
    entries::KnownName name{id.text(), colony.began.name, entries::NamedThing::colony, {}};
    const auto hive = state.hives.find(colony.hive);
    // One super of an upright hive holds as many combs as its brood body, give or take: the keeper sees it
    // read back.
    if (hive != state.hives.end() && hive->second.form == entries::HiveForm::upright)
      name.super_combs = hive->second.brood_combs;
    name.treatments_on = treatments_on(colony);
    book.names.push_back(std::move(name));
  }
  for (const auto& [id, hive] : state.hives)
    book.names.push_back({id.text(), hive.name, entries::NamedThing::hive, {}});
  return book;
}

namespace {

// Of several lines the one at fault is named.
Problem in_its_line(const Objection& objection, const std::vector<int>& lines) {
  const bool one_line = std::adjacent_find(lines.begin(), lines.end(), std::not_equal_to<>()) == lines.end();
  return told(objection, [&](std::size_t draft) {
    return one_line ? std::string() : "line " + std::to_string(lines[draft]) + " of the note";
  });
}

}  // namespace

Expected<NoteAnswer> take_note(Session& session, std::string_view line, bool keep) {
  while (!line.empty() && (line.back() == '\n' || line.back() == '\r' || line.back() == ' '))
    line.remove_suffix(1);
  if (line.empty()) return bad_input("the note is empty", "LINE", "say what was seen or done");
  if (line.size() > longest_note)
    return bad_input("the note is longer than 20,000 bytes", "LINE", "give it in parts");
  auto reading = entries::read_note(line, names_for_notes(session.state), session.today);
  if (!reading) return reading.problem();

  NoteAnswer answer{.read_back = reading->read_back,
                    .left_as_text = reading->left_as_text,
                    .questions = reading->questions};
  std::vector<book::Draft> drafts;
  std::vector<int> lines;
  for (const auto& proposed : reading->entries) {
    drafts.push_back(
        {.happened = proposed.happened, .happened_hour = proposed.hour, .payload = proposed.payload});
    lines.push_back(proposed.line);
  }
  const auto all = session.book.entries();
  if (!all) return all.problem();
  if (const auto objection = objection_to(*all, drafts, session.tables))
    return in_its_line(*objection, lines);
  if (!keep) {
    for (const auto& draft : drafts)
      answer.understood.push_back(
          {.happened = draft.happened, .happened_hour = draft.happened_hour, .payload = draft.payload});
    return answer;
  }
  auto kept = session.book.append(drafts, [&](std::span<const entries::Entry> now) -> Outcome {
    if (const auto objection = objection_to(now, drafts, session.tables))
      return in_its_line(*objection, lines);
    return Done{};
  });
  if (!kept) return kept.problem();
  for (const auto& entry : *kept) answer.kept.push_back(entry.id);
  answer.understood = *std::move(kept);
  if (const auto outcome = refresh(session); !outcome) return outcome.problem();
  return answer;
}

json note_json(const NoteAnswer& answer, const book::State& state) {
  json entries = json::array();
  for (const auto& entry : answer.understood) entries.push_back(shown_entry(entry, state));
  return {{"kept", !answer.kept.empty()},
          {"entries", std::move(entries)},
          {"read_back", answer.read_back},
          {"left_as_text", answer.left_as_text},
          {"questions", answer.questions}};
}

}  // namespace beegarth::garth
