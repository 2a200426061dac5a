// The cases of one quantity and lead, put together.
#include "garth/beliefs/skill.hpp"

namespace beegarth::garth {
namespace {

SkillGroup group_of(const std::vector<const SkillCase*>& cases, std::uint64_t seed) {
  SkillGroup group{.what = cases.front()->what, .lead = cases.front()->lead};
  const std::string name =
      std::string(name_of(group.what)) + " " + std::to_string(static_cast<int>(group.lead));
  const double share = 1.0 / static_cast<double>(cases.size());
  std::vector<CaseValue> scores;
  std::vector<CaseValue> briers;
  std::vector<OddsSaid> odds;
  for (const SkillCase* c : cases) {
    group.seen += share * c->seen;
    group.middle += share * c->middle;
    scores.push_back({c->colony, c->ours});
    if (!c->odds) continue;
    odds.push_back({c->colony, *c->odds, c->happened});
    briers.push_back({c->colony, brier(*c->odds, c->happened)});
  }
  group.score = mean_over_colonies(scores, name + " score", seed);
  group.brier = mean_over_colonies(briers, name + " brier", seed);
  group.odds = reliability_of(odds);
  for (std::size_t b = 0; b < band_levels.size(); ++b) {
    std::vector<CaseValue> inside;
    for (const SkillCase* c : cases) {
      inside.push_back({c->colony, c->bands[b].inside ? 1.0 : 0.0});
      group.bands[b].odds += share * c->bands[b].odds;
    }
    group.bands[b].inside = mean_over_colonies(inside, name + " band " + std::to_string(b), seed);
  }
  for (const RivalName& rival : rivals) {
    const auto at = static_cast<std::size_t>(rival.rival);
    std::vector<ScorePair> pairs;
    for (const SkillCase* c : cases) {
      if (c->others.at(at)) pairs.push_back({c->colony, c->ours, *c->others.at(at)});
    }
    group.against.at(at) = compare(pairs, name + " " + std::string(rival.key), seed);
  }
  return group;
}

}  // namespace

std::vector<SkillGroup> skill_groups(const std::vector<SkillCase>& cases, std::uint64_t seed) {
  std::vector<SkillGroup> groups;
  for (const Scored what : all_scored) {
    for (const LeadDays& lead : lead_days) {
      std::vector<const SkillCase*> in_group;
      for (const SkillCase& c : cases) {
        if (c.what == what && c.lead == lead.lead) in_group.push_back(&c);
      }
      if (!in_group.empty()) groups.push_back(group_of(in_group, seed));
    }
  }
  return groups;
}

}  // namespace beegarth::garth
