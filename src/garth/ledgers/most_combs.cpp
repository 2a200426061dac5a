#include "garth/ledgers/most_combs.hpp"

#include <algorithm>
#include <map>
#include <set>

namespace beegarth::garth {
namespace {

class HeldTeller {
 public:
  HeldTeller(const ColonyId& colony, Date from) : colony_(colony), from_(from) {}

  void tell(Date happened, const entries::Payload& payload) {
    late_ = happened >= from_;
    std::visit([&](const auto& said) { take(said); }, payload);
  }

  // Of the hives that it lived in since `from` the one that holds most.
  std::optional<MostCombs> most() const {
    std::set<HiveId> lived = left_lately_;
    if (const auto home = homes_.find(colony_); home != homes_.end()) lived.insert(home->second);
    std::optional<MostCombs> most;
    for (const HiveId& hive : lived) {
      const auto held = hives_.find(hive);
      if (held == hives_.end()) continue;
      if (!most || held->second.all() > most->all()) most = held->second;
    }
    return most;
  }

 private:
  MostCombs* hive_at(const ColonyId& colony) {
    const auto home = homes_.find(colony);
    if (home == homes_.end()) return nullptr;
    const auto held = hives_.find(home->second);
    return held == hives_.end() ? nullptr : &held->second;
  }
  void change(int& combs, int by) const {
    if (by > 0 || !late_) combs = std::max(0, combs + by);
  }
  void lives_in(const ColonyId& colony, const HiveId& hive) {
    const auto [home, fresh] = homes_.try_emplace(colony, hive);
    if (colony == colony_ && late_ && !fresh) left_lately_.insert(home->second);
    home->second = hive;
  }
  void hangs(const CombsId& combs, const ColonyId* on) {
    Batch& batch = batches_[combs];
    if (const auto was = hives_.find(batch.hive); was != hives_.end())
      change(was->second.others, -batch.count);
    batch.hive = {};
    MostCombs* hive = on == nullptr ? nullptr : hive_at(*on);
    if (hive == nullptr) return;
    hive->others += batch.count;
    batch.hive = hive->hive;
  }

  void take(const entries::Hive& hive) {
    MostCombs& held = hives_[hive.hive];
    const MostCombs was = held;
    held = {hive.hive, hive.brood_combs, hive.super_combs.value_or(was.boxes), 0,
            was.boxes_told || hive.super_combs.has_value()};
    if (!late_) return;
    held.nest = std::max(held.nest, was.nest);
    held.boxes = std::max(held.boxes, was.boxes);
    held.others = was.others;
  }
  void take(const entries::ColonyBegan& began) { lives_in(began.colony, began.hive); }
  void take(const entries::ColonyMoved& moved) { lives_in(moved.colony, moved.hive); }
  void take(const entries::Split& split) { lives_in(split.into, split.hive); }
  void take(const entries::Transfer& moved) {
    const MostCombs* old = hive_at(moved.colony);
    const int above = old == nullptr ? 0 : old->all();
    lives_in(moved.colony, moved.hive);
    using entries::TransferWay;
    MostCombs* hive = hive_at(moved.colony);
    if (hive != nullptr && (moved.how == TransferWay::grown_down || moved.how == TransferWay::grown_across))
      hive->others += above;
  }
  void take(const entries::Unite& unite) {
    MostCombs* hive = hive_at(unite.colony);
    const MostCombs* from = hive_at(unite.from);
    if (hive != nullptr && from != nullptr && from != hive) hive->others += from->all();
  }
  void take(const entries::Room& room) {
    MostCombs* hive = hive_at(room.colony);
    if (hive == nullptr) return;
    change(hive->nest, room.brood_combs.value_or(0));
    change(hive->boxes, room.super_combs.value_or(0));
    if (room.brood_combs.value_or(0) > 0 || room.super_combs.value_or(0) > 0) hive->boxes_told = true;
  }
  void take(const entries::Combs& combs) {
    hangs(combs.combs, nullptr);
    batches_[combs.combs].count = combs.count;
    if (combs.colony) hangs(combs.combs, &*combs.colony);
  }
  void take(const entries::CombsMoved& moved) { hangs(moved.combs, moved.colony ? &*moved.colony : nullptr); }
  template <class Other>
  void take(const Other&) {}

  struct Batch {
    int count = 0;
    HiveId hive;
  };
  ColonyId colony_;
  Date from_;
  bool late_ = false;
  std::map<HiveId, MostCombs> hives_;
  std::map<ColonyId, HiveId> homes_;
  std::map<CombsId, Batch> batches_;
  std::set<HiveId> left_lately_;
};

}  // namespace

std::optional<MostCombs> most_combs(std::span<const entries::Entry> standing,
                                    std::span<const book::Draft> told_with, const ColonyId& colony, Date from,
                                    Date day) {
  HeldTeller teller(colony, from);
  for (const entries::Entry& entry : standing) {
    if (entry.happened > day) break;
    teller.tell(entry.happened, entry.payload);
  }
  for (const book::Draft& draft : told_with)
    if (draft.happened <= day) teller.tell(draft.happened, draft.payload);
  return teller.most();
}

}  // namespace beegarth::garth
