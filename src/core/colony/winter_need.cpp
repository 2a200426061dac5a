#include "colony/winter_need.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace beegarth::colony {
namespace {

constexpr double seconds_per_hour = 3600, seconds_per_day = 86400;

// Which end of a row's range; a row without one has its value everywhere.
enum class End { low, usual, high };

double at_end(const FactRow& row, End end) {
  if (end == End::low) return row.low.value_or(row.value);
  return end == End::high ? row.high.value_or(row.value) : row.value;
}

Expected<WinterTable> read_at(const FactTable& winter, End end) {
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
                          {"larva_honey_g_per_day", &WinterTable::larva_honey_g_per_day},
                          {"weighed_C", &WinterTable::weighed_C}});
  WinterTable table;
  for (const Row& row : rows) {
    const auto value = winter.value(row.key);
    if (!value) return value.problem();
    table.*row.at = at_end(*winter.find(row.key), end);
  }
  if (!(0 < table.few_bees && table.few_bees < table.some_bees && table.some_bees < table.many_bees))
    return bad_input("the three sizes do not grow",
                     winter.name() + ": per_bee_few_bees, _some_bees, _many_bees",
                     "give the smallest first, all above 0");
  return table;
}

struct Ways {
  double cluster_kg = 0;  // in the air that is asked about
  double in_mild_kg = 0;  // in that of the winters in which stores were weighed
  double per_bee_kg = 0;
};

Ways ways_by(const WinterQuestion& question, const WinterTable& table) {
  const double mass_g = question.bees * table.bee_g;
  const double idle_kg = question.bees * table.idle_mg_per_bee * 1e-6;
  const double larvae_kg = question.brood_cells * (6.0 / 21) * table.larva_honey_g_per_day / 1000;
  const auto of_a_day = [&](double air_C) {
    const double warm =
        heat_in_hive_W(mass_g, air_C, question.conductance_W_K, question.brood_cells > 0, table);
    return std::max(honey_kg_per_30_days(warm, table) / 30, idle_kg) + larvae_kg;
  };
  const auto days = static_cast<double>(question.mean_air_C.size());
  Ways ways;
  for (const double air_C : question.mean_air_C) ways.cluster_kg += of_a_day(air_C);
  ways.in_mild_kg = days * of_a_day(table.weighed_C);
  ways.per_bee_kg = days * (question.bees * per_bee_mg_per_day(question.bees, table) * 1e-6 + larvae_kg);
  return ways;
}

}  // namespace

Expected<WinterTable> WinterTable::from(const FactTable& winter) {
  return read_at(winter, End::usual);
}

Expected<WinterTables> WinterTables::from(const FactTable& winter) {
  const auto least = read_at(winter, End::low), usual = read_at(winter, End::usual),
             most = read_at(winter, End::high);
  if (!least) return least.problem();
  if (!usual) return usual.problem();
  if (!most) return most.problem();
  return WinterTables{*least, *usual, *most};
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

WinterNeed winter_need(const WinterQuestion& question, const WinterTables& tables) {
  const Ways least = ways_by(question, tables.least), usual = ways_by(question, tables.usual),
             most = ways_by(question, tables.most);
  const auto days = static_cast<double>(question.mean_air_C.size());
  WinterNeed need;
  need.cluster_heat_kg = (least.cluster_kg + usual.cluster_kg + most.cluster_kg) / 3;
  need.per_bee_kg = usual.per_bee_kg;
  need.per_month_low_kg = days / 30 * tables.usual.month_low_kg;
  need.per_month_high_kg = days / 30 * tables.usual.month_high_kg;
  const double in_mild_kg = (least.in_mild_kg + usual.in_mild_kg + most.in_mild_kg) / 3;
  const double colder_kg = std::max(0.0, need.cluster_heat_kg - in_mild_kg);
  const double month_kg = (need.per_month_low_kg + need.per_month_high_kg) / 2;
  need.mid_kg = (need.cluster_heat_kg + need.per_bee_kg + month_kg + 2 * colder_kg) / 3;
  // A cooler core asks for less or more, as the air is: every one of the three may be the least.
  need.low_kg = std::min({least.cluster_kg, usual.cluster_kg, most.cluster_kg, least.per_bee_kg + colder_kg,
                          need.per_month_low_kg + colder_kg});
  need.high_kg = std::max({least.cluster_kg, usual.cluster_kg, most.cluster_kg, most.per_bee_kg + colder_kg,
                           need.per_month_high_kg + colder_kg});
  return need;
}

}  // namespace beegarth::colony
