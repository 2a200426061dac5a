// One day's tour, kept so that whether one more place fits, and where, is seen without walking the whole of
// it (time slack forwards and backwards: Savelsbergh 1992).
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "work/rounds/terrain.hpp"

namespace beegarth::work::rounds {

// A gap of a tour: before stop `at`, or before the end.
struct Gap {
  std::size_t at = 0;
  Ticks way = 0;    // longer on the road
  Ticks later = 0;  // later at the next stop, or at the end
};

class Tour {
 public:
  Tour(const Terrain& terrain, int day) : terrain_(&terrain), day_(day) { reckon(0); }

  int day() const { return day_; }
  const std::vector<int>& stops() const { return stops_; }
  Ticks work_begins(std::size_t at) const { return begins_[at]; }
  Ticks back() const { return back_; }
  Ticks way() const { return way_; }
  Worth score() const { return score_; }

  // How it would be to see `place` in that gap; nothing where it does not fit in time.
  std::optional<Gap> gap(int place, std::size_t at) const;
  // No place that opens then fits in any gap before this one.
  std::size_t first_gap(Ticks opens) const;
  void insert(int place, std::size_t at);
  // Where a way past a third place is shorter than the direct one, what is left may not fit: then the whole
  // day is emptied.
  void remove(std::size_t from, std::size_t count);
  // The same places in another order, or others. False, and nothing changed, where the day is too short.
  bool become(std::span<const int> stops);

 private:
  bool reckon(std::size_t from);  // times from this stop on; the latest ones, all

  const Terrain* terrain_;
  int day_;
  std::vector<int> stops_;
  std::vector<Ticks> begins_;  // of the work at each stop
  std::vector<Ticks> latest_;  // the last moment at which it can begin, and all that follows still fits
  Ticks back_ = 0, way_ = 0;
  Worth score_ = 0;
};

}  // namespace beegarth::work::rounds
