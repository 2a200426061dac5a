// What a country asks of the composition of honey that is sold, held against what was measured.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/expected.hpp"
#include "base/fact_table.hpp"

namespace beegarth::duty {

enum class HoneySource { blossom, honeydew, blend };
enum class HoneyPlant {
  other,
  calluna,               // ling heather
  false_acacia_or_like,  // alfalfa, citrus and some others
  lavender_or_borage,
  chestnut,
  lime_or_like  // lime, bell heather, strawberry tree, eucalyptus, tea trees: no limit of conductivity
};

struct HoneyKind {
  HoneySource source = HoneySource::blossom;
  HoneyPlant plant = HoneyPlant::other;
  bool bakers = false;   // sold for cooking only
  bool pressed = false;  // not spun
  bool tropical = false;
};

struct Measured {
  std::optional<double> moisture_pct;
  std::optional<double> fructose_and_glucose_pct;
  std::optional<double> sucrose_pct;
  std::optional<double> insoluble_pct;
  std::optional<double> conductivity_mS_cm;
  std::optional<double> hmf_mg_kg;
  std::optional<double> diastase_schade;
  std::optional<double> free_acid_meq_kg;
  std::optional<bool> fermenting;
  std::optional<bool> overheated;
};

struct LimitCheck {
  std::string what;  // "moisture_pct"
  std::optional<double> value, limit;
  bool at_most = true;  // else at least
  bool passes = true;
  std::string source;
};

struct CompositionAnswer {
  bool passes = true;  // of what was measured
  std::vector<LimitCheck> checks;
  std::vector<std::string> not_measured;
  bool passes_as_bakers = true;  // were it sold for cooking only
  std::string law;
};

Expected<CompositionAnswer> judge_composition(const HoneyKind& kind, const Measured& measured,
                                              const FactTable& country);

}  // namespace beegarth::duty
