// Every calc entry, in the order in which `calc --list` shows them.
#include <vector>

#include "garth/calc/calc.hpp"

namespace beegarth::garth {

// Each entry is made by a function in the file of its name.
Calc sun_position_calc();
Calc sun_times_calc();
Calc daylength_calc();
Calc degree_days_calc();
Calc flight_hours_calc();
Calc forager_balance_calc();
Calc mite_growth_calc();
Calc mite_drop_calc();
Calc mite_sample_calc();
Calc queen_dates_calc();
Calc next_look_calc();
Calc schedule_calc();
Calc treatment_calc();
Calc winter_need_calc();
Calc season_calc();
Calc comb_room_calc();
Calc count_plan_calc();
Calc two_shares_calc();
Calc two_means_calc();
Calc honey_moisture_calc();
Calc honey_check_calc();
Calc honey_label_calc();
Calc notifiable_calc();
Calc medicine_record_calc();
Calc treatment_gate_calc();
Calc syrup_calc();
Calc stores_sugar_calc();
Calc hive_weight_calc();
Calc kinship_calc();
Calc line_scores_calc();
Calc matings_calc();
Calc transfer_ways_calc();
Calc rounds_calc();

std::span<const Calc> all_calcs() {
  static const std::vector<Calc> calcs{
      sun_position_calc(), sun_times_calc(),       daylength_calc(),      degree_days_calc(),
      flight_hours_calc(), forager_balance_calc(), mite_growth_calc(),    mite_drop_calc(),
      mite_sample_calc(),  queen_dates_calc(),     next_look_calc(),      schedule_calc(),
      treatment_calc(),    honey_moisture_calc(),  honey_check_calc(),    honey_label_calc(),
      notifiable_calc(),   medicine_record_calc(), treatment_gate_calc(), syrup_calc(),
      stores_sugar_calc(), hive_weight_calc(),     kinship_calc(),        line_scores_calc(),
      matings_calc(),      transfer_ways_calc(),   rounds_calc(),         winter_need_calc(),
      season_calc(),       comb_room_calc(),       count_plan_calc(),     two_shares_calc(),
      two_means_calc(),
  };
  return calcs;
}

}  // namespace beegarth::garth
