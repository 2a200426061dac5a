// Advice on matings: what each virgin would give with each set of drones, and which matings together keep the
// lines and the kinship low while the scores rise.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "lines/relationship.hpp"
#include "lines/sex_alleles.hpp"

namespace beegarth::lines {

struct DroneSet {
  std::string name;
  std::vector<Suitors> mating;
};

struct MatingQuestion {
  std::vector<std::size_t> virgins;
  std::vector<DroneSet> sets;
  std::vector<double> scores;  // of every queen of the pedigree; higher is better; 0 the mean
  double inbreeding_limit = 0.125;
  double coancestry_per_score = 0;  // how much mean coancestry one point of score is worth
  std::optional<int> keep;          // how many matings to choose; nothing: all virgins that may be mated
};

// A virgin with a set of drones. "Daughters" are the young queens and the workers of the colony she will
// head.
struct Cross {
  std::size_t virgin = 0;  // place in the question
  std::size_t set = 0;
  double inbreeding = 0;  // of the daughters
  double kinship = 0;     // mean coancestry of a daughter with the living queens of the pedigree
  double score = 0;       // expected of daughters
  DiploidDrones brood_lost;
  bool allowed = true;  // inbreeding is within the limit
  std::vector<std::string> reasons;
};

struct Choice {
  std::vector<std::size_t> crosses;  // places in the advice, one for each virgin chosen
  // Of two daughters, each of a chosen mating drawn at random, the same one included.
  double mean_coancestry = 0;
  double mean_score = 0;
  double value = 0;    // mean coancestry less weight times mean score: the less the better
  bool proven = true;  // no other choice is better; false where the search was cut short
  std::int64_t looked_at = 0;
};

struct MatingAdvice {
  std::vector<Cross> crosses;  // virgin by virgin, set by set
  std::optional<Choice> choice;
  std::vector<std::string> reasons;  // for the choice, or why there is none
};

Expected<MatingAdvice> advise_matings(const Pedigree& pedigree, const MatingQuestion& question,
                                      const FactTable& table);

}  // namespace beegarth::lines
