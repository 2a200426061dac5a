#include "work/tours.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <limits>
#include <numeric>

namespace beegarth::work {

namespace {

constexpr double unknown = std::numeric_limits<double>::infinity();

double given(const TravelTable& table, std::size_t from, std::size_t to) {
  const auto& one_way = table.minutes[from][to];
  if (one_way) return *one_way;
  const auto& other_way = table.minutes[to][from];
  return other_way ? *other_way : unknown;
}

}  // namespace

Roads::Roads(const TravelTable& table, int sites) : size_(sites + 1) {
  const auto n = static_cast<std::size_t>(size_);
  minutes_.assign(n * n, 0);
  guessed_.assign(n * n, false);
  for (std::size_t a = 0; a < n; ++a)
    for (std::size_t b = 0; b < n; ++b)
      if (a != b) minutes_[a * n + b] = given(table, a, b);
  const std::vector<double> as_given = minutes_;
  for (std::size_t via = 0; via < n; ++via)  // the shortest way may lead past another place
    for (std::size_t a = 0; a < n; ++a)
      for (std::size_t b = 0; b < n; ++b)
        minutes_[a * n + b] = std::min(minutes_[a * n + b], minutes_[a * n + via] + minutes_[via * n + b]);
  for (std::size_t i = 0; i < n * n; ++i)
    guessed_[i] = !std::isfinite(as_given[i]) && std::isfinite(minutes_[i]);
}

bool Roads::reachable(int site) const {
  return std::isfinite(from_home(site)) && std::isfinite(to_home(site));
}

bool Roads::pieced_together(int a, int b) const {
  return guessed_[static_cast<std::size_t>(a + 1) * static_cast<std::size_t>(size_) +
                  static_cast<std::size_t>(b + 1)];
}

// Held & Karp 1962: the best way to have seen each subset and stand at each of its sites.
Round Roads::shortest_round(unsigned sites, int last) const {
  std::vector<int> members;
  for (int site = 0; site + 1 < size_; ++site)
    if ((sites >> static_cast<unsigned>(site)) & 1U) members.push_back(site);
  const std::size_t n = members.size();
  const std::size_t subsets = std::size_t{1} << n;
  std::vector<double> best(subsets * n, unknown);
  std::vector<std::size_t> before(subsets * n, n);
  for (std::size_t i = 0; i < n; ++i) best[(std::size_t{1} << i) * n + i] = from_home(members[i]);
  for (std::size_t seen = 1; seen < subsets; ++seen)
    for (std::size_t i = 0; i < n; ++i) {
      const double so_far = best[seen * n + i];
      if (!std::isfinite(so_far)) continue;
      for (std::size_t j = 0; j < n; ++j) {
        if ((seen >> j) & 1U) continue;
        const std::size_t next = seen | (std::size_t{1} << j);
        const double minutes = so_far + at(members[i] + 1, members[j] + 1);
        if (minutes < best[next * n + j]) {
          best[next * n + j] = minutes;
          before[next * n + j] = i;
        }
      }
    }
  const std::size_t all = subsets - 1;
  std::size_t end = n;
  Round round;
  round.minutes = unknown;
  for (std::size_t i = 0; i < n; ++i) {
    if (last >= 0 && members[i] != last) continue;
    const double minutes = best[all * n + i] + to_home(members[i]);
    if (minutes < round.minutes) {
      round.minutes = minutes;
      end = i;
    }
  }
  for (std::size_t seen = all, i = end; i < n;) {
    round.order.push_back(members[i]);
    const std::size_t came_from = before[seen * n + i];
    seen &= ~(std::size_t{1} << i);
    i = came_from;
  }
  std::reverse(round.order.begin(), round.order.end());
  round.legs = legs_of(round.order);
  return round;
}

Round Roads::turned(const Round& round) const {
  Round back{0, {round.order.rbegin(), round.order.rend()}, {}};
  back.legs = legs_of(back.order);
  back.minutes = std::accumulate(back.legs.begin(), back.legs.end(), 0.0);
  return back;
}

std::vector<double> Roads::legs_of(const std::vector<int>& order) const {
  std::vector<double> legs;
  int here = 0;
  for (const int site : order) {
    legs.push_back(at(here, site + 1));
    here = site + 1;
  }
  if (!order.empty()) legs.push_back(at(here, 0));
  return legs;
}

}  // namespace beegarth::work
