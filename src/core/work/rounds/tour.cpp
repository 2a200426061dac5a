#include "work/rounds/tour.hpp"

namespace beegarth::work::rounds {

std::optional<Gap> Tour::gap(int place, std::size_t at) const {
  const Terrain& terrain = *terrain_;
  const bool first = at == 0, last = at == stops_.size();
  const int before = first ? terrain.start() : stops_[at - 1];
  const int after = last ? terrain.end() : stops_[at];
  const Ticks left = first ? terrain.begin() : begins_[at - 1];
  const Ticks work = terrain.work_from(place, day_, left + terrain.leg(before, place));
  if (work == never) return std::nullopt;
  const Ticks arrival = work + terrain.leg(place, after);
  if (arrival > (last ? terrain.finish(day_) : latest_[at])) return std::nullopt;
  Gap found;
  found.at = at;
  found.way = terrain.way(before, place) + terrain.way(place, after) - terrain.way(before, after);
  found.later = last ? arrival - back_ : std::max(arrival, begins_[at]) - begins_[at];
  return found;
}

std::size_t Tour::first_gap(Ticks opens) const {
  std::size_t at = 0;
  while (at < latest_.size() && latest_[at] < opens) ++at;
  return at;
}

void Tour::insert(int place, std::size_t at) {
  stops_.insert(stops_.begin() + static_cast<std::ptrdiff_t>(at), place);
  reckon(at);
}

void Tour::remove(std::size_t from, std::size_t count) {
  const auto first = stops_.begin() + static_cast<std::ptrdiff_t>(from);
  stops_.erase(first, first + static_cast<std::ptrdiff_t>(count));
  if (reckon(from)) return;
  stops_.clear();
  reckon(0);
}

bool Tour::become(std::span<const int> stops) {
  Tour other(*terrain_, day_);
  other.stops_.assign(stops.begin(), stops.end());
  if (!other.reckon(0)) return false;
  *this = std::move(other);
  return true;
}

bool Tour::reckon(std::size_t from) {
  const Terrain& terrain = *terrain_;
  const std::size_t count = stops_.size();
  begins_.resize(count);
  latest_.resize(count);
  int before = from == 0 ? terrain.start() : stops_[from - 1];
  Ticks now = from == 0 ? terrain.begin() : begins_[from - 1];
  for (std::size_t at = from; at < count; ++at) {
    now = terrain.work_from(stops_[at], day_, now + terrain.leg(before, stops_[at]));
    if (now == never) return false;
    begins_[at] = now;
    before = stops_[at];
  }
  back_ = count == 0 ? terrain.begin() : now + terrain.leg(before, terrain.end());
  if (back_ > terrain.finish(day_)) return false;

  way_ = 0;
  score_ = 0;
  int after = terrain.end();
  Ticks until = terrain.finish(day_);
  for (std::size_t at = count; at-- > 0;) {
    const int here = stops_[at];
    until = terrain.work_until(here, day_, until - terrain.leg(here, after));
    latest_[at] = until;
    way_ += terrain.way(here, after);
    score_ += terrain.score(here);
    after = here;
  }
  if (count > 0) way_ += terrain.way(terrain.start(), after);
  return true;
}

}  // namespace beegarth::work::rounds
