#include "colony/mite_growth.hpp"

#include <cmath>

namespace beegarth::colony {

double mite_growth_per_day(const MiteModel& m) {
  const double i = m.invasion_per_day;
  const double u = m.phoretic_loss_per_day;
  // The left side less the right rises with r, is below 0 at -(i + u) and at least 0 at R i.
  double low = -(i + u);
  double high = m.emerging_per_entering * i;
  for (int step = 0; step < 200; ++step) {
    const double r = (low + high) / 2;
    const bool too_high = r + i + u > m.emerging_per_entering * i * std::exp(-r * m.capped_days);
    (too_high ? high : low) = r;
  }
  return (low + high) / 2;
}

double share_on_adults(const MiteModel& m, double growth_per_day) {
  const double days = std::abs(growth_per_day) < 1e-12
                          ? m.capped_days
                          : -std::expm1(-growth_per_day * m.capped_days) / growth_per_day;
  return 1 / (1 + m.invasion_per_day * days);
}

double mites_after(double start, double growth_per_day, double immigration_per_day, double days) {
  const double arrived =
      std::abs(growth_per_day) < 1e-12 ? days : std::expm1(growth_per_day * days) / growth_per_day;
  return start * std::exp(growth_per_day * days) + immigration_per_day * arrived;
}

double drone_share_of_entering(double drone_cell_share, double preference) {
  return preference * drone_cell_share / (preference * drone_cell_share + 1 - drone_cell_share);
}

}  // namespace beegarth::colony
