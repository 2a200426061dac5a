// The weather of one future, and of the days beyond its end.
#pragma once

#include <cstdint>

#include "facts/forcing.hpp"

namespace beegarth::belief {

// Days of a future, and beyond its end the nearest known days of the year. The paths must outlive it.
class WeatherAhead {
 public:
  WeatherAhead(const facts::ForcingPath& past, const facts::ForcingPath& future)
      : past_(past), future_(future) {}

  facts::DayForcing on(Date date) const;

 private:
  facts::DayForcing nearest_like(Date date) const;

  const facts::ForcingPath& past_;
  const facts::ForcingPath& future_;
};

// The seed of what is still to come: apart from the luck that was fitted, and the same for all choices.
constexpr std::uint64_t luck_to_come(std::uint64_t seed) {
  return seed ^ 0x9e3779b97f4a7c15ULL;
}

}  // namespace beegarth::belief
