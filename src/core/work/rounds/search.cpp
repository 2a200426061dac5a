#include "work/rounds/search.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace beegarth::work::rounds {
namespace {

std::size_t below(Stream& random, std::size_t count) {
  return static_cast<std::size_t>((static_cast<std::uint64_t>(random.word()) * count) >> 32);
}
double share(Stream& random) {
  return (random.word() + 0.5) * 0x1p-32;
}

// For each place the others, nearest first, by the shorter of the two directions.
std::vector<std::vector<int>> neighbours(const Terrain& terrain) {
  const int count = terrain.places();
  std::vector<std::vector<int>> near(static_cast<std::size_t>(count));
  for (int place = 0; place < count; ++place) {
    auto& list = near[static_cast<std::size_t>(place)];
    for (int other = 0; other < count; ++other)
      if (other != place) list.push_back(other);
    const auto far = [&](int other) {
      return std::min(terrain.way(place, other), terrain.way(other, place));
    };
    std::stable_sort(list.begin(), list.end(), [&](int a, int b) { return far(a) < far(b); });
  }
  return near;
}

constexpr int nowhere = -1;

class Walk {
 public:
  Walk(const Terrain& terrain, Stream& random, Pool& pool)
      : terrain_(terrain),
        random_(random),
        pool_(pool),
        near_(neighbours(terrain)),
        use_(terrain),
        day_of_(static_cast<std::size_t>(terrain.places()), nowhere) {
    Worth total = 0;
    for (int place = 0; place < terrain.places(); ++place) total += terrain.score(place);
    mean_score_ = static_cast<double>(total) / terrain.places();
    Ticks time = 0;
    for (int day = 0; day < terrain.days(); ++day) time += terrain.finish(day) - terrain.begin();
    worth_of_way_ = time > 0 ? mean_score_ / static_cast<double>(time) : 0;
    for (int place = 0; place < terrain.places(); ++place) {
      bool open = false;
      for (int day = 0; day < terrain.days(); ++day) open = open || !terrain.windows(place, day).empty();
      if (open && terrain.score(place) > 0) wanted_.push_back(place);
    }
  }

  Tours run(const Tours& from, const WalkPlan& plan) {
    Tours now = from, best = from, next = from;
    if (wanted_.empty()) return best;
    const double warmest = plan.warmest * mean_score_, fall = std::log(plan.coldest / plan.warmest);
    while (looks_ < plan.looks) {
      const double gone = static_cast<double>(looks_) / static_cast<double>(plan.looks);
      const double warmth = warmest * std::exp(fall * gone);
      next = now;
      take_out(next);
      put_in(next);
      if (value(next) <= value(now) + warmth * std::log(share(random_))) continue;
      std::swap(now, next);
      if (terrain_.days() > 1)
        for (const Tour& tour : now.days) pool_.add(terrain_, tour);
      if (better(now, best)) best = now;
    }
    return best;
  }

 private:
  double value(const Tours& tours) const {
    return static_cast<double>(tours.score) - worth_of_way_ * static_cast<double>(tours.way);
  }

  void note_places(const Tours& tours) {
    std::fill(day_of_.begin(), day_of_.end(), nowhere);
    use_ = Use(terrain_);
    for (const Tour& tour : tours.days)
      for (const int stop : tour.stops()) {
        day_of_[static_cast<std::size_t>(stop)] = tour.day();
        use_.add(stop, tour.day());
      }
  }

  void take_out(Tours& tours) {
    note_places(tours);
    touched_.assign(tours.days.size(), false);
    was_out_.assign(day_of_.size(), false);
    for (std::size_t place = 0; place < day_of_.size(); ++place) was_out_[place] = day_of_[place] == nowhere;
    const std::size_t how = below(random_, 100);
    if (how < 5 && tours.days.size() > 1)
      take_day(tours);
    else
      take_strings(tours);
    note_places(tours);
  }

  void take_day(Tours& tours) {
    Tour& tour = tours.days[below(random_, tours.days.size())];
    tour.remove(0, tour.stops().size());
    touched_[static_cast<std::size_t>(tour.day())] = true;
  }

  // Strings of stops that follow each other, one a day, round a place drawn at random.
  void take_strings(Tours& tours) {
    std::size_t stops = 0, busy = 0;
    for (const Tour& tour : tours.days) {
      stops += tour.stops().size();
      busy += tour.stops().empty() ? 0 : 1;
    }
    if (stops == 0) return;
    const double longest = std::min(max_string_, static_cast<double>(stops) / static_cast<double>(busy));
    const double most_strings = 4 * mean_out_ / (1 + longest) - 1;
    const auto strings = static_cast<std::size_t>(1 + share(random_) * std::max(0.0, most_strings));
    const int seed = wanted_[below(random_, wanted_.size())];
    std::size_t taken = 0;
    take_string(tours, seed, longest, taken);
    for (const int place : near_[static_cast<std::size_t>(seed)]) {
      if (taken >= strings) return;
      take_string(tours, place, longest, taken);
    }
  }

  void take_string(Tours& tours, int place, double longest, std::size_t& taken) {
    const int day = day_of_[static_cast<std::size_t>(place)];
    if (day == nowhere || touched_[static_cast<std::size_t>(day)]) return;
    Tour& tour = tours.days[static_cast<std::size_t>(day)];
    const auto& stops = tour.stops();
    const std::size_t most = std::min(stops.size(), static_cast<std::size_t>(std::max(1.0, longest)));
    const std::size_t count = 1 + below(random_, most);
    const auto here = static_cast<std::size_t>(std::find(stops.begin(), stops.end(), place) - stops.begin());
    const std::size_t low = here + 1 > count ? here + 1 - count : 0;
    const std::size_t high = std::min(here, stops.size() - count);
    const std::size_t from = low + below(random_, high - low + 1);
    tour.remove(from, count);
    touched_[static_cast<std::size_t>(day)] = true;
    ++taken;
  }

  void put_in(Tours& tours) {
    order_places();
    const bool by_way = share(random_) < 0.5;
    // A place that was out before did not fit on the days from which nothing was taken, but for gaps not
    // looked at then, or unless a limit has room again.
    everywhere_ = terrain_.limits() > 0 || below(random_, 16) == 0;
    for (const int place : order_) insert_best(tours, place, by_way);
    add_up(tours);
  }

  void order_places() {
    order_.clear();
    for (const int place : wanted_)
      if (day_of_[static_cast<std::size_t>(place)] == nowhere) order_.push_back(place);
    for (std::size_t i = order_.size(); i > 1; --i) std::swap(order_[i - 1], order_[below(random_, i)]);
    const std::size_t how = below(random_, 10);
    if (how < 4) return;  // as drawn
    key_.assign(static_cast<std::size_t>(terrain_.places()), 0.0);
    for (const int place : order_) {
      double& key = key_[static_cast<std::size_t>(place)];
      const double score = static_cast<double>(terrain_.score(place));
      if (how < 7)
        key = -score * (0.5 + share(random_));
      else
        key = -score / (1.0 + static_cast<double>(terrain_.service(place)) / 1e6) * (0.5 + share(random_));
    }
    std::stable_sort(order_.begin(), order_.end(), [this](int a, int b) {
      return key_[static_cast<std::size_t>(a)] < key_[static_cast<std::size_t>(b)];
    });
  }

  void insert_best(Tours& tours, int place, bool by_way) {
    Tour* where = nullptr;
    std::size_t at = 0;
    Ticks least = never;
    for (Tour& tour : tours.days) {
      ++looks_;
      if (!everywhere_ && was_out_[static_cast<std::size_t>(place)] &&
          !touched_[static_cast<std::size_t>(tour.day())])
        continue;
      const auto open = terrain_.windows(place, tour.day());
      if (open.empty() || !use_.room_for(place, tour.day())) continue;
      const std::size_t stops = tour.stops().size();
      for (std::size_t gap = tour.first_gap(open.front().open); gap <= stops; ++gap) {
        if (gap > 0 && tour.work_begins(gap - 1) > open.back().close) break;
        ++looks_;
        const auto found = tour.gap(place, gap);
        if (!found || random_.word() < blink_) continue;
        const Ticks cost = by_way ? found->way : found->later;
        if (cost >= least) continue;
        least = cost;
        where = &tour;
        at = gap;
      }
    }
    if (!where) return;
    where->insert(place, at);
    day_of_[static_cast<std::size_t>(place)] = where->day();
    use_.add(place, where->day());
  }

  const Terrain& terrain_;
  Stream& random_;
  Pool& pool_;
  std::vector<std::vector<int>> near_;
  Use use_;
  std::vector<int> day_of_, wanted_, order_;
  std::vector<double> key_;
  std::vector<bool> touched_, was_out_;  // days from which something was taken; places not seen before that
  bool everywhere_ = true;
  std::int64_t looks_ = 0;
  double mean_score_ = 0, worth_of_way_ = 0;
  static constexpr double max_string_ = 10, mean_out_ = 8;
  static constexpr std::uint32_t blink_ = 0x04000000;  // of 2^32: a gap in 64 is not seen
};

}  // namespace

Tours no_tours(const Terrain& terrain) {
  Tours tours;
  for (int day = 0; day < terrain.days(); ++day) tours.days.emplace_back(terrain, day);
  return tours;
}

void add_up(Tours& tours) {
  tours.score = 0;
  tours.way = 0;
  for (const Tour& tour : tours.days) {
    tours.score += tour.score();
    tours.way += tour.way();
  }
}

bool better(const Tours& a, const Tours& b) {
  return a.score != b.score ? a.score > b.score : a.way < b.way;
}

Tours walk(const Terrain& terrain, const Tours& from, const WalkPlan& plan, Stream& random, Pool& pool) {
  return Walk(terrain, random, pool).run(from, plan);
}

}  // namespace beegarth::work::rounds
