// The label of a jar of honey: what must be on it, what is missing, and how tall its figures are.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "duty/honey_limits.hpp"
#include "duty/rows.hpp"

namespace beegarth::duty {

struct Label {
  double net_weight_g = 0;
  std::optional<std::string> name, address, origin, best_before, lot;
  std::optional<double> figure_height_mm;       // of the net weight, as printed
  std::optional<double> named_plant_share_pct;  // where the label names a plant: what share is of it
  bool infant_caution = false;
  // What is in the jar, where it is known: then the name is held against it.
  std::optional<HoneySource> source;
  bool bakers = false;  // may be sold for cooking only
  bool says_cooking_only = false;
};

struct LabelFact {
  std::string fact;  // "origin"
  Asked asked = Asked::no;
  bool given = false;
  std::string words;  // what is meant
  std::string source;
};

struct LabelAnswer {
  double figure_height_min_mm = 0;
  std::string figure_source;
  bool lot_needed = true;
  std::vector<LabelFact> facts;
  std::vector<std::string> missing;  // required and not there
  std::vector<std::string> advised;  // good practice and not there
  std::vector<std::string> faults;   // there, and wrong
  bool complete = false;             // nothing missing, nothing wrong
};

// `honey` is tables/honey.toml, with the words that the laws reserve.
Expected<LabelAnswer> judge_label(const Label& label, const FactTable& country, const FactTable& honey);

}  // namespace beegarth::duty
