// Tours of single days worth keeping, from which plans are put together anew.
#pragma once

#include <cstdint>
#include <vector>

#include "work/rounds/tour.hpp"

namespace beegarth::work::rounds {

// A day's tour that was part of a plan worth keeping.
struct Column {
  int day = 0;  // one of those alike
  std::vector<int> stops;
  Worth score = 0;
  Ticks way = 0;
};

// Keeps of each set of places the quickest way round.
class Pool {
 public:
  void add(const Terrain& terrain, const Tour& tour);
  // The best `most` of them for each sort of day.
  std::vector<Column> best(std::size_t most) const;

 private:
  struct Entry {
    std::uint64_t key;
    Column column;
  };
  std::vector<Entry> entries_;
  std::vector<std::size_t> table_;  // open addressing: index into entries_ + 1
  void spread(std::size_t slots);
  void keep_better_half();
};

}  // namespace beegarth::work::rounds
