// The question in whole numbers: times, scores and what is used up in millionths, so that sums do not depend
// on their order and a way that just fits does fit.
#pragma once

#include <cstdint>
#include <span>
#include <vector>

#include "work/rounds/orienteering.hpp"

namespace beegarth::work::rounds {

using Ticks = std::int64_t;
using Worth = std::int64_t;

constexpr Ticks never = INT64_MAX / 4;
constexpr Ticks too_early = -1 - never;

struct Window {
  Ticks open, close;
};

class Terrain {
 public:
  explicit Terrain(const Question& question);

  int places() const { return places_; }
  int days() const { return days_; }
  int start() const { return places_; }    // as `from` of leg
  int end() const { return places_ + 1; }  // as `to` of leg
  Ticks begin() const { return begin_; }
  Ticks finish(int day) const { return finish_[index(day)]; }
  const std::vector<Worth>& scores() const { return score_; }
  Worth score(int place) const { return score_[index(place)]; }

  // From the beginning of work at `from` to the arrival at `to`: the work itself, and the way.
  Ticks leg(int from, int to) const { return leg_[index(from) * (index(places_) + 2) + index(to)]; }
  Ticks service(int place) const { return service_[index(place)]; }
  Ticks way(int from, int to) const { return leg(from, to) - service(from); }

  std::span<const Window> windows(int place, int day) const;
  // When work can begin there by one who arrives then: `never` where it is too late.
  Ticks work_from(int place, int day, Ticks arrival) const;
  // The last moment not after `moment` at which work can begin there: `too_early` where there is none.
  Ticks work_until(int place, int day, Ticks moment) const;

  // Days of the same length on which every place is open at the same times have the same number.
  int alike(int day) const { return alike_[index(day)]; }
  // All scores are multiples of this.
  Worth score_step() const { return score_step_; }

  std::size_t limits() const { return most_.size(); }
  std::int64_t most(std::size_t limit) const { return most_[limit]; }
  bool each_day(std::size_t limit) const { return each_day_[limit]; }
  std::int64_t uses(int place, std::size_t limit) const { return uses_[index(place) * most_.size() + limit]; }

 private:
  static std::size_t index(int i) { return static_cast<std::size_t>(i); }
  std::size_t slot(int place, int day) const { return index(place) * index(days_) + index(day); }
  void number_days_alike();

  int places_, days_;
  Ticks begin_;
  std::vector<Ticks> finish_, leg_, service_;
  std::vector<Worth> score_;
  std::vector<Window> windows_;
  std::vector<std::size_t> first_window_;  // of place and day, and one past the end
  std::vector<int> alike_;
  Worth score_step_ = 1;
  std::vector<std::int64_t> most_, uses_;
  std::vector<bool> each_day_;
};

// What is used up so far, of each limit, on each day and in the plan.
class Use {
 public:
  explicit Use(const Terrain& terrain)
      : terrain_(&terrain),
        plan_(terrain.limits()),
        day_(terrain.limits() * static_cast<std::size_t>(terrain.days())) {}
  bool room_for(int place, int day) const;
  void add(int place, int day, int times = 1);  // -1 gives back

 private:
  std::int64_t& of_day(int day, std::size_t limit) {
    return day_[static_cast<std::size_t>(day) * terrain_->limits() + limit];
  }
  std::int64_t of_day(int day, std::size_t limit) const {
    return day_[static_cast<std::size_t>(day) * terrain_->limits() + limit];
  }
  const Terrain* terrain_;
  std::vector<std::int64_t> plan_, day_;
};

}  // namespace beegarth::work::rounds
