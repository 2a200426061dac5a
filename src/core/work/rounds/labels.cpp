#include "work/rounds/labels.hpp"

#include <algorithm>
#include <functional>
#include <queue>

namespace beegarth::work::rounds {
namespace {

constexpr std::size_t most_labels = 1'000'000;  // about 100 MB
constexpr std::size_t remembered_at_first = 8;  // nearest neighbours

std::size_t place_index(int place) {
  return static_cast<std::size_t>(place);
}

}  // namespace

Ways::Ways(const Terrain& terrain)
    : near(place_index(terrain.places())),
      short_cut(near.size(), false),
      to_end(near.size()),
      from_start(near.size()) {
  const int count = terrain.places();
  for (int place = 0; place < count; ++place) {
    std::vector<int> others;
    for (int other = 0; other < count; ++other)
      if (other != place) others.push_back(other);
    std::stable_sort(others.begin(), others.end(),
                     [&](int a, int b) { return terrain.way(place, a) < terrain.way(place, b); });
    others.resize(std::min(others.size(), remembered_at_first));
    near[place_index(place)].add(place);
    for (const int other : others) near[place_index(place)].add(other);
    to_end[place_index(place)] = terrain.leg(place, terrain.end());
    from_start[place_index(place)] = terrain.leg(terrain.start(), place);
  }
  for (int past = 0; past < count; ++past)
    for (int from = 0; from <= count && !short_cut[place_index(past)]; ++from) {  // the start is `count`
      if (from == past) continue;
      const Ticks there = terrain.leg(from, past);
      for (int to = 0; to <= terrain.end(); ++to) {
        if (to == past || to == from || to == terrain.start()) continue;
        if (there + terrain.leg(past, to) < terrain.leg(from, to)) short_cut[place_index(past)] = true;
      }
    }
  // Least times past other places, so that nothing is cut off too early where the roads are odd.
  for (bool shorter = true; shorter;) {
    shorter = false;
    for (int from = 0; from < count; ++from)
      for (int to = 0; to < count; ++to) {
        if (from == to) continue;
        const Ticks leg = terrain.leg(from, to);
        const Ticks on = leg + to_end[place_index(to)], out = from_start[place_index(from)] + leg;
        shorter = shorter || on < to_end[place_index(from)] || out < from_start[place_index(to)];
        to_end[place_index(from)] = std::min(to_end[place_index(from)], on);
        from_start[place_index(to)] = std::min(from_start[place_index(to)], out);
      }
  }
}

BestTour::BestTour(const Terrain& terrain, const Ways& ways, int day)
    : terrain_(&terrain), ways_(&ways), day_(day), memory_(ways.near), reaches_(ways.near.size()) {}

void BestTour::forget_reaches() {
  have_reaches_ = false;
}

// Backwards, a moment is the negative of the last one at which work can begin, so that less is better both
// ways.
Ticks BestTour::step(int from, int to, Ticks moment) const {
  if (!backwards_) return terrain_->work_from(to, day_, moment + terrain_->leg(from, to));
  const Ticks latest = terrain_->work_until(to, day_, -moment - terrain_->leg(to, from));
  return latest == too_early ? never : -latest;
}

bool BestTour::at_end(int from, Ticks moment) const {
  if (!backwards_) return moment + terrain_->leg(from, terrain_->end()) <= terrain_->finish(day_);
  return -moment >= terrain_->begin() + terrain_->leg(terrain_->start(), from);
}

bool BestTour::in_time(int place, Ticks moment) const {
  if (moment == never) return false;
  if (!backwards_) return moment + ways_->to_end[place_index(place)] <= terrain_->finish(day_);
  return -moment >= terrain_->begin() + ways_->from_start[place_index(place)];
}

// Could it still become worth more than what is known? By what the pass from the other end reached there.
bool BestTour::hopeful(int place, Ticks moment, Worth worth, Worth own, Worth known) const {
  if (!have_reaches_) return true;
  const auto& there = reaches_[place_index(place)];
  // The other's moment is the negative of one on this clock: it must not lie before ours.
  const auto past = std::upper_bound(there.begin(), there.end(), -moment,
                                     [](Ticks m, const Reach& reach) { return m < reach.moment; });
  if (past == there.begin()) return false;
  return worth - own + (past - 1)->worth > known;
}

BestTour::Found BestTour::pass(const std::vector<Worth>& worth, Worth known, Work& work, bool every_place) {
  const int count = terrain_->places();
  const int from_end = backwards_ ? terrain_->end() : terrain_->start();
  std::vector<int> use;
  for (int place = 0; place < count; ++place)
    if ((every_place || worth[place_index(place)] > 0 || ways_->short_cut[place_index(place)]) &&
        !terrain_->windows(place, day_).empty())
      use.push_back(place);

  std::vector<Label> labels;
  std::vector<std::vector<int>> at(place_index(count));
  using Next = std::pair<Ticks, int>;
  std::priority_queue<Next, std::vector<Next>, std::greater<>> queue;
  Found found;
  found.bound = known;
  int best = -1;

  const auto reach = [&](int to, Ticks moment, Worth gathered, const PlaceSet& seen, int parent) {
    const Worth own = worth[place_index(to)];
    if (!hopeful(to, moment, gathered, own, known)) return true;
    auto& there = at[place_index(to)];
    if (!work.spend(1 + static_cast<std::int64_t>(there.size())) || labels.size() >= most_labels)
      return false;
    for (const int other : there) {
      const Label& label = labels[place_index(other)];
      if (label.moment <= moment && label.worth >= gathered && label.seen.within(seen)) return true;
    }
    std::size_t kept = 0;
    for (const int other : there) {
      Label& label = labels[place_index(other)];
      if (moment <= label.moment && gathered >= label.worth && seen.within(label.seen))
        label.beaten = true;
      else
        there[kept++] = other;
    }
    there.resize(kept);
    const int number = static_cast<int>(labels.size());
    labels.push_back({moment, gathered, seen, to, parent, false});
    there.push_back(number);
    queue.push({moment, number});
    if (gathered > found.bound && at_end(to, moment)) {
      found.bound = gathered;
      best = number;
    }
    return true;
  };

  const Ticks begin = backwards_ ? -terrain_->finish(day_) : terrain_->begin();
  for (const int place : use) {
    const Ticks moment = step(from_end, place, begin);
    if (!in_time(place, moment)) continue;
    PlaceSet seen;
    seen.add(place);
    if (!reach(place, moment, worth[place_index(place)], seen, -1)) return found;
  }
  while (!queue.empty()) {
    const int number = queue.top().second;
    queue.pop();
    if (labels[place_index(number)].beaten) continue;
    const Label from = labels[place_index(number)];
    for (const int place : use) {
      if (from.seen.has(place)) continue;
      const Ticks moment = step(from.place, place, from.moment);
      if (!in_time(place, moment)) continue;
      PlaceSet seen = from.seen.both(memory_[place_index(place)]);
      seen.add(place);
      if (!reach(place, moment, from.worth + worth[place_index(place)], seen, number)) return found;
    }
  }

  found.finished = true;
  for (int number = best; number >= 0; number = labels[place_index(number)].parent)
    found.stops.push_back(labels[place_index(number)].place);
  if (!backwards_) std::reverse(found.stops.begin(), found.stops.end());
  PlaceSet once;
  for (const int stop : found.stops) {
    if (once.has(stop)) found.simple = false;
    once.add(stop);
  }
  if (!found.simple) remember(found.stops);

  for (int place = 0; place < count; ++place) {
    auto& reaches = reaches_[place_index(place)];
    reaches.clear();
    for (const int number : at[place_index(place)])
      reaches.push_back({labels[place_index(number)].moment, labels[place_index(number)].worth});
    std::sort(reaches.begin(), reaches.end(), [](const Reach& a, const Reach& b) {
      return a.moment != b.moment ? a.moment < b.moment : a.worth > b.worth;
    });
    std::size_t kept = 0;
    for (const Reach& one : reaches)
      if (kept == 0 || one.worth > reaches[kept - 1].worth) reaches[kept++] = one;
    reaches.resize(kept);
  }
  have_reaches_ = true;
  backwards_ = !backwards_;
  return found;
}

// Every place on the way from a stop to its second visit keeps it in mind from now on.
void BestTour::remember(const std::vector<int>& stops) {
  for (std::size_t i = 0; i < stops.size(); ++i)
    for (std::size_t j = i + 1; j < stops.size(); ++j) {
      if (stops[i] != stops[j]) continue;
      for (std::size_t between = i + 1; between < j; ++between)
        memory_[place_index(stops[between])].add(stops[i]);
      break;
    }
}

BestTour::Found BestTour::solve(const std::vector<Worth>& worth, Worth known, Work& work) {
  forget_reaches();
  Found last;
  for (;;) {
    Found found = pass(worth, known, work);
    if (!found.finished) return last;
    last = std::move(found);
    if (last.simple) return last;
  }
}

}  // namespace beegarth::work::rounds
