#include "colony/winter_need.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace beegarth::colony {
namespace {

constexpr double seconds_per_hour = 3600, seconds_per_day = 86400;
// Harbo 1983: bees at the start, and mg of stores lost per bee and day.
struct Measured {
  double bees, mg;
};
constexpr std::array<Measured, 3> harbo{{{4400, 6.7}, {8900, 4.5}, {34000, 4.2}}};

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
                          {"month_low_kg", &WinterTable::month_low_kg},
                          {"month_high_kg", &WinterTable::month_high_kg},
                          {"larva_honey_g_per_day", &WinterTable::larva_honey_g_per_day}});
  WinterTable table;
  for (const Row& row : rows) {
    const auto value = winter.value(row.key);
    if (!value) return value.problem();
    table.*row.at = *value;
  }
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
  if (bees <= harbo.front().bees) return harbo.front().mg;
  for (std::size_t i = 1; i < harbo.size(); ++i) {
    if (bees > harbo[i].bees) continue;
    const double at = std::log(bees / harbo[i - 1].bees) / std::log(harbo[i].bees / harbo[i - 1].bees);
    return harbo[i - 1].mg + at * (harbo[i].mg - harbo[i - 1].mg);
  }
  return std::max(harbo.back().mg, table.idle_mg_per_bee);
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
