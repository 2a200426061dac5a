#include "belief/trace.hpp"

#include <algorithm>
#include <numeric>

#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

// Members keep nearly the same order from one day to the next, so that sorting by insertion from yesterday's
// order is quick. Ties go by the member's number: the order does not depend on how it was reached.
void sort_from(std::vector<int>& order, std::span<const float> values) {
  const auto before = [&](int a, int b) {
    const float x = values[static_cast<std::size_t>(a)];
    const float y = values[static_cast<std::size_t>(b)];
    return x != y ? x < y : a < b;
  };
  std::size_t shifts = 0;
  for (std::size_t i = 1; i < order.size(); ++i) {
    const int member = order[i];
    std::size_t j = i;
    for (; j > 0 && before(member, order[j - 1]); --j) order[j] = order[j - 1];
    order[j] = member;
    shifts += i - j;
    if (shifts > 16 * order.size()) {  // a wild day
      std::sort(order.begin(), order.end(), before);
      return;
    }
  }
}

// One pass over the sorted members for all levels; see weighted_quantile for the rule.
std::array<double, 7> levels_of(std::span<const float> values, std::span<const double> weights,
                                std::span<const int> order) {
  std::array<double, 7> levels{};
  std::size_t next = 0;
  double reached = 0;
  double last_middle = 0;
  double last_value = 0;
  for (const int member : order) {
    const auto i = static_cast<std::size_t>(member);
    if (weights[i] <= 0) continue;
    const double middle = reached + 0.5 * weights[i];
    const double value = values[i];
    while (next < levels.size() && middle >= facts::fan_levels[next]) {
      const double part =
          last_middle > 0 ? (facts::fan_levels[next] - last_middle) / (middle - last_middle) : 1.0;
      levels[next++] = last_middle > 0 ? last_value + part * (value - last_value) : value;
    }
    if (next == levels.size()) return levels;
    reached += weights[i];
    last_middle = middle;
    last_value = value;
  }
  while (next < levels.size()) levels[next++] = last_value;
  return levels;
}

}  // namespace

Trace::Trace(Date from, int day_count, int member_count)
    : began(from), days(day_count), members(member_count) {
  const std::size_t cells = static_cast<std::size_t>(days + 1) * static_cast<std::size_t>(members);
  for (auto& column : values) column.assign(cells, 0.0F);
  alive.assign(cells, 0.0F);
  for (auto& first : first_day) first.assign(static_cast<std::size_t>(members), never_happens);
}

std::vector<facts::Fan> fans_of(const Trace& trace, std::span<const double> weights, int last) {
  std::vector<facts::Fan> fans;
  for (std::size_t q = 0; q < fan_count; ++q) {
    facts::Fan fan{std::string(quantity_names[q].name), std::string(quantity_names[q].unit), {}, {}};
    std::vector<int> order(static_cast<std::size_t>(trace.members));
    std::iota(order.begin(), order.end(), 0);
    for (int day = 0; day <= last; ++day) {
      const auto row = trace.row(static_cast<Traced>(q), day);
      sort_from(order, row);
      fan.dates.push_back(trace.began + day);
      fan.levels.push_back(levels_of(row, weights, order));
    }
    fans.push_back(std::move(fan));
  }
  return fans;
}

}  // namespace beegarth::belief
