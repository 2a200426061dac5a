// The printed sheet for one site and day: what to take, what to do in which order and why, and boxes to write
// in.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "facts/dwelling.hpp"
#include "garth/plan/plan_names.hpp"
#include "scene/layout.hpp"
#include "work/plan.hpp"

namespace beegarth::garth {

struct SheetFacts {
  work::SiteFacts site;
  PlanNames names;
  std::map<ColonyId, facts::Dwelling>
      dwellings;                         // says what can be seen; every box is printed where it is missing
  std::vector<std::string> calls_first;  // to be made before this visit: "Alder 5: telephone ..."
  std::string emergency_number = "112";  // 999 in the United Kingdom, 911 in North America
  scene::Paper paper = scene::Paper::a4;
};

scene::Document sheet(const work::Visit& visit, const SheetFacts& facts);

}  // namespace beegarth::garth
