// Colonies for tests: the shipped figures, a roomy hive, and a year of smooth weather.
#pragma once

#include <algorithm>

#include "calc_answers.hpp"
#include "colony/colony.hpp"
#include "temperate_year.hpp"

namespace beegarth::testing {

inline const colony::Model& shipped_model() {
  static const colony::Model model = *colony::Model::from(shipped_tables()["colony"]);
  return model;
}

// The shipped figures with some rows replaced.
inline colony::Model model_with(const std::vector<std::pair<std::string, double>>& values) {
  std::vector<FactRow> rows;
  rows.reserve(values.size());
  for (const auto& [key, value] : values)
    rows.push_back({.key = key, .value = value, .unit = "1", .source = "for a test"});
  return *colony::Model::from(*shipped_tables()["colony"].with(rows));
}

// An autumn colony of the size that McLellan 1978/79 found in late September.
inline colony::Start autumn_start() {
  return {
      .bees = 13000, .brood_cells = 500, .stores_kg = 18, .pollen_kg = 0.75, .mites = 100, .winter_share = 1};
}

inline facts::Dwelling roomy_hive() {
  facts::Dwelling d;
  d.brood_combs = 22;
  d.super_combs = 20;
  return d;
}

// Colonies that never think of swarming, as those of the published counts did not.
inline colony::Traits homely() {
  colony::Traits traits;
  traits[colony::Trait::swarming] = -20;
  return traits;
}

inline colony::Ensemble autumn_ensemble(const colony::Model& model, int members,
                                        const colony::Traits& traits = homely(),
                                        const facts::Dwelling& hive = roomy_hive()) {
  const colony::Start start = autumn_start();
  return colony::make_ensemble(model, hive, *Date::from_ymd(2025, 9, 30), members, std::span(&start, 1),
                               std::span(&traits, 1));
}

inline void follow_to(colony::Ensemble& ensemble, const colony::Model& model, Date evening,
                      std::uint64_t seed = 1) {
  while (ensemble.date() < evening) {
    colony::advance_day(ensemble, model, temperate_day(ensemble.date() + 1), {}, {.seed = seed});
  }
}

inline double median(const colony::Ensemble& ensemble, colony::Quantity quantity) {
  auto values = ensemble.read(quantity);
  std::sort(values.begin(), values.end());
  return static_cast<double>(values[values.size() / 2]);
}

}  // namespace beegarth::testing
