#include "duty/hive_weight.hpp"

#include "duty/rows.hpp"

namespace beegarth::duty {

Expected<double> weight_on_rails_kg(double left_kg, double right_kg, const Rails& rails) {
  const auto [apart, hooks, outside] = rails;
  if (!(apart > 0)) return bad_input("the pivots are not apart", "pivots_apart_mm", "give more than 0");
  if (!(outside + apart <= hooks))
    return bad_input("the right hook lies between the pivots", "hooks_apart_mm",
                     "give at least hook_to_pivot_mm and pivots_apart_mm together");
  return (left_kg * (apart + outside) + right_kg * (hooks - outside)) / apart;
}

Expected<OneSide> weight_of_one_side(double reading_kg, std::optional<double> pivot_to_scale_mm,
                                     std::optional<double> pivot_to_weight_mm, const FactTable& table) {
  if (pivot_to_scale_mm && pivot_to_weight_mm) {
    if (!(*pivot_to_weight_mm > 0 && *pivot_to_weight_mm <= *pivot_to_scale_mm))
      return bad_input("the weight does not lie between pivot and scale", "pivot_to_weight_mm",
                       "give more than 0 and no more than pivot_to_scale_mm");
    const double weight = reading_kg * *pivot_to_scale_mm / *pivot_to_weight_mm;
    return OneSide{weight, weight, weight};
  }
  Rows feeding(table);
  const FactRow& share = feeding.row("one_side_share");
  const double low = share.low.value_or(share.value), high = share.high.value_or(share.value);
  if (!(low > 0 && high <= 1)) feeding.fail("the share is not between 0 and 1", "one_side_share", "mend it");
  if (feeding.fault()) return *feeding.fault();
  return OneSide{reading_kg / share.value, reading_kg / high, reading_kg / low};
}

}  // namespace beegarth::duty
