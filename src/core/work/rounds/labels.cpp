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

struct BestTour::Pass {
  struct Label {
    Ticks moment;
    Worth worth;
    PlaceSet seen;
    int place;
    int parent;
    bool beaten;
  };
  using Next = std::pair<Ticks, int>;

  const BestTour& tours;
  const std::vector<Worth>& worth;
  Worth known;
  Work& work;
  std::vector<int> use;  // places that can be part of the best tour
  std::vector<Label> labels;
  std::vector<std::vector<int>> at;  // of each place: its labels that none beats
  std::priority_queue<Next, std::vector<Next>, std::greater<>> queue;
  Worth most = 0;
  int best = -1;

  bool run() {
    const Terrain& terrain = *tours.terrain_;
    at.resize(worth.size());
    most = known;
    const int end = tours.backwards_ ? terrain.end() : terrain.start();
    const Ticks begin = tours.backwards_ ? -terrain.finish(tours.day_) : terrain.begin();
    for (const int place : use)
      if (!reach(place, tours.step(end, place, begin), worth[place_index(place)], {}, -1)) return false;
    while (!queue.empty()) {
      const int number = queue.top().second;
      queue.pop();
      const Label from = labels[place_index(number)];
      if (from.beaten) continue;
      for (const int place : use) {
        if (from.seen.has(place)) continue;
        const PlaceSet seen = from.seen.both(tours.memory_[place_index(place)]);
        const Worth gathered = from.worth + worth[place_index(place)];
        if (!reach(place, tours.step(from.place, place, from.moment), gathered, seen, number)) return false;
      }
    }
    return true;
  }

  // False where the work is spent.
  bool reach(int place, Ticks moment, Worth gathered, PlaceSet seen, int parent) {
    if (!tours.in_time(place, moment)) return true;
    if (!tours.hopeful(place, moment, gathered, worth[place_index(place)], known)) return true;
    auto& there = at[place_index(place)];
    if (!work.spend(1 + static_cast<std::int64_t>(there.size())) || labels.size() >= most_labels)
      return false;
    seen.add(place);
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
    labels.push_back({moment, gathered, seen, place, parent, false});
    there.push_back(number);
    queue.push({moment, number});
    if (gathered > most && tours.at_end(place, moment)) {
      most = gathered;
      best = number;
    }
    return true;
  }

  std::vector<int> stops() const {
    std::vector<int> found;
    for (int number = best; number >= 0; number = labels[place_index(number)].parent)
      found.push_back(labels[place_index(number)].place);
    if (!tours.backwards_) std::reverse(found.begin(), found.end());
    return found;
  }
};

BestTour::Found BestTour::pass(const std::vector<Worth>& worth, Worth known, Work& work, bool every_place) {
  Pass pass{*this, worth, known, work, {}, {}, {}, {}};
  for (int place = 0; place < terrain_->places(); ++place)
    if ((every_place || worth[place_index(place)] > 0 || ways_->short_cut[place_index(place)]) &&
        !terrain_->windows(place, day_).empty())
      pass.use.push_back(place);
  Found found;
  found.finished = pass.run();
  if (!found.finished) return found;
  found.bound = pass.most;
  found.stops = pass.stops();
  PlaceSet once;
  for (const int stop : found.stops) {
    if (once.has(stop)) found.simple = false;
    once.add(stop);
  }
  if (!found.simple) remember(found.stops);
  keep_reaches(pass);
  have_reaches_ = true;
  backwards_ = !backwards_;
  return found;
}

// Of each place the labels that none beats, by moment and worth alone.
void BestTour::keep_reaches(const Pass& pass) {
  for (std::size_t place = 0; place < reaches_.size(); ++place) {
    auto& reaches = reaches_[place];
    reaches.clear();
    for (const int number : pass.at[place])
      reaches.push_back({pass.labels[place_index(number)].moment, pass.labels[place_index(number)].worth});
    std::sort(reaches.begin(), reaches.end(), [](const Reach& a, const Reach& b) {
      return a.moment != b.moment ? a.moment < b.moment : a.worth > b.worth;
    });
    std::size_t kept = 0;
    for (const Reach& one : reaches)
      if (kept == 0 || one.worth > reaches[kept - 1].worth) reaches[kept++] = one;
    reaches.resize(kept);
  }
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
