// What was seen, and how likely each member made it.
#pragma once

#include <algorithm>
#include <array>
#include <cstdint>
#include <optional>
#include <variant>
#include <vector>

#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "belief/rounding.hpp"
#include "entries/entry.hpp"
#include "facts/dwelling.hpp"

namespace beegarth::belief {

// A colony as it would show itself on the morning of a day, everything in the open.
struct Visible {
  bool alive = true;
  double bees = 0;  // adult workers
  double drones = 0;
  double eggs = 0;          // cells, of workers and drones: nobody tells them apart
  double larvae = 0;        // open brood, cells, likewise
  double capped_cells = 0;  // worker
  double brood_cells = 0;   // all worker and drone brood
  double drone_cells = 0;   // capped
  double stores_kg = 0;     // honey equivalent
  double pollen_kg = 0;
  double super_kg = 0;  // part of the stores above or beyond the nest
  bool laying_queen = true;
  bool drone_layer = false;  // a queen that lays drones only
  bool virgin_queen = false;
  double cups_with_egg = 0;
  double charged_cells = 0;
  double sealed_cells = 0;
  double mites = 0;  // all
  double mites_on_adults = 0;
  double infested_share = 0;  // of capped worker cells, 0..1
  double mites_fallen = 0;    // since the colony began
  facts::Dwelling dwelling;   // as it is on that day
};

// The ways of one keeper with one colony, learnt: 1 is unbiased.
struct ObserverTraits {
  double bees_factor = 1;
  double brood_factor = 1;
  double stores_factor = 1;
  double board_factor = 1;
  double recovery_roll = 0.9;
  double recovery_wash = 0.95;
  double tare_kg = 24;
};

struct ObservationErrors {
  double seams_error, bees_error, brood_combs_error, capped_cells_error, stores_error, super_share_error;
  double floor_seams, floor_cells, floor_stores;
  double board_size, sample_size, brood_correlation;
  double eggs_seen, eggs_half, brood_seen, brood_half, queen_seen, virgin_seen, cell_seen, idle_cup_seen,
      drones_seen, drones_half;
  double pollen_error, pollen_little_kg, pollen_some_kg, pollen_plenty_kg, pollen_in_brood,
      pollen_in_broodless;
  double calm_queenright, calm_queenless, laying_workers_said, laying_workers_mistaken;
  double quick_look, outside_look, false_sight, mistaken, wrong_look_trouble, wrong_look_sound;
  double winter_brood_infested, stores_short_kg, room_short_share, queenless_days, supers_full_free_kg,
      surplus_kg, winter_bees_least;
  double scale_error, harvest_error, live_bee_kg, brood_cell_kg, comb_kg;
  Rounding by_eye, counted;
};
Expected<ObservationErrors> read_errors(const FactTable& table);

// A member of the ObserverTraits as a row of the table: value, low and high are its prior.
struct ObserverRow {
  const char* key;
  double ObserverTraits::*field;
  enum class Scale { logarithm, logit, plain } scale;
  const char* words;  // as a keeper would say it
};
const std::vector<ObserverRow>& observer_rows();

// Traits from standard normal coordinates, one per row of observer_rows().
struct ObserverPrior {
  struct Row {
    double centre;  // on the scale of the row
    double sd;
  };
  std::vector<Row> rows;
};
Expected<ObserverPrior> read_observer_prior(const FactTable& table);
ObserverTraits observer_traits(const ObserverPrior& prior, const double* coordinates);

// Something seen on a day. The board is read over the days before it.
struct DeadOut {};  // found dead, or gone
struct LivedOn {};  // sold, given away or united: alive until then
struct SwarmSeen {};
struct Taken {  // a harvest: so much honey was there, if not more
  double kg = 0;
};
using Sight = std::variant<entries::Inspection, entries::MiteCount, entries::Weight, DeadOut, LivedOn,
                           SwarmSeen, Taken>;
struct Observation {
  Date date;
  std::size_t entry = 0;  // index in the history
  Sight sight;
};

// Whole days over which a board lay, at least one.
int board_days(const entries::MiteCount& count);

// log p(sight | what was there). `fallen` is the number of mites fallen over board_days, `ready_to_swarm`
// says whether there were queen cells, or a swarm had just left. Always finite: nothing a keeper writes is
// wholly impossible.
double log_likelihood(const Sight& sight, const Visible& there, double fallen, bool ready_to_swarm,
                      const ObserverTraits& observer, const ObservationErrors& errors);

// ---- what would be written down on average: judged by here, drawn from by writing.hpp ----

// Odds that a look finds each thing, before slips.
struct SightOdds {
  double eggs, open_brood, capped_brood, queen, cups_with_egg, charged_cells, sealed_cells, drones, calm;
};
SightOdds sight_odds(const Visible& there, entries::Look look, const ObservationErrors& errors);
// Odds of each Level of pollen, slips included: from within by what is stored; from outside whether any is
// carried in, which tells of brood; how much is then as good as not said.
std::array<double, 4> pollen_odds(const Visible& there, entries::Look look, const ObservationErrors& errors);
// The same with slips: found where there is none, or not written.
double odds_said(double odds, const ObservationErrors& errors);

// Slips (a share `mistaken` of all figures) scatter as widely as this.
namespace slips {
inline constexpr double estimate_sd = 1.5;  // of the logarithm
inline constexpr double count_more = 1.0, count_size = 0.4, least_count = 1e-3;
inline constexpr double weight_kg = 15;
inline constexpr double cells_correlation = 0.4;
inline double infested(double share) {
  return std::clamp(share, 0.05, 0.5);
}
}  // namespace slips
// Nothing is written finer than this.
namespace finest {
inline constexpr double bees = 1, cells = 1, stores_kg = 0.1;
}
inline constexpr double floor_brood_combs = 0.3;
inline constexpr double floor_super_share = 0.1;

double expected_super_share(const Visible& there);
double expected_on_board(const entries::MiteCount& count, double fallen, double board_factor);
double expected_on_bees(const entries::MiteCount& count, const Visible& there,
                        const ObserverTraits& observer);
double expected_infested(const Visible& there);
// Adult bees that would be written down as so many seams, and cells as so many combs.
double expected_seams(const Visible& there, double bees_factor);
double expected_brood_combs(const Visible& there, double brood_factor);
double whole_hive_kg(const Visible& there, double tare_kg, const ObservationErrors& errors);

}  // namespace beegarth::belief
