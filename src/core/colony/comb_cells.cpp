#include "colony/comb_cells.hpp"

#include <cmath>

namespace beegarth::colony {
namespace {

constexpr double mm2_per_dm2 = 1e4;

}  // namespace

double cells_per_dm2_of_width(double width_mm) {
  return 2 * mm2_per_dm2 / (width_mm * width_mm * std::sqrt(3.0) / 2);
}
double cells_per_dm2_of_row(double cells_in_10_cm) {
  return cells_per_dm2_of_width(100 / cells_in_10_cm);
}
double cells_per_cm2_side(double width_mm) {
  return cells_per_dm2_of_width(width_mm) / 2 / 100;
}

double area_dm2(const Comb& comb) {
  return comb.length_mm * comb.depth_mm / mm2_per_dm2;
}
double cells_of(const Comb& comb) {
  return area_dm2(comb) * cells_per_dm2_of_width(comb.cell_mm);
}

}  // namespace beegarth::colony
