// How well the forecasts of a book would have done: at every look the belief of that day, from the entries up
// to that day alone, is held against what was seen at the looks after it, and against three plain ways to
// guess.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "garth/beliefs/skill_scores.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

// What was seen of one colony on one day.
struct SeenThen {
  Date date;
  bool alive = true;
  std::optional<double> bees;  // 0 where it was found dead
  std::optional<double> capped_cells;
  std::optional<double> mites_per_100_bees;
  std::optional<double> infested_share;
  int examined = 0;     // bees, in a wash or a sugar roll
  bool rolled = false;  // a sugar roll
  int opened = 0;       // capped cells
};
struct SeenColony {
  ColonyId colony;
  std::vector<SeenThen> looks;  // ascending, one a day
};
std::vector<SeenColony> seen_in(const Session& session);

// One forecast of one quantity, scored.
struct SkillCase {
  std::string colony;
  std::string quantity;
  Date from;
  Date on;
  double seen = 0;
  double middle = 0;  // median of the forecast; its mean for alive
  double ours = 0;
  bool inside = false;  // of the 80 % band
  std::optional<double> last_value;
  std::optional<double> others;
  std::optional<double> growth;  // mites alone
};

struct SkillGroup {
  std::string quantity;
  std::string lead;
  int cases = 0;
  double seen = 0;  // means over the cases
  double middle = 0;
  double covered = 0;  // share inside the 80 % band
  Comparison last_value, others, growth;
};

struct Skill {
  Date today;
  std::vector<SkillCase> cases;
  std::vector<SkillGroup> groups;
};

// Moves the session to each day it stands on, and back to its own today.
Expected<Skill> skill_of(Session& session);

nlohmann::json skill_json(const Skill& skill);
std::string skill_text(const Skill& skill);

}  // namespace beegarth::garth
