#include "duty/feeding.hpp"

#include <array>

#include "duty/rows.hpp"

namespace beegarth::duty {
namespace {

struct Point {
  double sugar_pct;
  const char* row;
};
constexpr std::array<Point, 3> densities{{{50, "syrup_density_50_pct_kg_L"},
                                          {61.5, "syrup_density_61_5_pct_kg_L"},
                                          {66.7, "syrup_density_66_7_pct_kg_L"}}};

std::optional<double> density_of(double sugar_pct, Rows& feeding) {
  constexpr double printed = 0.05;  // the strengths are printed to one place
  std::optional<double> found;
  for (std::size_t i = 0; i + 1 < densities.size(); ++i) {
    const Point &from = densities[i], &to = densities[i + 1];
    if (sugar_pct < from.sugar_pct - printed || sugar_pct > to.sugar_pct + printed) continue;
    const double a = feeding.number(from.row), b = feeding.number(to.row);
    found = a + (b - a) * (sugar_pct - from.sugar_pct) / (to.sugar_pct - from.sugar_pct);
  }
  return found;
}

}  // namespace

Expected<Syrup> mix_syrup(double sugar_kg, double water_kg, const FactTable& table) {
  Rows feeding(table);
  Syrup syrup;
  syrup.syrup_kg = sugar_kg + water_kg;
  syrup.sugar_pct = 100 * sugar_kg / syrup.syrup_kg;
  syrup.crystallises = syrup.sugar_pct > feeding.number("syrup_saturated_pct");
  const auto density = density_of(syrup.sugar_pct, feeding);
  if (feeding.fault()) return *feeding.fault();
  if (density && *density > 0) syrup.volume_L = syrup.syrup_kg / *density;
  return syrup;
}

Expected<SugarForStores> sugar_for_stores(double stores_kg, std::optional<double> moisture_pct,
                                          std::optional<double> loss_pct, const FactTable& table) {
  Rows feeding(table);
  const FactRow& losses = feeding.row("feed_loss_pct");
  SugarForStores answer;
  answer.moisture_pct = moisture_pct ? *moisture_pct : feeding.number("stores_moisture_pct");
  answer.loss_pct = loss_pct.value_or(losses.value);
  const double low = loss_pct.value_or(losses.low.value_or(losses.value));
  const double high = loss_pct.value_or(losses.high.value_or(losses.value));
  if (!(high < 100)) feeding.fail("the losses leave nothing", "feed_loss_pct", "give less than 100");
  if (feeding.fault()) return *feeding.fault();
  answer.before_losses_kg = stores_kg * (1 - answer.moisture_pct / 100);
  const auto with = [&](double lost_pct) { return answer.before_losses_kg / (1 - lost_pct / 100); };
  answer.sugar_kg = with(answer.loss_pct);
  answer.low_kg = with(low);
  answer.high_kg = with(high);
  return answer;
}

}  // namespace beegarth::duty
