// How fast mites multiply while there is brood: the simplest model with a delay.
//   P' = -(i + u) P + R i P(t - T)
// P mites on bees; i enter cells a day, u die a day, T days under cappings, R emerge for each that entered.
#pragma once

namespace beegarth::colony {

struct MiteModel {
  double invasion_per_day = 0.161;       // Boot et al. 1993, the middle of three replicates
  double phoretic_loss_per_day = 0.006;  // from memory: Fries et al. 1994, Martin 1998
  double capped_days = 12;
  double emerging_per_entering = 1.502;  // gives 0.021 a day, back in 76 days after an 80 % kill
};

double mite_growth_per_day(const MiteModel& m);  // r of r + i + u = R i exp(-r T); below 0 where they dwindle
double share_on_adults(const MiteModel& m, double growth_per_day);
// The whole population after some days of steady growth with immigration.
double mites_after(double start, double growth_per_day, double immigration_per_day, double days);

// Share of entering mites that drone brood takes where drone cells are this share of the cells about to be
// capped and each draws `preference` times as many as a worker cell.
double drone_share_of_entering(double drone_cell_share, double preference);

}  // namespace beegarth::colony
