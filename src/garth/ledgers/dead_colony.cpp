#include "garth/ledgers/dead_colony.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string_view>
#include <utility>

namespace beegarth::garth {
namespace {

struct Cause {
  std::string_view key;
  std::string_view words;
};
constexpr auto causes = std::to_array<Cause>({{"starved", "starvation"},
                                              {"isolated", "isolation from stores"},
                                              {"mites", "mites and the viruses they carry"},
                                              {"queen", "a failed queen"},
                                              {"robbed", "robbing"},
                                              {"damp", "damp and cold"},
                                              {"disease", "disease of brood or gut"}});

struct Finding {
  std::string key;
  bool present;
};

std::vector<Finding> findings_in(const entries::DeadColony& found) {
  std::vector<Finding> findings;
  const auto add = [&](const char* key, const entries::Flag& flag) {
    if (flag) findings.push_back({key, *flag});
  };
  if (found.stores_kg) findings.push_back({"stores_left", *found.stores_kg >= 1});
  if (found.dead_bees) findings.push_back({"many_dead_bees", *found.dead_bees >= entries::Level::some});
  add("cluster", found.cluster);
  add("heads_in_cells", found.heads_in_cells);
  add("stores_within_reach", found.stores_within_reach);
  add("brood", found.brood);
  add("queen_found", found.queen_found);
  add("queen_cells", found.queen_cells);
  add("dysentery", found.dysentery);
  add("damp", found.damp);
  add("ragged_cappings", found.ragged_cappings);
  add("mite_droppings", found.mite_droppings);
  add("deformed_wings", found.deformed_wings);
  return findings;
}

std::string in_words(const Finding& finding) {
  std::string words = finding.key;
  std::replace(words.begin(), words.end(), '_', ' ');
  return (finding.present ? "" : "no ") + words;
}

}  // namespace

Expected<std::vector<CauseOfDeath>> causes_of_death(const entries::DeadColony& found,
                                                    const FactTable& table) {
  const auto findings = findings_in(found);
  std::vector<CauseOfDeath> answer;
  std::vector<std::vector<double>> likelihood(causes.size());
  double sum = 0;
  for (std::size_t c = 0; c < causes.size(); ++c) {
    const auto before = table.value(std::string(causes[c].key) + "_before");
    if (!before) return before.problem();
    double weight = *before;
    for (const Finding& finding : findings) {
      const auto share = table.value(std::string(causes[c].key) + "_" + finding.key);
      if (!share) return share.problem();
      likelihood[c].push_back(finding.present ? *share : 1 - *share);
      weight *= likelihood[c].back();
    }
    answer.push_back({std::string(causes[c].key), std::string(causes[c].words), weight, {}});
    sum += weight;
  }
  for (std::size_t c = 0; c < causes.size(); ++c) {
    answer[c].share = sum > 0 ? answer[c].share / sum : 1.0 / static_cast<double>(causes.size());
    for (std::size_t f = 0; f < findings.size(); ++f) {
      double mean = 0;
      for (const auto& other : likelihood) mean += other[f] / static_cast<double>(causes.size());
      if (likelihood[c][f] > 1.3 * mean) answer[c].speaks_for.push_back(in_words(findings[f]));
    }
  }
  std::stable_sort(answer.begin(), answer.end(),
                   [](const auto& a, const auto& b) { return a.share > b.share; });
  return answer;
}

std::vector<std::string> steps_at_a_dead_hive() {
  return {
      "Close the entrance at once: robbers carry mites and disease to every hive within reach.",
      "Look before anything is moved: stores, where the bees lie, brood, cappings, droppings, floor.",
      "Where brood is sunken, greasy, perforated or ropy: stop, touch nothing else, tell the bee inspector.",
      "Take a sample of about 300 bees, and a piece of brood comb if there is any, before cleaning.",
      "Write down what was found (a dead_colony entry), then that the colony has ended.",
      "Combs of a colony that may have been ill are burnt or melted, not given to others."};
}

}  // namespace beegarth::garth
