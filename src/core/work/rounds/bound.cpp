#include "work/rounds/bound.hpp"

#include <algorithm>
#include <cmath>

namespace beegarth::work::rounds {
namespace {

constexpr int most_moves = 400;
constexpr int patience = 12;  // moves without a better bound before steps become half as long
constexpr double shortest_step = 0.005;
constexpr double highest_price =
    1e12;  // of a limit, for as much as one place uses: the most that a place can be worth

std::size_t at_place(int place) {
  return static_cast<std::size_t>(place);
}

Worth worth_of(const std::vector<int>& stops, const std::vector<Worth>& worth) {
  Worth sum = 0;
  for (const int stop : stops) sum += worth[at_place(stop)];
  return sum;
}

class Pricing {
 public:
  Pricing(const Terrain& terrain, std::vector<BestTour>& days, const Tours& known)
      : terrain_(terrain),
        tours_(days),
        known_(known),
        price_(at_place(terrain.places()), 0),
        direction_(at_place(terrain.places()), 0.0),
        limit_price_(terrain.limits(), 0.0),
        limit_direction_(terrain.limits(), 0.0),
        met_(at_place(terrain.days())) {
    for (std::size_t limit = 0; limit < terrain.limits(); ++limit) {
      std::int64_t most = 1;
      for (int place = 0; place < terrain.places(); ++place)
        most = std::max(most, terrain.uses(place, limit));
      largest_use_.push_back(static_cast<double>(most));
    }
    for (const Tour& tour : known.days) met_[at_place(terrain.alike(tour.day()))].push_back(tour.stops());
  }

  Priced run(Work& work) {
    double step = 1.0;
    int waited = 0;
    for (int move = 0; move < most_moves && step > shortest_step; ++move) {
      Priced now;
      std::vector<double> seen(price_.size(), 0.0);  // how often, by the best tours at these prices
      if (!answer(now, seen, work)) break;
      if (!best_.found || now.bound < best_.bound) {
        if (best_.found && best_.bound - now.bound < terrain_.score_step() / 100)
          ++waited;
        else
          waited = 0;
        best_ = now;
        best_price_ = price_;
        best_limit_price_ = limit_price_;
      } else if (++waited > patience) {
        waited = 0;
        step /= 2;
        price_ = best_price_;
        limit_price_ = best_limit_price_;
        std::fill(direction_.begin(), direction_.end(), 0.0);
        std::fill(limit_direction_.begin(), limit_direction_.end(), 0.0);
      }
      if (best_.bound < known_.score + terrain_.score_step()) break;
      shift(now, seen, step);
    }
    return best_;
  }

 private:
  bool answer(Priced& now, std::vector<double>& seen, Work& work) {
    now.net_worth.resize(price_.size());
    for (std::size_t i = 0; i < price_.size(); ++i) {
      now.net_worth[i] = terrain_.score(static_cast<int>(i)) - price_[i];
      now.prices += price_[i];
    }
    for (std::size_t limit = 0; limit < terrain_.limits(); ++limit) {
      // Rounded down place by place, so that what the plan pays is not more than the whole: a bound still.
      for (std::size_t i = 0; i < price_.size(); ++i)
        now.net_worth[i] -= static_cast<Worth>(limit_price_[limit] * share(static_cast<int>(i), limit));
      now.prices += static_cast<Worth>(std::ceil(limit_price_[limit] * allowed(limit))) + 1;
    }
    now.bound = now.prices;
    now.best.resize(at_place(terrain_.days()));
    std::vector<std::vector<int>> route(at_place(terrain_.days()));
    for (int day = 0; day < terrain_.days(); ++day) {
      const int like = terrain_.alike(day);
      if (like == day) {
        Worth known = 0;
        const std::vector<int>* shown = nullptr;
        for (const auto& stops : met_[at_place(day)])
          if (const Worth sum = worth_of(stops, now.net_worth); sum > known) {
            known = sum;
            shown = &stops;
          }
        BestTour& best = tours_[at_place(day)];
        best.forget_reaches();
        auto found = best.pass(now.net_worth, known, work);
        if (!found.finished) return false;
        now.best[at_place(day)] = found.bound;
        if (found.bound > known) {
          route[at_place(day)] = found.stops;
          met_[at_place(day)].push_back(std::move(found.stops));
        } else if (shown) {
          route[at_place(day)] = *shown;
        }
      } else {
        now.best[at_place(day)] = now.best[at_place(like)];
        route[at_place(day)] = route[at_place(like)];
      }
      now.bound += now.best[at_place(day)];
      for (const int stop : route[at_place(day)]) seen[at_place(stop)] += 1;
    }
    now.found = true;
    return true;
  }

  double share(int place, std::size_t limit) const {
    return static_cast<double>(terrain_.uses(place, limit)) / largest_use_[limit];
  }
  double allowed(std::size_t limit) const {
    const double times = terrain_.each_day(limit) ? terrain_.days() : 1;
    return times * static_cast<double>(terrain_.most(limit)) / largest_use_[limit];
  }

  void shift(const Priced& now, const std::vector<double>& seen, double step) {
    double length = 0;
    const auto turn = [&](double& direction, double excess, bool is_free) {
      direction = 0.6 * direction + 0.4 * excess;
      if (is_free && direction < 0) direction = 0;
      length += direction * direction;
    };
    for (std::size_t i = 0; i < price_.size(); ++i) turn(direction_[i], seen[i] - 1, price_[i] == 0);
    for (std::size_t limit = 0; limit < terrain_.limits(); ++limit) {
      double used = 0;
      for (std::size_t i = 0; i < price_.size(); ++i) used += seen[i] * share(static_cast<int>(i), limit);
      turn(limit_direction_[limit], used - allowed(limit), limit_price_[limit] == 0);
    }
    if (length == 0) return;
    const double by = step * static_cast<double>(now.bound - known_.score) / length;
    for (std::size_t i = 0; i < price_.size(); ++i)
      price_[i] = std::clamp<Worth>(price_[i] + std::llround(by * direction_[i]), 0,
                                    terrain_.score(static_cast<int>(i)));
    for (std::size_t limit = 0; limit < terrain_.limits(); ++limit)
      limit_price_[limit] =
          std::clamp(limit_price_[limit] + by * limit_direction_[limit], 0.0, highest_price);
  }

  const Terrain& terrain_;
  std::vector<BestTour>& tours_;
  const Tours& known_;
  std::vector<Worth> price_, best_price_;
  std::vector<double> direction_;  // in which prices move: a mean of what was seen, the newest most
  std::vector<double> limit_price_, best_limit_price_, limit_direction_, largest_use_;
  std::vector<std::vector<std::vector<int>>> met_;  // tours of each sort of day met so far
  Priced best_;
};

}  // namespace

Priced price_places(const Terrain& terrain, std::vector<BestTour>& days, const Tours& known, Work& work) {
  return Pricing(terrain, days, known).run(work);
}

}  // namespace beegarth::work::rounds
