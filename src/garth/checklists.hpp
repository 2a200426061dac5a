// What to do at once when something happens that cannot wait for a plan.
#pragma once

#include <string>
#include <vector>

#include "base/fact_table.hpp"
#include "entries/kinds/deeds.hpp"

namespace beegarth::garth {

struct ChecklistStep {
  std::string words;
  std::string source;
};
struct Checklist {
  std::string title;
  std::vector<ChecklistStep> steps;  // in this order
};

// From tables/checklists.toml; the local emergency number stands where the table says {number}.
Expected<Checklist> checklist_for(entries::Urgency what, const FactTable& table,
                                  const std::string& emergency_number);

}  // namespace beegarth::garth
