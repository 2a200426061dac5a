#include "garth/ledgers/homes.hpp"

#include <algorithm>
#include <map>
#include <optional>
#include <utility>

#include "garth/plan/dwelling.hpp"

namespace beegarth::garth {
namespace {

struct RoomGiven {
  Date day;
  int brood = 0;
  int super = 0;
};

// What of a hive changes with time.
struct CombsTold {
  explicit CombsTold(const entries::Hive& hive)
      : brood(hive.brood_combs), super(hive.super_combs), undrawn(hive.undrawn_combs) {}
  int brood = 0;
  entries::Count super, undrawn;
  void put_into(entries::Hive& hive) const {
    hive.brood_combs = brood;
    hive.super_combs = super;
    hive.undrawn_combs = undrawn;
  }
};

class Housing {
 public:
  Housing(std::span<const entries::Entry> standing, const ColonyId& colony) : colony_(colony) {
    for (const entries::Entry& entry : standing) {
      const auto* hive = std::get_if<entries::Hive>(&entry.payload);
      if (hive == nullptr) continue;
      combs_.emplace(hive->hive, CombsTold(*hive));
      hives_.insert_or_assign(hive->hive, *hive);
    }
  }

  void take(const entries::Entry& entry) {
    std::visit([&](const auto& said) { take(entry.happened, said); }, entry.payload);
  }

  // On a morning, with all room given before that day.
  facts::Dwelling on(Date day) const { return with_room_before(day); }

  // On the morning of a day whose entries have come this far. Belief gives the room of that day after it has
  // changed the dwelling, so what was given of it by now is taken off: both together come to what it is.
  facts::Dwelling changed_on(Date day) const {
    facts::Dwelling dwelling = with_room_before(day + 1);
    for (const RoomGiven& room : own_room_) {
      if (room.day != day) continue;
      dwelling.brood_combs -= room.brood;
      dwelling.super_combs -= room.super;
    }
    return dwelling;
  }

  // What tells one dwelling from the next, room apart.
  struct Mark {
    std::optional<HiveId> hive;
    bool shared = false;
    int told_anew = 0;
    bool operator==(const Mark&) const = default;
  };
  Mark mark() const {
    const auto home = homes_.find(colony_);
    if (home == homes_.end()) return {};
    const auto anew = told_anew_.find(home->second);
    return {home->second, living_in(home->second) > 1, anew == told_anew_.end() ? 0 : anew->second};
  }

 private:
  facts::Dwelling with_room_before(Date day) const {
    const auto home = homes_.find(colony_);
    const auto hive = home == homes_.end() ? hives_.end() : hives_.find(home->second);
    if (hive == hives_.end()) return {};
    entries::Hive then = hive->second;
    combs_.at(hive->first).put_into(then);
    facts::Dwelling dwelling = dwelling_of(then);
    for (const auto& [colony, given] : rooms_) {
      if (homes_.at(colony) != hive->first) continue;
      for (const RoomGiven& room : given) {
        if (room.day >= day) continue;
        dwelling.brood_combs = std::max(0, dwelling.brood_combs + room.brood);
        dwelling.super_combs = std::max(0, dwelling.super_combs + room.super);
      }
    }
    return living_in(hive->first) > 1 ? half_of(dwelling) : dwelling;
  }
  void take(Date, const entries::Hive& hive) {
    CombsTold& known = combs_.at(hive.hive);
    const CombsTold before = std::exchange(known, CombsTold(hive));
    if (known.brood == before.brood && known.super == before.super) return;
    ++told_anew_[hive.hive];
    for (auto& [colony, given] : rooms_) {
      if (homes_.at(colony) == hive.hive) given.clear();
    }
  }
  void take(Date, const entries::ColonyBegan& began) { house(began.colony, began.hive); }
  void take(Date, const entries::ColonyMoved& moved) { house(moved.colony, moved.hive); }
  void take(Date, const entries::Transfer& transfer) { house(transfer.colony, transfer.hive); }
  void take(Date, const entries::Split& split) { house(split.into, split.hive); }
  void take(Date, const entries::ColonyEnded& ended) { leave(ended.colony); }
  void take(Date, const entries::Unite& unite) { leave(unite.from); }
  void take(Date day, const entries::Room& room) {
    const RoomGiven given{day, room.brood_combs.value_or(0), room.super_combs.value_or(0)};
    if (room.colony == colony_) own_room_.push_back(given);
    if (homes_.contains(room.colony)) rooms_[room.colony].push_back(given);
  }
  template <class Other>
  void take(Date, const Other&) {}

  void house(const ColonyId& colony, const HiveId& hive) {
    const auto home = homes_.find(colony);
    if (home != homes_.end() && home->second == hive) return;
    rooms_.erase(colony);
    homes_.insert_or_assign(colony, hive);
  }
  void leave(const ColonyId& colony) {
    rooms_.erase(colony);
    homes_.erase(colony);
  }
  std::ptrdiff_t living_in(const HiveId& hive) const {
    return std::count_if(homes_.begin(), homes_.end(), [&](const auto& home) { return home.second == hive; });
  }

  const ColonyId& colony_;
  std::map<HiveId, entries::Hive> hives_;  // as told last: what a comb holds was so before it was said
  std::map<HiveId, CombsTold> combs_;      // as told by now; before that as they will be told first
  std::map<HiveId, int> told_anew_;
  std::map<ColonyId, HiveId> homes_;
  std::map<ColonyId, std::vector<RoomGiven>> rooms_;  // in the hive they live in
  std::vector<RoomGiven> own_room_;                   // in any
};

}  // namespace

Homes homes_of(std::span<const entries::Entry> standing, const ColonyId& colony, Date began) {
  Housing housing(standing, colony);
  Homes homes;
  auto entry = standing.begin();
  for (; entry != standing.end() && entry->happened <= began; ++entry) housing.take(*entry);
  homes.first = housing.on(began);
  for (; entry != standing.end(); ++entry) {
    const auto before = housing.mark();
    housing.take(*entry);
    const auto now = housing.mark();
    if (now == before || !now.hive) continue;
    if (!before.hive) {  // said to begin only later than it is followed
      homes.first = housing.on(began);
      continue;
    }
    const bool other_hive = now.hive != before.hive;
    if (!homes.later.empty() && homes.later.back().date == entry->happened) {
      homes.later.back() = {entry->happened, housing.changed_on(entry->happened),
                            other_hive || homes.later.back().other_combs};
    } else {
      homes.later.push_back({entry->happened, housing.changed_on(entry->happened), other_hive});
    }
  }
  return homes;
}

}  // namespace beegarth::garth
