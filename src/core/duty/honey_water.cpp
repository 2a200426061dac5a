#include "duty/honey_water.hpp"

#include <array>
#include <cmath>
#include <cstdio>

#include "duty/rows.hpp"

namespace beegarth::duty {
namespace {

std::string four_places(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.4f", value);
  return text;
}

Density between(const FactRow& a, const FactRow& b, double share) {
  const auto mix = [&](double x, double y) { return x + share * (y - x); };
  return {mix(a.value, b.value), mix(a.low.value_or(a.value), b.low.value_or(b.value)),
          mix(a.high.value_or(a.value), b.high.value_or(b.value))};
}

}  // namespace

// Wedmore 1955: W = (-0.2681 - log10(n - 1)) / 0.002243, n at 20 C. The table it gives back is printed to
// 0.0001.
Expected<double> honey_moisture_pct(double refractive_index, double temperature_C, const FactTable& table) {
  Rows honey(table);
  const double offset = honey.number("moisture_offset"), slope = honey.number("moisture_slope");
  const double low = honey.number("refractive_index_min"), high = honey.number("refractive_index_max");
  const double per_C = honey.number("refractive_index_per_C");
  const double reference_C = honey.number("moisture_reference_C");
  if (slope <= 0) honey.fail("the slope is not above 0", "moisture_slope", "mend it");
  if (honey.fault()) return *honey.fault();
  const double at_20 = refractive_index + per_C * (temperature_C - reference_C);
  constexpr double half_a_place = 0.00005;  // of the printed index
  if (!(at_20 > low - half_a_place && at_20 < high + half_a_place))
    return bad_input(
        "put right for warmth the index is " + four_places(at_20) + ", outside the table of honey",
        "refractive_index", "give a reading that comes to " + four_places(low) + " to " + four_places(high));
  return (offset - std::log10(at_20 - 1)) / slope;
}

Expected<std::optional<Density>> honey_density(double moisture_pct, const FactTable& table) {
  constexpr std::array<double, 5> moistures{15, 16, 17, 18, 20};
  Rows honey(table);
  std::optional<Density> found;
  for (std::size_t i = 0; i + 1 < moistures.size(); ++i) {
    const double from = moistures[i], to = moistures[i + 1];
    if (moisture_pct < from || moisture_pct > to) continue;
    const auto key = [](double pct) {
      return "density_" + std::to_string(static_cast<int>(pct)) + "_pct_kg_L";
    };
    found = between(honey.row(key(from)), honey.row(key(to)), (moisture_pct - from) / (to - from));
  }
  if (honey.fault()) return *honey.fault();
  return found;
}

Expected<Keeping> honey_keeping(double moisture_pct, const FactTable& table) {
  Rows honey(table);
  const double seldom = honey.number("ferments_seldom_below_pct");
  const double often = honey.number("ferments_often_above_pct");
  Keeping keeping;
  keeping.years = honey.number("best_before_years");
  if (moisture_pct < seldom) {
    keeping.words = "it hardly ferments, whatever yeast it holds; keep it closed, honey draws water";
    keeping.source = honey.source("ferments_seldom_below_pct");
  } else if (moisture_pct <= often) {
    keeping.fermentation = Fermentation::possible;
    keeping.words =
        "it may ferment where yeasts are many, the more so once it has set; keep it cool and closed";
    keeping.source = honey.source("ferments_seldom_below_pct");
  } else {
    keeping.fermentation = Fermentation::likely;
    keeping.words = "it is likely to ferment: keep it cold, use it soon, and do not mix it into drier honey";
    keeping.source = honey.source("ferments_often_above_pct");
    keeping.years = honey.number("best_before_years_moist");
  }
  if (keeping.years < 0 || keeping.years > 100)
    honey.fail("the value is no number of years", "best_before_years", "give 0 to 100");
  if (honey.fault()) return *honey.fault();
  return keeping;
}

}  // namespace beegarth::duty
