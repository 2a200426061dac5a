// The weight of a hive that is too heavy to stand on a scale: lifted a little at one end, then at the other.
#pragma once

#include <optional>

#include "base/expected.hpp"
#include "base/fact_table.hpp"

namespace beegarth::duty {

// A hive on two rails: it turns about pivot A or B, lifted by a hook beyond each. From the left: hook, pivot
// A, pivot B, hook.
struct Rails {
  double pivots_apart_mm = 0;   // A to B
  double hooks_apart_mm = 0;    // left hook to right hook
  double hook_to_pivot_mm = 0;  // left hook to A
};

// Moments about B and about A: W = (F1 (L1 + X2) + F2 (L2 - X2)) / L1, wherever the weight lies between them
// (club page on hive weighing). The rails are weighed with the hive.
Expected<double> weight_on_rails_kg(double left_kg, double right_kg, const Rails& rails);

// Each side lifted while the hive turns about the very edge of the other: the two add up (club tip on
// hefting).
inline double weight_of_two_sides_kg(double one_kg, double other_kg) {
  return one_kg + other_kg;
}

struct OneSide {
  double weight_kg = 0, low_kg = 0, high_kg = 0;
};
// One side only. By geometry where the levers are known: W = R d / x, d from pivot to scale, x from pivot to
// the middle of the weight; else by the usual share of it that one side carries, tables/feeding.toml.
Expected<OneSide> weight_of_one_side(double reading_kg, std::optional<double> pivot_to_scale_mm,
                                     std::optional<double> pivot_to_weight_mm, const FactTable& feeding);

}  // namespace beegarth::duty
