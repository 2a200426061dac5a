#include "colony/winter_need.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace beegarth::colony {
namespace {

constexpr double seconds_per_hour = 3600, seconds_per_day = 86400;

}  // namespace

Expected<WinterTable> WinterTable::from(const FactTable& winter) {
  struct Row {
    const char* key;
    double WinterTable::*at;
  };
  static constexpr auto rows =
      std::to_array<Row>({{"oxygen_at_1g", &WinterTable::oxygen_at_1g},
                          {"oxygen_exponent", &WinterTable::oxygen_exponent},
                          {"heat_per_mL_J", &WinterTable::heat_per_mL_J},
                          {"honey_J_per_g", &WinterTable::honey_J_per_g},
                          {"chamber_C", &WinterTable::chamber_C},
                          {"core_C", &WinterTable::core_C},
                          {"core_brood_C", &WinterTable::core_brood_C},
                          {"bee_g", &WinterTable::bee_g},
                          {"idle_mg_per_bee", &WinterTable::idle_mg_per_bee},
                          {"per_bee_few_bees", &WinterTable::few_bees},
                          {"per_bee_few_mg", &WinterTable::few_mg},
                          {"per_bee_some_bees", &WinterTable::some_bees},
                          {"per_bee_some_mg", &WinterTable::some_mg},
                          {"per_bee_many_bees", &WinterTable::many_bees},
                          {"per_bee_many_mg", &WinterTable::many_mg},
                          {"month_low_kg", &WinterTable::month_low_kg},
                          {"month_high_kg", &WinterTable::month_high_kg},
                          {"larva_honey_g_per_day", &WinterTable::larva_honey_g_per_day}});
  WinterTable table;
  for (const Row& row : rows) {
    const auto value = winter.value(row.key);
    if (!value) return value.problem();
    table.*row.at = *value;
  }
  if (!(0 < table.few_bees && table.few_bees < table.some_bees && table.some_bees < table.many_bees))
    return bad_input("the three sizes do not grow",
                     winter.name() + ": per_bee_few_bees, _some_bees, _many_bees",
                     "give the smallest first, all above 0");
  return table;
}

double cluster_oxygen_mL_per_g_h(double mass_g, const WinterTable& table) {
  return table.oxygen_at_1g * std::pow(mass_g, table.oxygen_exponent);
}

double cluster_heat_W(double mass_g, const WinterTable& table) {
  return cluster_oxygen_mL_per_g_h(mass_g, table) * mass_g * table.heat_per_mL_J / seconds_per_hour;
}

double heat_in_hive_W(double mass_g, double air_C, double conductance_W_K, bool brood,
                      const WinterTable& table) {
  const double core = brood ? table.core_brood_C : table.core_C;
  if (air_C >= core) return 0;
  const double of_cluster = cluster_heat_W(mass_g, table) / (table.core_C - table.chamber_C);
  return (core - air_C) / (1 / of_cluster + 1 / conductance_W_K);
}

double honey_kg_per_30_days(double power_W, const WinterTable& table) {
  return power_W * 30 * seconds_per_day / table.honey_J_per_g / 1000;
}
double power_W_of_honey(double kg_per_30_days, const WinterTable& table) {
  return kg_per_30_days * 1000 * table.honey_J_per_g / (30 * seconds_per_day);
}

double per_bee_mg_per_day(double bees, const WinterTable& table) {
  const auto between = [bees](double less, double mg_less, double more, double mg_more) {
    return mg_less + std::log(bees / less) / std::log(more / less) * (mg_more - mg_less);
  };
  if (bees <= table.few_bees) return table.few_mg;
  if (bees <= table.some_bees) return between(table.few_bees, table.few_mg, table.some_bees, table.some_mg);
  if (bees <= table.many_bees) return between(table.some_bees, table.some_mg, table.many_bees, table.many_mg);
  return std::max(table.many_mg, table.idle_mg_per_bee);
}

WinterNeed winter_need(const WinterQuestion& question, const WinterTable& table) {
  WinterNeed need;
  const double mass_g = question.bees * table.bee_g;
  const double idle_kg = question.bees * table.idle_mg_per_bee * 1e-6;
  const double larvae_kg = question.brood_cells * (6.0 / 21) * table.larva_honey_g_per_day / 1000;
  for (const double air_C : question.mean_air_C) {
    const double warm =
        heat_in_hive_W(mass_g, air_C, question.conductance_W_K, question.brood_cells > 0, table);
    need.cluster_heat_kg += std::max(honey_kg_per_30_days(warm, table) / 30, idle_kg) + larvae_kg;
  }
  const auto days = static_cast<double>(question.mean_air_C.size());
  need.per_bee_kg = days * (question.bees * per_bee_mg_per_day(question.bees, table) * 1e-6 + larvae_kg);
  need.per_month_low_kg = days / 30 * table.month_low_kg;
  need.per_month_high_kg = days / 30 * table.month_high_kg;
  need.mid_kg = need.cluster_heat_kg;
  const auto [low, high] =
      std::minmax({need.cluster_heat_kg, need.per_bee_kg, need.per_month_low_kg, need.per_month_high_kg});
  need.low_kg = low;
  need.high_kg = high;
  return need;
}

}  // namespace beegarth::colony
