#include "garth/ledgers/comb_stays.hpp"

#include <algorithm>

namespace beegarth::garth {
namespace {

using entries::Entry;

class StayTeller {
 public:
  void tell(const Entry& entry) {
    day_ = entry.happened;
    std::visit([&](const auto& said) { take(said); }, entry.payload);
  }
  CombStays stays;

 private:
  void come_on(const CombsId& combs, const ColonyId& colony) {
    auto& stays_of = stays.batches[combs];
    if (!stays_of.empty() && !stays_of.back().until && stays_of.back().colony == colony) return;
    come_off(combs);
    stays_of.push_back({colony, {}});
  }
  void come_off(const CombsId& combs) {
    auto& stays_of = stays.batches[combs];
    if (!stays_of.empty() && !stays_of.back().until) stays_of.back().until = day_;
  }
  void taken_off(const ColonyId& colony, int combs) {
    if (combs > 0) stays.unnamed.push_back({colony, day_, combs});
  }

  void take(const entries::Hive& hive) {
    const auto [at, fresh] = stays.hives.try_emplace(hive.hive);
    const int boxes = hive.super_combs.value_or(at->second.boxes);
    for (const auto& [colony, home] : stays.homes) {
      if (!fresh && home == hive.hive) taken_off(colony, at->second.boxes - boxes);
    }
    at->second = {hive.brood_combs, boxes};
  }
  void take(const entries::ColonyBegan& began) { stays.homes[began.colony] = began.hive; }
  void take(const entries::ColonyMoved& moved) { stays.homes[moved.colony] = moved.hive; }
  void take(const entries::Transfer& moved) { stays.homes[moved.colony] = moved.hive; }
  void take(const entries::Split& split) { stays.homes[split.into] = split.hive; }
  void take(const entries::Unite& unite) {
    for (const auto& [combs, stays_of] : stays.batches) {
      if (!stays_of.empty() && !stays_of.back().until && stays_of.back().colony == unite.from)
        come_on(combs, unite.colony);
    }
    if (const auto home = stays.homes.find(unite.from); home != stays.homes.end()) {
      const HiveCombs& left = stays.hives[home->second];
      taken_off(unite.from, left.nest + left.boxes);
    }
  }
  void take(const entries::Room& room) {
    const int boxes = room.super_combs.value_or(0), nest = room.brood_combs.value_or(0);
    if (const auto home = stays.homes.find(room.colony); home != stays.homes.end()) {
      HiveCombs& there = stays.hives[home->second];
      there.boxes = std::max(0, there.boxes + boxes);
      there.nest = std::max(0, there.nest + nest);
    }
    if (room.combs && (boxes > 0 || nest > 0)) {
      come_on(*room.combs, room.colony);
    } else if (room.combs) {
      come_on(*room.combs, room.colony);  // they were there, unnamed until now
      come_off(*room.combs);
    } else {
      taken_off(room.colony, std::max(0, -boxes) + std::max(0, -nest));
    }
  }
  void take(const entries::Combs& combs) {
    if (combs.colony) come_on(combs.combs, *combs.colony);
  }
  void take(const entries::CombsMoved& moved) {
    if (moved.colony)
      come_on(moved.combs, *moved.colony);
    else
      come_off(moved.combs);
  }
  template <class Other>
  void take(const Other&) {}

  Date day_;
};

}  // namespace

CombStays comb_stays_on(std::span<const Entry> standing, Date day) {
  StayTeller teller;
  for (const Entry& entry : standing) {
    if (entry.happened > day) break;
    teller.tell(entry);
  }
  return std::move(teller.stays);
}

}  // namespace beegarth::garth
