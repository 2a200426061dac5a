#include "work/rounds/small.hpp"

#include <algorithm>
#include <cassert>

namespace beegarth::work::rounds {
namespace {

using Set = unsigned;

// Of one day: when the end is reached at the earliest by one who sees this set of places.
class DaySets {
 public:
  DaySets(const Terrain& terrain, int day)
      : terrain_(terrain),
        day_(day),
        count_(terrain.places()),
        begins_((std::size_t{1} << count_) * static_cast<std::size_t>(count_), never),
        last_before_(begins_.size(), -1) {
    for (Set set = 1; set < Set{1} << count_; ++set)
      for (int last = 0; last < count_; ++last)
        if (set & Set{1} << last) reckon(set, last);
  }

  bool fits(Set set) const { return set == 0 || last_of(set) >= 0; }
  Ticks back(Set set) const { return back_from(set, last_of(set)); }

  std::vector<int> stops(Set set) const {
    std::vector<int> stops;
    if (set == 0) return stops;
    for (int last = last_of(set); last >= 0;) {
      stops.push_back(last);
      const int before = last_before_[slot(set, last)];
      set &= ~(Set{1} << last);
      last = before;
    }
    std::reverse(stops.begin(), stops.end());
    return stops;
  }

 private:
  std::size_t slot(Set set, int last) const {
    return static_cast<std::size_t>(set) * static_cast<std::size_t>(count_) + static_cast<std::size_t>(last);
  }

  void reckon(Set set, int last) {
    const Set rest = set & ~(Set{1} << last);
    Ticks& best = begins_[slot(set, last)];
    if (rest == 0) {
      best = terrain_.work_from(last, day_, terrain_.begin() + terrain_.leg(terrain_.start(), last));
      return;
    }
    for (int before = 0; before < count_; ++before) {
      if (!(rest & Set{1} << before) || begins_[slot(rest, before)] == never) continue;
      const Ticks work =
          terrain_.work_from(last, day_, begins_[slot(rest, before)] + terrain_.leg(before, last));
      if (work >= best) continue;
      best = work;
      last_before_[slot(set, last)] = before;
    }
  }

  Ticks back_from(Set set, int last) const {
    const Ticks work = begins_[slot(set, last)];
    return work == never ? never : work + terrain_.leg(last, terrain_.end());
  }

  int last_of(Set set) const {
    int best = -1;
    for (int last = 0; last < count_; ++last) {
      if (!(set & Set{1} << last) || back_from(set, last) > terrain_.finish(day_)) continue;
      if (best < 0 || back_from(set, last) < back_from(set, best)) best = last;
    }
    return best;
  }

  const Terrain& terrain_;
  int day_, count_;
  std::vector<Ticks> begins_;
  std::vector<int> last_before_;
};

bool within(const Terrain& terrain, Set set, bool each_day) {
  for (std::size_t limit = 0; limit < terrain.limits(); ++limit) {
    if (terrain.each_day(limit) != each_day) continue;
    std::int64_t used = 0;
    for (int place = 0; place < terrain.places(); ++place)
      if (set & Set{1} << place) used += terrain.uses(place, limit);
    if (used > terrain.most(limit)) return false;
  }
  return true;
}

Worth worth_of_set(const Terrain& terrain, Set set) {
  Worth sum = 0;
  for (int place = 0; place < terrain.places(); ++place)
    if (set & Set{1} << place) sum += terrain.score(place);
  return sum;
}

}  // namespace

Tours best_of_all_sets(const Terrain& terrain) {
  const std::size_t sets = std::size_t{1} << terrain.places();
  // After the days so far, all of `set` has been seen: least time taken, and what the last of them saw.
  std::vector<Ticks> time(sets, never);
  time[0] = 0;
  std::vector<std::vector<Set>> of_day;
  std::vector<DaySets> kinds;
  std::vector<std::size_t> kind(static_cast<std::size_t>(terrain.days()));
  for (int day = 0; day < terrain.days(); ++day) {
    const auto here = static_cast<std::size_t>(day);
    if (terrain.alike(day) == day) kinds.emplace_back(terrain, day);
    kind[here] =
        terrain.alike(day) == day ? kinds.size() - 1 : kind[static_cast<std::size_t>(terrain.alike(day))];
    std::vector<Ticks> cost(sets, never);
    for (Set set = 0; set < sets; ++set)
      if (kinds[kind[here]].fits(set) && within(terrain, set, true))
        cost[set] = set == 0 ? 0 : kinds[kind[here]].back(set) - terrain.begin();
    std::vector<Ticks> next(sets, never);
    std::vector<Set> seen(sets, 0);
    for (Set all = 0; all < sets; ++all)
      for (Set part = all;; part = (part - 1) & all) {
        if (cost[part] != never && time[all & ~part] != never && cost[part] + time[all & ~part] < next[all]) {
          next[all] = cost[part] + time[all & ~part];
          seen[all] = part;
        }
        if (part == 0) break;
      }
    time = std::move(next);
    of_day.push_back(std::move(seen));
  }

  Set best = 0;
  for (Set set = 0; set < sets; ++set) {
    if (time[set] == never || !within(terrain, set, false)) continue;
    const Worth worth = worth_of_set(terrain, set), most = worth_of_set(terrain, best);
    if (worth > most || (worth == most && time[set] < time[best])) best = set;
  }
  Tours tours = no_tours(terrain);
  for (std::size_t day = of_day.size(); day-- > 0;) {
    const Set part = of_day[day][best];
    const bool fitted = tours.days[day].become(kinds[kind[day]].stops(part));
    assert(fitted);
    static_cast<void>(fitted);
    best &= ~part;
  }
  add_up(tours);
  return tours;
}

}  // namespace beegarth::work::rounds
