// Every tour of a day that could be part of something better: see labels.hpp.
#include <algorithm>
#include <functional>
#include <map>
#include <queue>

#include "work/rounds/labels.hpp"

namespace beegarth::work::rounds {

bool BestTour::every(const std::vector<Worth>& worth, Worth least, Work& work, std::size_t most,
                     std::vector<std::vector<int>>& tours) {
  // What is still possible from each place and moment, by a pass from the end.
  forget_reaches();
  backwards_ = true;
  if (!pass(worth, least - 1, work, true).finished) return false;

  struct Part {
    Ticks moment;
    Worth worth;
    PlaceSet seen;
    int place, parent;
    bool beaten = false;
  };
  std::vector<Part> parts;
  // Of the same places seen and the same place reached last, the earliest is enough.
  std::map<std::pair<PlaceSet, int>, int> earliest;
  using Next = std::pair<Ticks, int>;
  std::priority_queue<Next, std::vector<Next>, std::greater<>> queue;
  const auto reach = [&](int place, Ticks moment, Worth gathered, PlaceSet seen, int parent) {
    const Worth own = worth[static_cast<std::size_t>(place)];
    if (!in_time(place, moment) || !hopeful(place, moment, gathered, own, least - 1)) return true;
    if (!work.spend(8) || parts.size() > 4 * most) return false;
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
  };

  for (int place = 0; place < terrain_->places(); ++place)
    if (!reach(place, step(terrain_->start(), place, terrain_->begin()),
               worth[static_cast<std::size_t>(place)], {}, -1))
      return false;
  while (!queue.empty()) {
    const int number = queue.top().second;
    queue.pop();
    const Part from = parts[static_cast<std::size_t>(number)];
    if (from.beaten) continue;
    for (int place = 0; place < terrain_->places(); ++place) {
      if (from.seen.has(place)) continue;
      if (!reach(place, step(from.place, place, from.moment),
                 from.worth + worth[static_cast<std::size_t>(place)], from.seen, number))
        return false;
    }
  }

  // Of each set of places the tour that is back first.
  std::map<PlaceSet, std::pair<Ticks, int>> by_set;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const Part& part = parts[i];
    if (part.beaten || part.worth < least || !at_end(part.place, part.moment)) continue;
    const Ticks back = part.moment + terrain_->leg(part.place, terrain_->end());
    const auto [known, is_new] = by_set.try_emplace(part.seen, back, static_cast<int>(i));
    if (!is_new && back < known->second.first) known->second = {back, static_cast<int>(i)};
  }
  if (by_set.size() > most) return false;
  for (const auto& [set, back] : by_set) {
    std::vector<int> stops;
    for (int number = back.second; number >= 0; number = parts[static_cast<std::size_t>(number)].parent)
      stops.push_back(parts[static_cast<std::size_t>(number)].place);
    std::reverse(stops.begin(), stops.end());
    tours.push_back(std::move(stops));
  }
  return true;
}

}  // namespace beegarth::work::rounds
