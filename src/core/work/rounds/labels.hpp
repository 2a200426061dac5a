// The best single tour of a day, exactly, by following every way of beginning (or ending) it that could still
// lead to the best one (label setting: Feillet et al. 2004, Righini & Salani 2008). At first a partial tour
// forgets places it has left far behind; where the best one then sees a place twice, more is remembered
// (Righini & Salani 2008; Baldacci, Mingozzi & Roberti 2011). What is not yet finished is still a bound.
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "work/rounds/terrain.hpp"

namespace beegarth::work::rounds {

class PlaceSet {
 public:
  void add(int place) { words_[word(place)] |= bit(place); }
  bool has(int place) const { return (words_[word(place)] & bit(place)) != 0; }
  bool within(const PlaceSet& other) const {
    for (std::size_t i = 0; i < words_.size(); ++i)
      if ((words_[i] & ~other.words_[i]) != 0) return false;
    return true;
  }
  bool meets(const PlaceSet& other) const {
    for (std::size_t i = 0; i < words_.size(); ++i)
      if ((words_[i] & other.words_[i]) != 0) return true;
    return false;
  }
  bool operator<(const PlaceSet& other) const { return words_ < other.words_; }
  PlaceSet both(const PlaceSet& other) const {
    PlaceSet set;
    for (std::size_t i = 0; i < words_.size(); ++i) set.words_[i] = words_[i] & other.words_[i];
    return set;
  }

 private:
  static std::size_t word(int place) { return static_cast<std::size_t>(place) / 64; }
  static std::uint64_t bit(int place) { return std::uint64_t{1} << (place % 64); }
  std::array<std::uint64_t, (most_places + 63) / 64> words_{};
};

// What may be spent on labels; counted in labels looked at.
struct Work {
  std::int64_t left = 0;
  bool spend(std::int64_t amount) {
    left -= amount;
    return left >= 0;
  }
};

// A partial tour seen from one end: what it has gathered, and when (backwards: the negative of the latest
// moment).
struct Reach {
  Ticks moment = 0;
  Worth worth = 0;
};

// What the search for tours knows of the roads, whatever the day.
struct Ways {
  explicit Ways(const Terrain& terrain);
  std::vector<PlaceSet> near;   // of each place, and itself
  std::vector<bool> short_cut;  // the way past this place can be quicker than the direct one
  std::vector<Ticks> to_end,
      from_start;  // least time: from the beginning of work there; to the arrival there
};

class BestTour {
 public:
  BestTour(const Terrain& terrain, const Ways& ways, int day);

  struct Found {
    bool finished = false;   // within the work allowed
    Worth bound = 0;         // where finished: no tour is worth more
    bool simple = true;      // `stops` sees no place twice, or nothing above `known` was found
    std::vector<int> stops;  // of worth `bound`, where that is more than `known`
  };

  // The places are worth `worth` (may be negative); a tour worth `known` is at hand. One pass over the day
  // from the other end than the one before. Places worth nothing are left out where they are no short cut,
  // unless `every_place` is asked for.
  Found pass(const std::vector<Worth>& worth, Worth known, Work& work, bool every_place = false);
  // Passes until the best tour sees no place twice, or the work is spent: then the bound of the last pass
  // that was finished.
  Found solve(const std::vector<Worth>& worth, Worth known, Work& work);
  // Every tour worth `least` or more: of each set of places one. False where there are more than `most`, or
  // the work was spent.
  bool every(const std::vector<Worth>& worth, Worth least, Work& work, std::size_t most,
             std::vector<std::vector<int>>& tours);
  // Forget what the passes before found; what is remembered of places stays.
  void forget_reaches();

 private:
  struct Pass;   // one pass, while it goes on
  struct Every;  // the search for every tour, while it goes on
  Ticks step(int from, int to, Ticks moment) const;
  bool at_end(int from, Ticks moment) const;
  bool in_time(int place, Ticks moment) const;
  bool hopeful(int place, Ticks moment, Worth worth, Worth own, Worth known) const;
  void remember(const std::vector<int>& stops);
  void keep_reaches(const Pass& pass);

  const Terrain* terrain_;
  const Ways* ways_;
  int day_;
  bool backwards_ = true;                    // the direction of the next pass
  std::vector<PlaceSet> memory_;             // of each place: what a tour still knows on arriving there
  std::vector<std::vector<Reach>> reaches_;  // of the pass before, from the other end; moments rising
  bool have_reaches_ = false;
};

}  // namespace beegarth::work::rounds
