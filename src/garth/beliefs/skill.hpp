// How well the forecasts of a book would have done: at every look the belief of that day, from the entries up
// to that day alone, is held against what was seen at the looks after it, and against plain ways to guess.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "garth/beliefs/skill_leads.hpp"
#include "garth/beliefs/skill_reliability.hpp"
#include "garth/beliefs/skill_rivals.hpp"
#include "garth/beliefs/skill_scores.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

inline constexpr std::array<double, 3> band_levels{0.5, 0.8, 0.95};

struct Band {
  bool inside = false;  // its ends count as inside
  double odds = 0;  // that the forecast itself gave to what lies inside: above the level where it gives odds
                    // to single figures, as to counts
};

// One forecast of one quantity, scored.
struct SkillCase {
  std::string colony;
  std::string site;
  Scored what = Scored::bees;
  Lead lead = Lead::one_week;
  Date from;
  Date on;
  double seen = 0;
  double middle = 0;  // median of the forecast; its mean for alive
  double ours = 0;    // CRPS; of alive that is the Brier score
  std::array<Band, band_levels.size()> bands;
  std::array<std::optional<double>, rivals.size()> others;  // their scores
  // Of the event: alive; of a figure, that it is above the last one seen. Nothing where it equals the last
  // one, or there was none.
  std::optional<double> odds;
  bool happened = false;
};

struct BandHeld {
  MeanOfCases inside;
  double odds = 0;  // mean
};

struct SkillGroup {
  Scored what = Scored::bees;
  Lead lead = Lead::one_week;
  double seen = 0;  // means over the cases
  double middle = 0;
  MeanOfCases score;
  std::array<BandHeld, band_levels.size()> bands;
  std::array<Comparison, rivals.size()> against;
  Reliability odds;
  MeanOfCases brier;
};

struct Skill {
  Date today;
  int sites = 0;
  bool whole_sites = false;  // what others teach leaves out the whole site
  std::vector<SkillCase> cases;
  std::vector<SkillGroup> groups;
};

// Moves the session to each day it stands on, and back to its own today.
Expected<Skill> skill_of(Session& session);

std::vector<SkillGroup> skill_groups(const std::vector<SkillCase>& cases, std::uint64_t seed);
nlohmann::json skill_json(const Skill& skill);
nlohmann::json skill_schema();  // of skill_json
std::string skill_text(const Skill& skill);

}  // namespace beegarth::garth
