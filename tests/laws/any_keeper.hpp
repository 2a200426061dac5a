// A keeper who tries to enter anything, in any order and with any dates: right, wrong, corrected and taken
// back. All invented.
#pragma once

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "base/random.hpp"
#include "unit/garth/told_book.hpp"

namespace beegarth::garth {

class AnyKeeper {
 public:
  explicit AnyKeeper(std::uint64_t seed)
      : ill_(seed % 2 == 0), stream_({.seed = seed, .purpose = Purpose::synthetic_truth}) {
    for (const char* key : {"old", "new"})
      book.must(day_of(1, 2),
                entries::Part{.part = PartId(key),
                              .name = key,
                              .origin = std::string(key) == "new" ? entries::PartOrigin::own_build
                                                                  : entries::PartOrigin::inherited});
    for (const char* key : {"c1", "c2", "found"})
      book.must(day_of(1, 2), entries::Combs{.combs = CombsId(key),
                                             .name = key,
                                             .count = 5,
                                             .use = entries::CombUse::honey,
                                             .origin = std::string(key) == "found"
                                                           ? std::optional(entries::CombOrigin::found)
                                                           : std::nullopt});
    book.must(day_of(1, 2), entries::Lot{.lot = LotId("lot"), .name = "Lot"});
    book.must(day_of(1, 2),
              entries::Patch{.patch = PatchId("slope"), .site = SiteId("bank"), .name = "Slope"});
    for (const char* key : {"q1", "q2", "q3"})
      book.must(day_of(1, 2), entries::QueenBegan{.queen = QueenId(key), .name = key});
    book.must(day_of(1, 2), entries::Hive{.hive = HiveId("h3"),
                                          .name = "h3",
                                          .site = SiteId("bank"),
                                          .type = "National",
                                          .brood_combs_max = 14,
                                          .super_combs_max = 20});
    book.must(day_of(1, 3), entries::Assembled{.hive = HiveId("h4"), .parts = {PartId("new")}});
    colonies_ = {alder, birch};
  }

  void try_things(int times) {
    for (int i = 0; i < times; ++i) try_something();
  }

  ToldBook book;
  int kept = 0;

 private:
  void try_something() {
    const Date day = day_of(3, 1) + below(150);
    std::optional<EntryId> supersedes;
    if (below(12) == 0) supersedes = any_entry().id;
    entries::Payload payload = supersedes && below(2) ? any_like(*supersedes) : something();
    // Stocks are seldom united unless both were looked through before.
    if (const auto* unite = std::get_if<entries::Unite>(&payload); unite && below(3) > 0)
      for (const auto& one : {unite->colony, unite->from}) book.say(day, entries::Inspection{.colony = one});
    if (book.say(day, std::move(payload), supersedes).empty()) ++kept;
  }

  int below(int n) { return std::min(n - 1, static_cast<int>(stream_.uniform() * n)); }
  template <class T>
  const T& one_of(const std::vector<T>& all) {
    return all[static_cast<std::size_t>(below(static_cast<int>(all.size())))];
  }
  const entries::Entry& any_entry() { return one_of(book.all()); }
  // The entry said again: with the same words, on another day.
  entries::Payload any_like(const EntryId& id) const {
    for (const auto& entry : book.all())
      if (entry.id == id) return entry.payload;
    return entries::Note{.text = "nothing"};
  }
  ColonyId colony() { return one_of(colonies_); }
  HiveId hive() { return HiveId("h" + std::to_string(1 + below(4))); }
  SiteId site() { return SiteId(below(2) ? "bank" : "yard"); }
  CombsId combs() { return CombsId(one_of(std::vector<std::string>{"c1", "c2", "found"})); }
  QueenId queen() { return QueenId("q" + std::to_string(1 + below(3))); }
  std::optional<PatchId> patch() { return below(2) ? std::optional(PatchId("slope")) : std::nullopt; }
  ColonyId fresh() {
    ColonyId id("n" + std::to_string(++born_));
    return id;
  }

  entries::Payload something() {
    switch (below(6)) {
      case 0:
        return look();
      case 1:
        return move();
      case 2:
        return boxes();
      case 3:
        return give();
      case 4:
        return produce();
      default:
        return rest();
    }
  }
  entries::Payload look() {
    if (ill_ && below(12) == 0) return ropy(colony());
    if (ill_ && below(5) == 0) return entries::Cleared{.colony = colony(), .by = "the inspector"};
    return entries::Inspection{
        .colony = colony(), .look = static_cast<entries::Look>(below(3)), .capped_brood = below(3) > 0};
  }
  entries::Payload move() {
    switch (below(8)) {
      case 0:
        return entries::ColonyMoved{.colony = colony(), .hive = hive()};
      case 1:
        return entries::Transfer{.colony = colony(), .hive = hive()};
      case 2:
      case 3:
        return entries::Unite{.colony = colony(), .from = colony()};
      case 4: {
        const ColonyId into = fresh();
        colonies_.push_back(into);
        return entries::Split{.colony = colony(), .into = into, .name = into.text(), .hive = hive()};
      }
      case 5: {
        const ColonyId began = fresh();
        colonies_.push_back(began);
        return entries::ColonyBegan{.colony = began,
                                    .name = began.text(),
                                    .hive = hive(),
                                    .how = static_cast<entries::Beginning>(below(5))};
      }
      case 6:
        return entries::ColonyEnded{.colony = colony(), .how = static_cast<entries::Ending>(below(5))};
      default:
        return below(2) ? entries::Quarantine{.colony = colony(), .until = day_of(3, 1) + below(150)}
                        : entries::Quarantine{.colony = colony(), .lifted = true};
    }
  }
  entries::Payload boxes() {
    switch (below(6)) {
      case 0:
      case 1: {
        entries::Room room{.colony = colony(), .super_combs = 10 * (below(4) - 1)};
        if (below(3) == 0) room.undrawn = std::max(0, *room.super_combs);
        if (below(4) == 0) room.combs = combs();
        return room;
      }
      case 2:
        return entries::Room{.colony = colony(), .brood_combs = 2 * (below(4) - 1)};
      case 3:
        return entries::CombsMoved{.combs = combs(), .to = entries::CombsGo::on_hive, .colony = colony()};
      case 4:
        return entries::CombsMoved{.combs = combs(), .to = entries::CombsGo::into_store};
      default: {
        entries::Hive told{.hive = hive(), .name = "told", .site = site(), .type = "National"};
        told.super_combs_max = 20;
        if (below(2)) told.super_combs = 10 * below(3);
        told.two_colonies = below(4) == 0;
        return told;
      }
    }
  }
  entries::Payload give() {
    switch (below(4)) {
      case 0:
        return entries::Feed{
            .colony = colony(), .kg = 2, .source = static_cast<entries::FeedSource>(below(5))};
      case 1:
        return entries::Treatment{
            .colony = colony(), .kind = static_cast<entries::TreatmentKind>(below(10)), .days = 7};
      case 2:
        return entries::Queen{
            .colony = colony(), .event = static_cast<entries::QueenEvent>(below(13)), .which = queen()};
      default:
        return entries::QueenBegan{.queen = queen(), .name = "Q", .mother = queen()};
    }
  }
  entries::Payload produce() {
    switch (below(6)) {
      case 0:
        return entries::Harvest{.colony = colony(), .kg = 4, .lot = LotId("lot"), .from = {combs()}};
      case 1:
      case 2:
        return entries::Harvest{.colony = colony(), .kg = 4, .lot = LotId("lot")};
      case 3:
        return entries::Jars{.lot = LotId("lot"), .jars = 3, .net_g = 340};
      case 4:
        return entries::Extraction{.lot = LotId("lot"), .wet_combs_back = true};
      default: {
        entries::Sale sale{.what = static_cast<entries::Goods>(below(8)), .description = "sold"};
        if (below(2)) sale.colony = colony();
        if (below(2)) sale.lot = LotId("lot");
        if (below(2)) sale.jars = 1;
        return sale;
      }
    }
  }
  entries::Payload rest() {
    switch (below(9)) {
      case 0:
      case 1:
        return entries::PartNow{.part = PartId(below(2) ? "old" : "new"),
                                .state = static_cast<entries::PartState>(below(9))};
      case 2:
        return entries::Assembled{.hive = hive(), .parts = {PartId(below(2) ? "old" : "new")}};
      case 3:
        return entries::KeeperRule{.rule = static_cast<entries::Refusal>(below(9)), .kept = below(2) == 0};
      case 4:
        return entries::Nest{.site = site(), .patch = {}, .place = "here", .gone = below(3) > 0};
      case 5:
        return entries::Cut{.site = site(), .patch = patch(), .what = "grass"};
      case 6:
        return entries::PlantCare{.site = site(),
                                  .patch = patch(),
                                  .plant = "thyme",
                                  .deed = static_cast<entries::PlantDeed>(below(6))};
      default:
        return entries::Removed{.entry = any_entry().id};
    }
  }

  bool ill_;  // only every other keeper sees signs of disease: they stop so much else
  Stream stream_;
  std::vector<ColonyId> colonies_;
  int born_ = 0;
};

}  // namespace beegarth::garth
