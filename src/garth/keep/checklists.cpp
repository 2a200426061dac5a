#include "garth/keep/checklists.hpp"

#include <algorithm>

#include "entries/fields.hpp"

namespace beegarth::garth {

namespace {

using nlohmann::json;

std::vector<ChecklistStep> steps_of(const std::string& key, const FactTable& table,
                                    const std::string& emergency_number) {
  std::vector<ChecklistStep> steps;
  for (int step = 1;; ++step) {
    const FactRow* row = table.find(key + "_" + std::to_string(step));
    if (row == nullptr) return steps;
    std::string words = row->text;
    const std::string mark = "{number}";
    for (std::size_t at = words.find(mark); at != std::string::npos; at = words.find(mark))
      words.replace(at, mark.size(), emergency_number);
    steps.push_back({std::move(words), row->source});
  }
}

json steps_json(const std::vector<ChecklistStep>& steps) {
  json list = json::array();
  for (const auto& step : steps) list.push_back({{"words", step.words}, {"source", step.source}});
  return list;
}

}  // namespace

Expected<Checklist> checklist_for(entries::Urgency what, const FactTable& table,
                                  const std::string& emergency_number) {
  const std::string key(entries::word_for(what));
  const auto title = table.words(key + "_title");
  if (!title) return title.problem();
  return Checklist{.what = what,
                   .title = std::string(*title),
                   .steps = steps_of(key, table, emergency_number),
                   .cautions = steps_of("always", table, emergency_number)};
}

std::string emergency_number(const Session& session) {
  const auto number = session.state.settings.find("emergency_number");
  return number == session.state.settings.end() ? "112" : number->second;
}

Expected<std::vector<Checklist>> every_checklist(const Session& session) {
  std::vector<Checklist> lists;
  for (std::size_t i = 0; i < entries::Words<entries::Urgency>::list.size(); ++i) {
    auto list = checklist_for(static_cast<entries::Urgency>(i), session.tables["checklists"],
                              emergency_number(session));
    if (!list) return list.problem();
    lists.push_back(*std::move(list));
  }
  return lists;
}

Expected<std::vector<Checklist>> checklists_for(const Session& session,
                                                std::span<const entries::Entry> kept) {
  std::vector<Checklist> lists;
  for (const auto& entry : kept) {
    const auto* urgent = std::get_if<entries::Urgent>(&entry.payload);
    if (urgent == nullptr) continue;
    if (std::any_of(lists.begin(), lists.end(), [&](const auto& list) { return list.what == urgent->what; }))
      continue;
    auto list = checklist_for(urgent->what, session.tables["checklists"], emergency_number(session));
    if (!list) return list.problem();
    lists.push_back(*std::move(list));
  }
  return lists;
}

json checklist_json(const Checklist& list) {
  return {{"what", entries::word_for(list.what)},
          {"title", list.title},
          {"steps", steps_json(list.steps)},
          {"cautions", steps_json(list.cautions)}};
}

std::string checklist_text(const Checklist& list) {
  std::string text = list.title + "\n";
  int number = 0;
  for (const auto& step : list.steps) text += "  " + std::to_string(++number) + "  " + step.words + "\n";
  for (const auto& caution : list.cautions) text += "  Care: " + caution.words + "\n";
  return text;
}

}  // namespace beegarth::garth
