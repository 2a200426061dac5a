// The water in honey: from the refractometer, and what follows from it: density, fermentation, keeping.
#pragma once

#include <optional>
#include <string>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "base/fact_table.hpp"

namespace beegarth::duty {

// Per cent of water from the refractive index read at a temperature. Refuses what lies outside the table from
// which the equation was made. `honey` is tables/honey.toml, here and below.
Expected<double> honey_moisture_pct(double refractive_index, double temperature_C, const FactTable& honey);

struct Density {
  double mid = 0, low = 0, high = 0;  // kg/L at 20 C; low and high where the sources disagree
};
// Nothing outside the rows that there are.
Expected<std::optional<Density>> honey_density(double moisture_pct, const FactTable& honey);

enum class Fermentation { unlikely, possible, likely };
struct Keeping {
  Fermentation fermentation = Fermentation::unlikely;
  std::string words;
  double years = 0;  // from the jar to the best-before date, a suggestion
  std::string source;
};
Expected<Keeping> honey_keeping(double moisture_pct, const FactTable& honey);

}  // namespace beegarth::duty
