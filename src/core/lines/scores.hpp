// The keeper's own scores (calmness, honey, hygiene, whatever is written down with a number), cleared of site
// and year and drawn towards the mean as far as few data ask for: what a queen's colonies are expected to
// show above or below those of a queen of unknown descent at the same site in the same year.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/fact_table.hpp"
#include "lines/pedigree.hpp"

namespace beegarth::lines {

struct Score {
  std::size_t queen = 0;
  std::string trait;
  std::string site;
  int year = 0;
  double value = 0;
};

struct ScoreEstimate {
  double estimate = 0;  // in the score's own unit, above or below the mean
  std::optional<double> standard_error;
  double reliability = 0;  // squared correlation of estimate and truth, if the share of the queen is right
  // The same with the queen's share of the differences at the ends of its range.
  double at_low_share = 0, at_high_share = 0;
  int scores = 0;  // of her own
};

struct TraitEstimates {
  std::string trait;
  int scores = 0;
  int sites_and_years = 0;
  // Scores that stand alone in their site and year, or with others of the same queen only, tell nothing.
  int uncompared = 0;
  int differences = 0;           // from which the spread is estimated
  std::optional<double> spread;  // standard deviation of scores within a site and year
  double queens_share = 0;
  std::vector<ScoreEstimate> queens;  // every queen of the pedigree
  std::string plainly;                // what the data can bear, in a sentence
};

// One result for each trait, in the order of their names.
Expected<std::vector<TraitEstimates>> estimate_scores(const Pedigree& pedigree,
                                                      const std::vector<Score>& scores,
                                                      const FactTable& table);

}  // namespace beegarth::lines
