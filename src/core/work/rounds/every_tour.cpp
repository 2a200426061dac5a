// Every tour of a day that could be part of something better: see labels.hpp.
#include <algorithm>
#include <functional>
#include <map>
#include <queue>

#include "work/rounds/labels.hpp"

namespace beegarth::work::rounds {

struct BestTour::Every {
  struct Part {
    Ticks moment;
    Worth worth;
    PlaceSet seen;
    int place, parent;
    bool beaten = false;
  };
  using Next = std::pair<Ticks, int>;

  const BestTour& tours;
  const std::vector<Worth>& worth;
  Worth least;
  Work& work;
  std::size_t most_parts;
  std::vector<Part> parts;
  // Of the same places seen and the same place reached last, the earliest is enough.
  std::map<std::pair<PlaceSet, int>, int> earliest;
  std::priority_queue<Next, std::vector<Next>, std::greater<>> queue;

  const Part& part(int number) const { return parts[static_cast<std::size_t>(number)]; }

  bool run() {
    const Terrain& terrain = *tours.terrain_;
    for (int place = 0; place < terrain.places(); ++place)
      if (!reach(place, tours.step(terrain.start(), place, terrain.begin()), 0, {}, -1)) return false;
    while (!queue.empty()) {
      const int number = queue.top().second;
      queue.pop();
      const Part from = part(number);
      if (from.beaten) continue;
      for (int place = 0; place < terrain.places(); ++place)
        if (!from.seen.has(place) &&
            !reach(place, tours.step(from.place, place, from.moment), from.worth, from.seen, number))
          return false;
    }
    return true;
  }

  bool reach(int place, Ticks moment, Worth before, PlaceSet seen, int parent) {
    const Worth own = worth[static_cast<std::size_t>(place)], gathered = before + own;
    if (!tours.in_time(place, moment) || !tours.hopeful(place, moment, gathered, own, least - 1)) return true;
    if (!work.spend(8) || parts.size() >= most_parts) return false;
    seen.add(place);
    const int number = static_cast<int>(parts.size());
    const auto [known, is_new] = earliest.try_emplace({seen, place}, number);
    if (!is_new) {
      Part& other = parts[static_cast<std::size_t>(known->second)];
      if (other.moment <= moment) return true;
      other.beaten = true;
      known->second = number;
    }
    parts.push_back({moment, gathered, seen, place, parent});
    queue.push({moment, number});
    return true;
  }

  // Of each set of places the tour that is back first, by its last part.
  std::vector<int> last_parts() const {
    std::map<PlaceSet, std::pair<Ticks, int>> first_back;
    for (int number = 0; number < static_cast<int>(parts.size()); ++number) {
      const Part& one = part(number);
      if (one.beaten || one.worth < least || !tours.at_end(one.place, one.moment)) continue;
      const Ticks back = one.moment + tours.terrain_->leg(one.place, tours.terrain_->end());
      const auto [known, is_new] = first_back.try_emplace(one.seen, back, number);
      if (!is_new && back < known->second.first) known->second = {back, number};
    }
    std::vector<int> last;
    last.reserve(first_back.size());
    for (const auto& [set, back] : first_back) last.push_back(back.second);
    return last;
  }

  std::vector<int> stops(int last) const {
    std::vector<int> found;
    for (int number = last; number >= 0; number = part(number).parent) found.push_back(part(number).place);
    std::reverse(found.begin(), found.end());
    return found;
  }
};

bool BestTour::every(const std::vector<Worth>& worth, Worth least, Work& work, std::size_t most,
                     std::vector<std::vector<int>>& tours) {
  // What is still possible from each place and moment, by a pass from the end.
  forget_reaches();
  backwards_ = true;
  if (!pass(worth, least - 1, work, true).finished) return false;
  Every every{*this, worth, least, work, 4 * most, {}, {}, {}};
  if (!every.run()) return false;
  const std::vector<int> last = every.last_parts();
  if (last.size() > most) return false;
  for (const int number : last) tours.push_back(every.stops(number));
  return true;
}

}  // namespace beegarth::work::rounds
