#include "belief/observation.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "belief/densities.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// ---- pieces ----

double look_reach(entries::Look look, const ObservationErrors& e) {
  switch (look) {
    case entries::Look::full:
      return 1.0;
    case entries::Look::quick:
      return e.quick_look;
    case entries::Look::outside:
      return e.outside_look;
  }
  return 1.0;
}

// Odds of finding something of which there are `amount`, half of `at_best` at `half`.
double found(double amount, double half, double at_best) {
  return amount <= 0 ? 0.0 : at_best * amount / (amount + half);
}

double log_flag(bool seen, double odds, const ObservationErrors& e) {
  const double p = odds_said(odds, e);
  return std::log(seen ? p : 1 - p);
}

// Of so many queen cells at least one is found, each by itself.
double any_found(double there, double each) {
  return there < 0.5 ? 0.0 : 1 - std::pow(1 - each, there);
}

// Queen cells: each is found by itself; a said 0 counts only as far as the look reaches. One cup is easily
// taken for a charged cell, several at once are not: the odds of a false sight are shared out over the cells.
double log_cells(int seen, double odds, const ObservationErrors& e) {
  if (seen <= 1) return log_flag(seen > 0, odds, e);
  const double mistaken = e.false_sight / seen;
  return std::log(mistaken + (1 - e.false_sight - mistaken) * odds);
}

// A figure by eye, with a wide second component for slips.
double log_estimate(double seen, double expected, double sd, double floor, double fine,
                    const ObservationErrors& e) {
  return log_mix(log_rounded_lognormal(seen, expected, sd, floor, fine, e.by_eye),
                 log_rounded_lognormal(seen, expected, slips::estimate_sd, floor, fine, e.by_eye),
                 e.mistaken);
}
// How full something is, from none to all.
double log_share(double seen, double expected, double sd, double floor, const ObservationErrors& e) {
  return log_mix(log_offset_lognormal(seen, expected, sd, floor, 1.0),
                 log_offset_lognormal(seen, expected, slips::estimate_sd, floor, 1.0), e.mistaken);
}

double log_combs(double seen, double expected, double sd, double floor, const ObservationErrors& e) {
  const bool whole = std::abs(seen - std::round(seen)) < 1e-9;
  const double half_grain = whole ? 0.5 : 0.25;
  return log_mix(log_grained_lognormal(seen, expected, sd, floor, half_grain),
                 log_grained_lognormal(seen, expected, slips::estimate_sd, floor, half_grain), e.mistaken);
}

double log_count(const entries::MiteCount& seen, double mean, double size, const ObservationErrors& e) {
  const bool or_more = seen.at_least.value_or(false);
  const auto log = [&](double m, double k) {
    return or_more ? log_count_at_least(seen.mites, m, k) : log_rounded_count(seen.mites, m, k, e.counted);
  };
  return log_mix(log(mean + slips::least_count, size), log(mean + slips::count_more, slips::count_size),
                 e.mistaken);
}

// Of opened cells so many, or at least so many, were infested.
double log_infested(const entries::MiteCount& seen, int cells, double share, double correlation) {
  if (!seen.at_least.value_or(false)) return log_beta_binomial(seen.mites, cells, share, correlation);
  std::vector<double> logs;
  for (int n = seen.mites; n <= cells; ++n) logs.push_back(log_beta_binomial(n, cells, share, correlation));
  return log_sum_exp(logs);
}

bool in_trouble(const Visible& there) {
  return (!there.laying_queen && !there.virgin_queen) || there.bees < 4000 || there.stores_kg < 2;
}

// ---- kinds ----

// Who lifts no comb sees none of what hangs below, and a 0 then stands for that; from outside nothing is
// counted at all but what flies.
entries::Inspection as_far_as_looked(entries::Inspection seen) {
  if (seen.look == entries::Look::full) return seen;
  const bool outside = seen.look == entries::Look::outside;
  for (entries::Number* figure : {&seen.brood_combs, &seen.capped_cells, &seen.drone_cells})
    if (outside || (*figure && **figure == 0)) figure->reset();
  if (!outside) return seen;
  for (entries::Number* figure :
       {&seen.seams, &seen.bees, &seen.store_combs, &seen.stores_kg, &seen.super_share})
    figure->reset();
  return seen;
}

double log_strength(const entries::Inspection& whole, const Visible& there, const ObserverTraits& o,
                    const ObservationErrors& e) {
  const entries::Inspection seen = as_far_as_looked(whole);
  double sum = 0;
  if (seen.seams) {
    sum += log_combs(*seen.seams, expected_seams(there, o.bees_factor), e.seams_error, e.floor_seams, e);
  }
  if (seen.bees) {
    sum += log_estimate(*seen.bees, there.bees * o.bees_factor, e.bees_error,
                        e.floor_seams * there.dwelling.bees_per_seam, finest::bees, e);
  }
  if (seen.brood_combs) {
    sum += log_combs(*seen.brood_combs, expected_brood_combs(there, o.brood_factor), e.brood_combs_error,
                     floor_brood_combs, e);
  }
  if (seen.capped_cells) {
    sum += log_estimate(*seen.capped_cells, there.capped_cells * o.brood_factor, e.capped_cells_error,
                        e.floor_cells, finest::cells, e);
  }
  if (seen.drone_cells) {
    sum += log_estimate(*seen.drone_cells, there.drone_cells * o.brood_factor, e.capped_cells_error,
                        e.floor_cells, finest::cells, e);
  }
  if (seen.pollen) {
    sum += std::log(pollen_odds(there, seen.look, e)[static_cast<std::size_t>(*seen.pollen)]);
  }
  if (seen.stores_kg) {
    sum += log_estimate(*seen.stores_kg, there.stores_kg * o.stores_factor, e.stores_error, e.floor_stores,
                        finest::stores_kg, e);
  }
  if (seen.store_combs) {
    const double kg_per_comb = std::max(0.1, there.dwelling.honey_kg_per_comb);
    // With supers on, combs of stores are counted in the nest; the supers are told by how full they are.
    const double nest_kg =
        std::max(0.0, there.stores_kg - (there.dwelling.super_combs > 0 ? there.super_kg : 0.0));
    sum += log_combs(*seen.store_combs, nest_kg * o.stores_factor / kg_per_comb, e.stores_error,
                     e.floor_stores / kg_per_comb, e);
  }
  if (seen.super_share && there.dwelling.super_combs > 0) {
    sum +=
        log_share(*seen.super_share, expected_super_share(there), e.super_share_error, floor_super_share, e);
  }
  return sum;
}

double log_flags(const entries::Inspection& seen, const Visible& there, const ObservationErrors& e) {
  const SightOdds odds = sight_odds(there, seen.look, e);
  double sum = 0;
  // Where workers lay, eggs and brood are theirs and tell of no queen.
  const bool workers_lay =
      std::find(seen.signs.begin(), seen.signs.end(), "laying_workers") != seen.signs.end();
  if (seen.eggs && !workers_lay) sum += log_flag(*seen.eggs, odds.eggs, e);
  if (seen.open_brood && !workers_lay) sum += log_flag(*seen.open_brood, odds.open_brood, e);
  if (seen.capped_brood && !workers_lay) sum += log_flag(*seen.capped_brood, odds.capped_brood, e);
  if (seen.queen) sum += log_flag(*seen.queen, odds.queen, e);
  if (seen.cups_with_egg) sum += log_flag(*seen.cups_with_egg > 0, odds.cups_with_egg, e);
  if (seen.charged_cells) sum += log_cells(*seen.charged_cells, odds.charged_cells, e);
  if (seen.sealed_cells) sum += log_cells(*seen.sealed_cells, odds.sealed_cells, e);
  if (seen.drones) sum += log_flag(*seen.drones, odds.drones, e);
  if (seen.calm) sum += log_flag(*seen.calm, odds.calm, e);
  if (workers_lay)
    sum += std::log(there.laying_queen || there.virgin_queen ? e.laying_workers_mistaken
                                                             : e.laying_workers_said);
  if (seen.looked_because_wrong.value_or(false)) {
    sum += std::log(in_trouble(there) ? e.wrong_look_trouble : e.wrong_look_sound);
  }
  return sum;
}

// A dead colony shows nothing alive. That must weigh more than a look whose every figure is a slip, and than
// a count beyond all reason: a keeper who sees bees is not met by believing them dead.
constexpr double log_dead_yet_seen = -60.0;

struct Judge {
  const Visible& there;
  double fallen;
  bool ready_to_swarm;
  const ObserverTraits& o;
  const ObservationErrors& e;

  double operator()(const entries::Inspection& seen) const {
    if (!there.alive) {
      const bool empty = seen.seams.value_or(0) == 0 && seen.bees.value_or(0) == 0 &&
                         !seen.eggs.value_or(false) && !seen.queen.value_or(false) &&
                         seen.brood_combs.value_or(0) == 0;
      // Said nothing of bees at all: a living colony is what one writes such notes about.
      return empty && (seen.seams || seen.bees) ? 0.0 : log_dead_yet_seen;
    }
    return log_strength(seen, there, o, e) + log_flags(seen, there, e);
  }

  double operator()(const entries::MiteCount& seen) const {
    if (!there.alive) return log_dead_yet_seen;
    switch (seen.method) {
      case entries::MiteMethod::board:
        return log_count(seen, expected_on_board(seen, fallen, o.board_factor), e.board_size, e);
      case entries::MiteMethod::sugar_roll:
      case entries::MiteMethod::wash:
        return log_count(seen, expected_on_bees(seen, there, o), e.sample_size, e);
      case entries::MiteMethod::brood: {
        const int cells = std::max(seen.cells.value_or(100), seen.mites);
        const double p = expected_infested(there);
        return log_mix(log_infested(seen, cells, p, e.brood_correlation),
                       log_infested(seen, cells, slips::infested(p), slips::cells_correlation), e.mistaken);
      }
    }
    return 0;
  }

  double operator()(const entries::Weight& seen) const {
    if (seen.what == entries::Weighed::stores) {
      return log_estimate(seen.kg, there.stores_kg * o.stores_factor, e.stores_error, e.floor_stores,
                          finest::stores_kg, e);
    }
    const double expected = whole_hive_kg(there, o.tare_kg, e);
    return log_mix(log_normal_density(seen.kg, expected, e.scale_error),
                   log_normal_density(seen.kg, expected, slips::weight_kg), e.mistaken);
  }

  double operator()(const DeadOut&) const {
    if (!there.alive) return 0.0;
    // Dwindled to a handful is as good as dead; a strong colony that is dead the next day is a rare disaster.
    return -std::min(12.0, 1.0 + there.bees / 1500);
  }
  double operator()(const LivedOn&) const { return there.alive ? 0.0 : log_dead_yet_seen; }
  // Nobody takes what is not there, and what is by the brood is left; how much was left is not told by it.
  double operator()(const Taken& crop) const {
    if (!there.alive) return log_dead_yet_seen;
    const double to_take = there.dwelling.super_combs > 0 ? there.super_kg : there.stores_kg;
    const double there_kg = std::max(to_take, finest::stores_kg);
    const double enough = normal_cdf(std::log(there_kg / crop.kg) / e.harvest_error);
    return std::log(e.mistaken + (1 - e.mistaken) * enough);
  }
  double operator()(const SwarmSeen&) const { return std::log(ready_to_swarm ? 0.2 : 0.004); }
};

}  // namespace

int board_days(const entries::MiteCount& count) {
  return std::max(1, static_cast<int>(std::ceil(count.days.value_or(1.0) - 1e-9)));
}

double expected_seams(const Visible& there, double bees_factor) {
  return there.bees * bees_factor / std::max(1.0, there.dwelling.bees_per_seam);
}

double expected_brood_combs(const Visible& there, double brood_factor) {
  if (there.brood_cells < 1) return 0;
  // A comb with brood is under half full on average, and the outermost ones hold a palm.
  const double combs =
      0.7 + there.brood_cells * brood_factor / (0.5 * std::max(1.0, there.dwelling.worker_cells_per_comb));
  return std::min(combs, std::max(1.0, static_cast<double>(there.dwelling.brood_combs)));
}

double expected_super_share(const Visible& there) {
  const double room = there.dwelling.super_combs * std::max(0.1, there.dwelling.honey_kg_per_comb);
  return room > 0 ? std::min(1.0, there.super_kg / room) : 0.0;
}

double expected_on_board(const entries::MiteCount& count, double fallen, double board_factor) {
  return fallen * count.days.value_or(1.0) / board_days(count) * count.board_share.value_or(1.0) *
         board_factor;
}

double expected_on_bees(const entries::MiteCount& count, const Visible& there, const ObserverTraits& o) {
  const double recovery = count.method == entries::MiteMethod::wash ? o.recovery_wash : o.recovery_roll;
  return count.bees.value_or(300) * there.mites_on_adults / std::max(1.0, there.bees) * recovery;
}

double expected_infested(const Visible& there) {
  return std::clamp(there.infested_share, 1e-4, 0.98);
}

double odds_said(double odds, const ObservationErrors& e) {
  return e.false_sight + (1 - 2 * e.false_sight) * std::clamp(odds, 0.0, 1.0);
}

SightOdds sight_odds(const Visible& there, entries::Look look, const ObservationErrors& e) {
  const double reach = look_reach(look, e);
  // A queen lays in cups that come to nothing, too: an egg in a cup says little, none says a little more.
  const double idle = there.laying_queen ? e.idle_cup_seen * reach : 0.0;
  const double meant = any_found(there.cups_with_egg, e.cell_seen * reach);
  const double queen = there.laying_queen || there.drone_layer ? e.queen_seen
                       : there.virgin_queen                    ? e.virgin_seen
                                                               : 0.0;
  return {.eggs = reach * found(there.eggs, e.eggs_half, e.eggs_seen),
          .open_brood = reach * found(there.eggs + there.larvae, e.brood_half, e.brood_seen),
          .capped_brood = reach * found(there.capped_cells + there.drone_cells, e.brood_half, e.brood_seen),
          .queen = reach * queen,
          .cups_with_egg = 1 - (1 - idle) * (1 - meant),
          .charged_cells = any_found(there.charged_cells, e.cell_seen * reach),
          .sealed_cells = any_found(there.sealed_cells, e.cell_seen * reach),
          // Drones fly, so that a look from outside sees them as well.
          .drones = std::max(reach, 0.3) * found(there.drones, e.drones_half, e.drones_seen),
          .calm = there.laying_queen || there.drone_layer || there.virgin_queen ? e.calm_queenright
                                                                                : e.calm_queenless};
}

std::array<double, 4> pollen_odds(const Visible& there, entries::Look look, const ObservationErrors& e) {
  std::array<double, 4> odds{};
  if (look == entries::Look::outside) {
    // Pollen is carried in where there are larvae to feed.
    const double in = there.brood_cells > 0 ? e.pollen_in_brood : e.pollen_in_broodless;
    odds = {1 - in, in / 3, in / 3, in / 3};
  } else {
    // The impression of what is stored scatters as that of other stores does, and is sorted into four.
    constexpr double least_kg = 0.01;
    const double middle = std::log(std::max(there.pollen_kg, least_kg));
    double below = 0;
    const std::array<double, 3> from{e.pollen_little_kg, e.pollen_some_kg, e.pollen_plenty_kg};
    for (std::size_t level = 0; level < from.size(); ++level) {
      const double up_to = normal_cdf((std::log(from[level]) - middle) / e.pollen_error);
      odds[level] = up_to - below;
      below = up_to;
    }
    odds[3] = 1 - below;
  }
  for (double& one : odds) one = (1 - e.mistaken) * one + e.mistaken / static_cast<double>(odds.size());
  return odds;
}

double whole_hive_kg(const Visible& there, double tare_kg, const ObservationErrors& e) {
  const int combs = there.dwelling.brood_combs + there.dwelling.super_combs;
  // The tare row is for one brood body of eleven combs; further combs bring wood and wax.
  return tare_kg + (combs - 11) * e.comb_kg + there.stores_kg + there.pollen_kg + there.bees * e.live_bee_kg +
         there.brood_cells * e.brood_cell_kg;
}

double log_likelihood(const Sight& sight, const Visible& there, double fallen, bool ready_to_swarm,
                      const ObserverTraits& observer, const ObservationErrors& errors) {
  const double log = std::visit(Judge{there, fallen, ready_to_swarm, observer, errors}, sight);
  // Never wholly impossible: a member so far off is as good as gone at e^-60.
  return std::isfinite(log) ? std::max(log, -60.0) : -60.0;
}

}  // namespace beegarth::belief
