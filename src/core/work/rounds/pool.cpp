#include "work/rounds/pool.hpp"

#include <algorithm>

namespace beegarth::work::rounds {
namespace {

constexpr std::size_t most_kept = 200'000;  // about 40 MB

std::uint64_t key_of(int day, std::vector<int> stops) {
  std::sort(stops.begin(), stops.end());
  std::uint64_t hash = 14695981039346656037ULL + static_cast<std::uint64_t>(day);
  for (const int stop : stops) {
    hash ^= static_cast<std::uint64_t>(stop) + 1;
    hash *= 1099511628211ULL;
    hash ^= hash >> 29;
  }
  return hash;
}

}  // namespace

void Pool::spread(std::size_t slots) {
  table_.assign(slots, 0);
  for (std::size_t i = 0; i < entries_.size(); ++i) {
    std::size_t slot = entries_[i].key & (table_.size() - 1);
    while (table_[slot] != 0) slot = (slot + 1) & (table_.size() - 1);
    table_[slot] = i + 1;
  }
}

void Pool::add(const Terrain& terrain, const Tour& tour) {
  if (tour.stops().empty()) return;
  if (entries_.size() >= most_kept) keep_better_half();
  if (table_.size() < 2 * (entries_.size() + 1)) spread(std::max<std::size_t>(1024, table_.size() * 2));
  const int day = terrain.alike(tour.day());
  const std::uint64_t key = key_of(day, tour.stops());
  std::size_t slot = key & (table_.size() - 1);
  while (table_[slot] != 0 && entries_[table_[slot] - 1].key != key) slot = (slot + 1) & (table_.size() - 1);
  if (table_[slot] == 0) {
    entries_.push_back({key, {day, tour.stops(), tour.score(), tour.way()}});
    table_[slot] = entries_.size();
    return;
  }
  Column& known = entries_[table_[slot] - 1].column;
  if (tour.way() < known.way) known = {day, tour.stops(), tour.score(), tour.way()};
}

void Pool::keep_better_half() {
  std::stable_sort(entries_.begin(), entries_.end(),
                   [](const Entry& a, const Entry& b) { return a.column.score > b.column.score; });
  entries_.resize(entries_.size() / 2);
  spread(table_.size());
}

std::vector<Column> Pool::best(std::size_t most) const {
  std::vector<Column> all;
  for (const Entry& entry : entries_) all.push_back(entry.column);
  std::stable_sort(all.begin(), all.end(), [](const Column& a, const Column& b) {
    return a.day != b.day ? a.day < b.day : a.score > b.score;
  });
  std::vector<Column> kept;
  std::size_t of_day = 0;
  for (const Column& column : all) {
    if (kept.empty() || kept.back().day != column.day) of_day = 0;
    if (of_day++ < most) kept.push_back(column);
  }
  return kept;
}

}  // namespace beegarth::work::rounds
