// How many cells and bees a comb of any pattern holds, from its size. Home-made hives have no table.
#pragma once

namespace beegarth::colony {

// Both sides, by the cells that stand in a row of 10 cm: 2.309 n^2 to the square decimetre (Betts 1938, Bee
// World 106); for hexagons of width w mm, 2 x 10^4 / (w^2 sqrt(3) / 2).
double cells_per_dm2_of_row(double cells_in_10_cm);
double cells_per_dm2_of_width(double width_mm);
double cells_per_cm2_side(double width_mm);

struct Comb {
  double length_mm = 0, depth_mm = 0;  // of the comb itself, inside the frame
  double cell_mm = 5.4;
};
double area_dm2(const Comb& comb);  // of one side
double cells_of(const Comb& comb);  // both sides, fully drawn

}  // namespace beegarth::colony
