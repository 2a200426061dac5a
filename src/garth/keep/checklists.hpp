// What to do at once when something happens that cannot wait for a plan.
#pragma once

#include <nlohmann/json.hpp>
#include <span>
#include <string>
#include <vector>

#include "base/fact_table.hpp"
#include "entries/kinds/deeds.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

struct ChecklistStep {
  std::string words;
  std::string source;
};
struct Checklist {
  entries::Urgency what = entries::Urgency::other;
  std::string title;
  std::vector<ChecklistStep> steps;     // in this order
  std::vector<ChecklistStep> cautions;  // that hold whatever has happened
};

// From tables/checklists.toml; the local emergency number stands where the table says {number}.
Expected<Checklist> checklist_for(entries::Urgency what, const FactTable& table,
                                  const std::string& emergency_number);

// The keeper's setting, else 112.
std::string emergency_number(const Session& session);
Expected<std::vector<Checklist>> every_checklist(const Session& session);
// The lists for the urgent ones among entries just kept, each once.
Expected<std::vector<Checklist>> checklists_for(const Session& session, std::span<const entries::Entry> kept);

nlohmann::json checklist_json(const Checklist& list);
std::string checklist_text(const Checklist& list);

}  // namespace beegarth::garth
