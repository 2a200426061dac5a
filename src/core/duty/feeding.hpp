// Feed by kitchen measures: how strong a syrup is, and how much sugar stands for missing stores.
#pragma once

#include <optional>

#include "base/expected.hpp"
#include "base/fact_table.hpp"

namespace beegarth::duty {

// International yard and pound agreement of 1959; imperial pint, UK Weights and Measures Act 1985; US liquid
// pint, 28.875 cubic inches: exact by definition.
inline constexpr double kg_per_lb = 0.45359237;
inline constexpr double litres_per_uk_pint = 0.56826125;
inline constexpr double litres_per_us_pint = 0.473176473;

struct Syrup {
  double sugar_pct = 0;  // by weight
  double syrup_kg = 0;
  std::optional<double> volume_L;  // at 20 C, between the densities that are known
  bool crystallises = false;       // stronger than what stays dissolved at 20 C
};
// `feeding` is tables/feeding.toml, here and below.
Expected<Syrup> mix_syrup(double sugar_kg, double water_kg, const FactTable& feeding);

struct SugarForStores {
  double before_losses_kg = 0;  // in the stores themselves
  double sugar_kg = 0;          // to be given, with what goes into ripening and daily use
  double moisture_pct = 0, loss_pct = 0;
  double low_kg = 0, high_kg = 0;  // by the plausible losses; equal where the keeper named one
};
// Dry sugar for so many kilograms of missing stores; what was not said comes from the table.
Expected<SugarForStores> sugar_for_stores(double stores_kg, std::optional<double> moisture_pct,
                                          std::optional<double> loss_pct, const FactTable& feeding);

}  // namespace beegarth::duty
