#include "belief/writing.hpp"

#include <cmath>

namespace beegarth::belief {
namespace {

double in_grains(double amount, double grain) {
  return std::max(0.0, std::round(amount / grain) * grain);
}

int negative_binomial(double mean, double size, Stream& luck) {
  return luck.poisson(mean * luck.gamma(size) / size);
}

int beta_binomial(int cells, double share, double correlation, Stream& luck) {
  const double strength = 1 / correlation - 1;
  return luck.binomial(cells, luck.beta(share * strength, (1 - share) * strength));
}

}  // namespace

bool Writer::mistaken() {
  return luck_.uniform() < errors_.mistaken;
}

// May lie below none.
double Writer::impression(double expected, double sd, double floor) {
  const double spread = mistaken() ? slips::estimate_sd : sd;
  return (std::max(0.0, expected) + floor) * std::exp(spread * luck_.normal()) - floor;
}

// None where the impression lies below.
double Writer::by_eye(double impression, double fine) {
  return rounded(impression, fine, errors_.by_eye, luck_.uniform());
}

double Writer::seams(double grain) {
  return in_grains(
      impression(expected_seams(there_, ways_.bees_factor), errors_.seams_error, errors_.floor_seams), grain);
}

double Writer::bees() {
  return by_eye(impression(there_.bees * ways_.bees_factor, errors_.bees_error,
                           errors_.floor_seams * there_.dwelling.bees_per_seam),
                finest::bees);
}

double Writer::brood_combs(double grain) {
  return in_grains(impression(expected_brood_combs(there_, ways_.brood_factor), errors_.brood_combs_error,
                              floor_brood_combs),
                   grain);
}

double Writer::capped_cells() {
  return by_eye(
      impression(there_.capped_cells * ways_.brood_factor, errors_.capped_cells_error, errors_.floor_cells),
      finest::cells);
}

double Writer::drone_cells() {
  return by_eye(
      impression(there_.drone_cells * ways_.brood_factor, errors_.capped_cells_error, errors_.floor_cells),
      finest::cells);
}

entries::Level Writer::pollen(entries::Look look) {
  const auto odds = pollen_odds(there_, look, errors_);
  double left = luck_.uniform();
  std::size_t level = 0;
  while (level + 1 < odds.size() && left >= odds[level]) left -= odds[level++];
  return static_cast<entries::Level>(level);
}

double Writer::stores_kg() {
  return by_eye(
      impression(there_.stores_kg * ways_.stores_factor, errors_.stores_error, errors_.floor_stores),
      finest::stores_kg);
}

double Writer::super_share() {
  return std::clamp(impression(expected_super_share(there_), errors_.super_share_error, floor_super_share),
                    0.0, 1.0);
}

bool Writer::says(double SightOdds::*seen, entries::Look look) {
  return luck_.uniform() < odds_said(sight_odds(there_, look, errors_).*seen, errors_);
}

int Writer::mites(const entries::MiteCount& count, double fallen) {
  const bool slip = mistaken();
  if (count.method == entries::MiteMethod::brood) {
    const double share = expected_infested(there_);
    const int cells = count.cells.value_or(100);
    return slip ? beta_binomial(cells, slips::infested(share), slips::cells_correlation, luck_)
                : beta_binomial(cells, share, errors_.brood_correlation, luck_);
  }
  const bool board = count.method == entries::MiteMethod::board;
  const double mean =
      board ? expected_on_board(count, fallen, ways_.board_factor) : expected_on_bees(count, there_, ways_);
  const int counted = slip ? negative_binomial(mean + slips::count_more, slips::count_size, luck_)
                           : negative_binomial(mean + slips::least_count,
                                               board ? errors_.board_size : errors_.sample_size, luck_);
  return static_cast<int>(std::lround(rounded(counted, 1, errors_.counted, luck_.uniform())));
}

double Writer::weighed(double whole_kg) {
  const double error = mistaken() ? slips::weight_kg : errors_.scale_error;
  return whole_kg + error * luck_.normal();
}

}  // namespace beegarth::belief
