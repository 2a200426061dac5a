// The courses of all members, day by day, as they are kept for the outlook.
#pragma once

#include <array>
#include <cstddef>
#include <limits>
#include <span>
#include <string_view>
#include <vector>

#include "base/date.hpp"
#include "facts/outlook.hpp"

namespace beegarth::belief {

enum class Traced {
  bees,
  brood_cells,
  stores_kg,
  mites,
  mites_per_100_bees,
  capped_cells,
  infested_share,
  weight_kg
};
inline constexpr std::size_t traced_count = 8;
inline constexpr std::size_t fan_count = 5;  // the first five are shown as fans

struct QuantityName {
  std::string_view name;
  std::string_view unit;
};
inline constexpr std::array<QuantityName, traced_count> quantity_names{
    {{"bees", "bees"},
     {"brood_cells", "cells"},
     {"stores_kg", "kg"},
     {"mites", "mites"},
     {"mites_per_100_bees", "mites per 100 bees"},
     {"capped_cells", "cells"},
     {"infested_share", "1"},
     {"weight_kg", "kg"}}};

inline constexpr std::size_t event_count = 9;
inline constexpr int never_happens = std::numeric_limits<int>::max();

// Values on the mornings of day 0 (the day it began) to day `days`. What is not shown as a fan is kept from
// the day `whole_from` on only, and is zero before.
struct Trace {
  Date began;
  int days = 0;
  int members = 0;
  int whole_from = 0;
  std::array<std::vector<float>, traced_count> values;  // [day * members + member]
  std::vector<float> alive;                             // the same; 1 or 0
  std::array<std::vector<int>, event_count> first_day;  // [member]; first day from today on, or never_happens

  Trace(Date from, int day_count, int member_count);
  std::size_t at(int day, int member) const {
    return static_cast<std::size_t>(day) * static_cast<std::size_t>(members) +
           static_cast<std::size_t>(member);
  }
  std::span<const float> row(Traced quantity, int day) const {
    return std::span(values[static_cast<std::size_t>(quantity)])
        .subspan(at(day, 0), static_cast<std::size_t>(members));
  }
};

// Quantiles over time, from day 0 to day `last`.
std::vector<facts::Fan> fans_of(const Trace& trace, std::span<const double> weights, int last);

}  // namespace beegarth::belief
