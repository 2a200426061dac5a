// The rows of tables/observation.toml that observations are judged by, checked.
#include <array>
#include <cmath>
#include <string>
#include <utility>

#include "belief/densities.hpp"
#include "belief/observation.hpp"

namespace beegarth::belief {
namespace {

double logit(double p) {
  return std::log(p / (1 - p));
}
double share_of(double x) {
  return 1 / (1 + std::exp(-x));
}

}  // namespace

Expected<ObservationErrors> read_errors(const FactTable& table) {
  ObservationErrors e{};
  struct Field {
    const char* key;
    double ObservationErrors::*at;
  };
  static constexpr auto rows = std::to_array<Field>({
      {"seams_error", &ObservationErrors::seams_error},
      {"bees_error", &ObservationErrors::bees_error},
      {"brood_combs_error", &ObservationErrors::brood_combs_error},
      {"capped_cells_error", &ObservationErrors::capped_cells_error},
      {"stores_error", &ObservationErrors::stores_error},
      {"super_share_error", &ObservationErrors::super_share_error},
      {"estimate_floor_seams", &ObservationErrors::floor_seams},
      {"estimate_floor_cells", &ObservationErrors::floor_cells},
      {"estimate_floor_stores", &ObservationErrors::floor_stores},
      {"board_size", &ObservationErrors::board_size},
      {"sample_size", &ObservationErrors::sample_size},
      {"brood_sample_correlation", &ObservationErrors::brood_correlation},
      {"eggs_seen", &ObservationErrors::eggs_seen},
      {"eggs_half", &ObservationErrors::eggs_half},
      {"brood_seen", &ObservationErrors::brood_seen},
      {"brood_half", &ObservationErrors::brood_half},
      {"queen_seen", &ObservationErrors::queen_seen},
      {"virgin_seen", &ObservationErrors::virgin_seen},
      {"cell_seen", &ObservationErrors::cell_seen},
      {"idle_cup_seen", &ObservationErrors::idle_cup_seen},
      {"drones_seen", &ObservationErrors::drones_seen},
      {"drones_half", &ObservationErrors::drones_half},
      {"pollen_error", &ObservationErrors::pollen_error},
      {"pollen_little_kg", &ObservationErrors::pollen_little_kg},
      {"pollen_some_kg", &ObservationErrors::pollen_some_kg},
      {"pollen_plenty_kg", &ObservationErrors::pollen_plenty_kg},
      {"pollen_in_brood", &ObservationErrors::pollen_in_brood},
      {"pollen_in_broodless", &ObservationErrors::pollen_in_broodless},
      {"calm_queenright", &ObservationErrors::calm_queenright},
      {"calm_queenless", &ObservationErrors::calm_queenless},
      {"laying_workers_said", &ObservationErrors::laying_workers_said},
      {"laying_workers_mistaken", &ObservationErrors::laying_workers_mistaken},
      {"quick_look", &ObservationErrors::quick_look},
      {"outside_look", &ObservationErrors::outside_look},
      {"false_sight", &ObservationErrors::false_sight},
      {"mistaken_entry", &ObservationErrors::mistaken},
      {"wrong_look_trouble", &ObservationErrors::wrong_look_trouble},
      {"wrong_look_sound", &ObservationErrors::wrong_look_sound},
      {"winter_brood_infested", &ObservationErrors::winter_brood_infested},
      {"stores_short_kg", &ObservationErrors::stores_short_kg},
      {"supers_full_free_kg", &ObservationErrors::supers_full_free_kg},
      {"surplus_kg", &ObservationErrors::surplus_kg},
      {"winter_bees_least", &ObservationErrors::winter_bees_least},
      {"room_short_share", &ObservationErrors::room_short_share},
      {"queenless_days", &ObservationErrors::queenless_days},
      {"scale_error", &ObservationErrors::scale_error},
      {"harvest_error", &ObservationErrors::harvest_error},
      {"live_bee_kg", &ObservationErrors::live_bee_kg},
      {"brood_cell_kg", &ObservationErrors::brood_cell_kg},
      {"comb_kg", &ObservationErrors::comb_kg},
  });
  for (const Field& row : rows) {
    const auto value = table.value(row.key);
    if (!value) return value.problem();
    if (*value <= 0) return bad_input("must be above zero", table.name() + ": " + row.key, "correct the row");
    e.*row.at = *value;
  }
  if (e.pollen_little_kg >= e.pollen_some_kg || e.pollen_some_kg >= e.pollen_plenty_kg) {
    return bad_input("must rise from little to some to plenty", table.name() + ": pollen_..._kg",
                     "correct the rows");
  }
  for (const auto& [key, share] : {std::pair("rounded_two_figures", &e.by_eye.two_figures),
                                   {"rounded_to_half", &e.by_eye.half},
                                   {"rounded_one_figure", &e.by_eye.one_figure}}) {
    const auto value = table.value(key);
    if (!value) return value.problem();
    *share = *value;
  }
  const auto counts = table.value("counts_rounded");
  if (!counts) return counts.problem();
  const double rounded_by_eye = e.by_eye.two_figures + e.by_eye.half + e.by_eye.one_figure;
  if (e.by_eye.two_figures < 0 || e.by_eye.half < 0 || e.by_eye.one_figure < 0 || rounded_by_eye <= 0 ||
      rounded_by_eye >= 1 || *counts < 0 || *counts >= 1) {
    return bad_input("shares of rounded figures must lie between 0 and 1 together",
                     table.name() + ": rounded_..., counts_rounded", "correct the rows");
  }
  // Counts are rounded more seldom, in the same ways.
  const double part = *counts / rounded_by_eye;
  e.counted = {part * e.by_eye.two_figures, part * e.by_eye.half, part * e.by_eye.one_figure};
  for (const double share : {e.eggs_seen,
                             e.brood_seen,
                             e.queen_seen,
                             e.virgin_seen,
                             e.cell_seen,
                             e.idle_cup_seen,
                             e.drones_seen,
                             e.pollen_in_brood,
                             e.pollen_in_broodless,
                             e.calm_queenright,
                             e.calm_queenless,
                             e.laying_workers_said,
                             e.laying_workers_mistaken,
                             e.quick_look,
                             e.outside_look,
                             e.false_sight,
                             e.mistaken,
                             e.wrong_look_trouble,
                             e.wrong_look_sound,
                             e.winter_brood_infested,
                             e.brood_correlation}) {
    if (share >= 1)
      return bad_input("odds and shares must lie between 0 and 1", table.name(), "correct the row");
  }
  return e;
}

const std::vector<ObserverRow>& observer_rows() {
  using Scale = ObserverRow::Scale;
  static const std::vector<ObserverRow> rows{
      {"bees_factor", &ObserverTraits::bees_factor, Scale::logarithm,
       "how many bees this keeper sees of those there are"},
      {"brood_factor", &ObserverTraits::brood_factor, Scale::logarithm,
       "how much brood this keeper sees of what there is"},
      {"stores_factor", &ObserverTraits::stores_factor, Scale::logarithm,
       "how much of the stores this keeper sees"},
      {"board_factor", &ObserverTraits::board_factor, Scale::logarithm,
       "how many of the fallen mites are found on the board"},
      {"roll_recovery", &ObserverTraits::recovery_roll, Scale::logit,
       "how many mites a sugar roll brings off"},
      {"wash_recovery", &ObserverTraits::recovery_wash, Scale::logit, "how many mites a wash brings off"},
      {"tare_kg", &ObserverTraits::tare_kg, Scale::plain, "weight of the empty hive"},
  };
  return rows;
}

Expected<ObserverPrior> read_observer_prior(const FactTable& table) {
  ObserverPrior prior;
  for (const ObserverRow& row : observer_rows()) {
    const FactRow* found_row = table.find(row.key);
    const std::string where = table.name() + ": " + row.key;
    if (found_row == nullptr) return bad_input("a row is missing", where, "add it");
    if (!found_row->low || !found_row->high) return bad_input("needs low and high", where, "add them");
    double low = *found_row->low;
    double high = *found_row->high;
    double value = found_row->value;
    const bool share = row.scale == ObserverRow::Scale::logit;
    if (low <= 0 || (share && high >= 1)) return bad_input("out of range", where, "correct the row");
    if (row.scale != ObserverRow::Scale::plain) {
      const auto onto = [share](double x) { return share ? logit(x) : std::log(x); };
      low = onto(low);
      high = onto(high);
      value = onto(value);
    }
    prior.rows.push_back({value, (high - low) / (2 * ninety_percent_half_width)});
  }
  return prior;
}

ObserverTraits observer_traits(const ObserverPrior& prior, const double* coordinates) {
  ObserverTraits traits;
  const auto& rows = observer_rows();
  for (std::size_t i = 0; i < rows.size(); ++i) {
    const double x = prior.rows[i].centre + prior.rows[i].sd * coordinates[i];
    const auto scale = rows[i].scale;
    traits.*rows[i].field = scale == ObserverRow::Scale::logarithm ? std::exp(x)
                            : scale == ObserverRow::Scale::logit   ? share_of(x)
                                                                   : x;
  }
  return traits;
}

}  // namespace beegarth::belief
