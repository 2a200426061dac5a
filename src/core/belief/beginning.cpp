#include "belief/beginning.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>
#include <string>

#include "belief/densities.hpp"

namespace beegarth::belief {
namespace {

// Reads rows, keeping the first problem.
class Rows {
 public:
  explicit Rows(const FactTable& table) : table_(table) {}
  double value(const std::string& key) {
    const auto found = table_.value(key);
    if (found) return *found;
    if (!problem_) problem_ = found.problem();
    return 0;
  }
  // Spread of the logarithm from low and high as 5 and 95 %.
  double spread(const std::string& key) {
    const FactRow* row = table_.find(key);
    if (row == nullptr || !row->low || !row->high || *row->low <= 0) {
      if (!problem_)
        problem_ = bad_input("needs low and high above zero", table_.name() + ": " + key, "correct the row");
      return 0;
    }
    return std::log(*row->high / *row->low) / (2 * ninety_percent_half_width);
  }
  const std::optional<Problem>& problem() const { return problem_; }

 private:
  const FactTable& table_;
  std::optional<Problem> problem_;
};

std::string month_key(const char* what, int month) {
  return std::string("start_") + what + (month < 10 ? "_0" : "_") + std::to_string(month);
}

// Between the middles of the months.
double by_season(Rows& rows, const char* what, int day_of_year) {
  const double place = (day_of_year - 15.0) / 30.44;  // 0 in the middle of January
  const double floor = std::floor(place);
  const int before = (static_cast<int>(floor) + 12) % 12;
  const double part = place - floor;
  return (1 - part) * rows.value(month_key(what, before + 1)) +
         part * rows.value(month_key(what, (before + 1) % 12 + 1));
}

const entries::Split* own_split(const Timeline& timeline) {
  for (const auto& entry : timeline.entries) {
    const auto* split = std::get_if<entries::Split>(&entry.payload);
    if (split != nullptr && entry.happened == timeline.began) return split;
  }
  return nullptr;
}

// A queen of whom only the year is said hatched in June of it, or in December south of the equator.
// A slip of the pen is not followed further than queens live.
double queen_age(int year, Date on, double latitude_deg, Rows& rows) {
  const double youngest = rows.value("said_queen_youngest_days");
  const double oldest = std::max(youngest, rows.value("said_queen_oldest_days"));
  const auto hatched = Date::from_ymd(year, latitude_deg < 0 ? 12 : 6, 1);
  return hatched ? std::clamp(static_cast<double>(on - *hatched), youngest, oldest) : youngest;
}

}  // namespace

int northern_day_of_year(Date date, double latitude_deg) {
  return (latitude_deg < 0 ? date + 183 : date).day_of_year();
}

Expected<StartPrior> start_prior(const FactTable& observation, const Timeline& timeline, bool from_split,
                                 double latitude_deg) {
  Rows rows(observation);
  const int day = northern_day_of_year(timeline.began, latitude_deg);
  const auto how = timeline.beginning ? timeline.beginning->how : entries::Beginning::unknown;
  StartPrior prior;
  colony::Start& start = prior.middle;
  start.bees = by_season(rows, "bees", day);
  start.brood_cells = by_season(rows, "brood", day);
  start.stores_kg = by_season(rows, "stores", day);
  start.mites = by_season(rows, "mites", day);
  start.winter_share = by_season(rows, "winter_bees", day);
  prior.spread = {rows.spread("start_bees_spread"), rows.spread("start_brood_spread"),
                  rows.spread("start_stores_spread"), rows.spread("start_mites_spread")};
  if (how == entries::Beginning::swarm) {
    start.bees = rows.value("swarm_bees");
    start.brood_cells = 0;
    start.stores_kg = rows.value("swarm_stores");
    start.mites = rows.value("swarm_mites");
    start.winter_share = 0;
  } else if (from_split || how == entries::Beginning::split) {
    const double share = rows.value("split_bees") / std::max(1.0, start.bees);
    start.mites *= std::min(1.0, share);
    const entries::Split* split = own_split(timeline);
    start.bees = rows.value("split_bees");
    start.brood_cells = rows.value("split_brood");
    if (split != nullptr) {
      constexpr double least = 0.02;  // of nothing at all no colony comes
      const double usual = rows.value("split_usual_share");
      start.bees *= std::max(split->bees_share, least) / usual;
      start.brood_cells *= split->brood_share / usual;
    }
    start.stores_kg = rows.value("split_stores");
    start.winter_share = 0;
    // Nobody said whether the queen came along: even odds, unless the split itself is told here.
    prior.queen_odds = split == nullptr ? 0.5 : split->queen_goes ? 0.98 : 0.02;
  } else {
    prior.drone_layer_odds = rows.value("start_drone_layer");
    prior.queen_odds = 1 - prior.drone_layer_odds - rows.value("start_queenless");
  }
  if (timeline.beginning && timeline.beginning->bees && *timeline.beginning->bees > 0) {
    // What was said of the bees says something of the brood and mites as well.
    const double factor = *timeline.beginning->bees / std::max(1.0, start.bees);
    start.brood_cells *= factor;
    start.mites *= factor;
    start.bees = *timeline.beginning->bees;
    prior.spread[0] = rows.spread("said_spread");
  }
  if (timeline.beginning && timeline.beginning->stores_kg) {
    start.stores_kg = std::max(0.3, *timeline.beginning->stores_kg);
    prior.spread[2] = rows.spread("said_spread");
  }
  if (timeline.beginning && timeline.beginning->queen_year)
    start.queen_age_days = queen_age(*timeline.beginning->queen_year, timeline.began, latitude_deg, rows);
  start.pollen_kg = std::min(1.0, 0.00005 * start.bees);
  if (rows.problem()) return *rows.problem();
  return prior;
}

colony::Start start_at(const StartPrior& prior, const double* coordinates, double queen) {
  colony::Start start = prior.middle;
  start.bees *= std::exp(prior.spread[0] * coordinates[0]);
  // The brood that goes with so many bees, and more or less of it.
  start.brood_cells *= std::exp(prior.spread[0] * coordinates[0] + prior.spread[1] * coordinates[1]);
  start.stores_kg *= std::exp(prior.spread[2] * coordinates[2]);
  start.mites *= std::exp(prior.spread[3] * coordinates[3]);
  start.brood_cells = std::min(start.brood_cells, 2.5 * start.bees);
  start.queen_laying = queen < prior.queen_odds;
  start.drone_laying = !start.queen_laying && queen < prior.queen_odds + prior.drone_layer_odds;
  return start;
}

}  // namespace beegarth::belief
