// Honey that a colony uses over a cold time, by three published ways that do not agree; none is hidden.
//
//   cluster_heat  a cluster of mass M (g) uses v = 22.69 M^-0.479 mL of oxygen per g and h at 2 C (Southwick
//   1985,
//                 J Comp Physiol B 156:143; the units are a reading). That much heat flows from its core to
//                 the air; the hive's own resistance to heat lies behind the cluster's, so a hive of lower
//                 conductance costs less. Never less than bees need that do nothing.
//                 A mean over the least, the usual and the most of its figures: how little idle bees use is
//                 not known well, and below that it is not the air that counts.
//   per_bee       loss of stores per bee and day where winters are mild, by size (Harbo 1983).
//   per_month     1 to 1.5 kg a month, weighed hives.
//
// The last two were weighed in mild winters. In colder air the need is theirs and what cluster_heat has more
// than in the air of those winters; so all three go into low, mid and high, and all follow the air.
#pragma once

#include <span>
#include <string_view>

#include "base/expected.hpp"
#include "base/fact_table.hpp"

namespace beegarth::colony {

struct WinterTable {                             // rows of tables/winter.toml
  double oxygen_at_1g = 0, oxygen_exponent = 0;  // v = a M^b, mL/g/h
  double heat_per_mL_J = 0, honey_J_per_g = 0;
  double chamber_C = 0;  // air in which the law was measured
  double core_C = 0, core_brood_C = 0;
  double bee_g = 0;
  double idle_mg_per_bee = 0;  // honey a day, of bees that need not warm
  double few_bees = 0, few_mg = 0, some_bees = 0, some_mg = 0, many_bees = 0,
         many_mg = 0;  // stores lost per bee and day
  double month_low_kg = 0, month_high_kg = 0;
  double larva_honey_g_per_day = 0;
  double weighed_C = 0;  // air of the winters in which stores were weighed
  static Expected<WinterTable> from(const FactTable& winter);
};
struct WinterTables {  // of every row the low end of its range, its value and the high end
  WinterTable least, usual, most;
  static Expected<WinterTables> from(const FactTable& winter);
};

double cluster_oxygen_mL_per_g_h(double mass_g, const WinterTable& table);
double cluster_heat_W(double mass_g, const WinterTable& table);  // at chamber_C, in no hive
// Heat in a hive of that conductance (W/K, above 0) at an air temperature. 0 where the air is as warm as the
// core.
double heat_in_hive_W(double mass_g, double air_C, double conductance_W_K, bool brood,
                      const WinterTable& table);
double honey_kg_per_30_days(double power_W, const WinterTable& table);
double power_W_of_honey(double kg_per_30_days, const WinterTable& table);
double per_bee_mg_per_day(double bees,
                          const WinterTable& table);  // by size; constant beyond the sizes measured

struct WinterQuestion {
  double bees = 10000;
  std::span<const double> mean_air_C;  // of each day
  double conductance_W_K = 1.2;
  double brood_cells = 0;  // held throughout, all ages
};
struct WinterNeed {
  double cluster_heat_kg = 0, per_bee_kg = 0;
  double per_month_low_kg = 0, per_month_high_kg = 0;  // as weighed, without what colder air adds
  double low_kg = 0, mid_kg = 0, high_kg = 0;          // the least, the mean of the three ways, the most
};
WinterNeed winter_need(const WinterQuestion& question, const WinterTables& tables);

}  // namespace beegarth::colony
