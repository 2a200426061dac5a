#include "garth/checklists.hpp"

#include "entries/fields.hpp"

namespace beegarth::garth {

Expected<Checklist> checklist_for(entries::Urgency what, const FactTable& table,
                                  const std::string& emergency_number) {
  const std::string key(entries::word_for(what));
  Checklist list;
  const auto title = table.words(key + "_title");
  if (!title) return title.problem();
  list.title = std::string(*title);
  for (int step = 1;; ++step) {
    const FactRow* row = table.find(key + "_" + std::to_string(step));
    if (row == nullptr) break;
    std::string words = row->text;
    const std::string mark = "{number}";
    for (std::size_t at = words.find(mark); at != std::string::npos; at = words.find(mark))
      words.replace(at, mark.size(), emergency_number);
    list.steps.push_back({std::move(words), row->source});
  }
  return list;
}

}  // namespace beegarth::garth
