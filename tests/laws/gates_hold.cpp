// Whatever a keeper tries to enter, in whatever order and with whatever dates: what was kept leaves every
// gate intact.
#include <gtest/gtest.h>

#include <set>

#include "base/random.hpp"
#include "garth/ledgers/parts.hpp"
#include "garth/ledgers/suspects.hpp"
#include "unit/garth/told_book.hpp"

namespace beegarth::garth {
namespace {

class Keeper {
 public:
  explicit Keeper(std::uint64_t seed) : stream_({.seed = seed, .purpose = Purpose::synthetic_truth}) {
    for (const char* key : {"old", "new"})
      book.must(day_of(1, 2),
                entries::Part{.part = PartId(key),
                              .name = key,
                              .origin = std::string(key) == "new" ? entries::PartOrigin::own_build
                                                                  : entries::PartOrigin::inherited});
    for (const char* key : {"c1", "c2"})
      book.must(
          day_of(1, 2),
          entries::Combs{.combs = CombsId(key), .name = key, .count = 5, .use = entries::CombUse::honey});
    book.must(day_of(1, 2), entries::Lot{.lot = LotId("lot"), .name = "Lot"});
  }

  void try_something() {
    const Date day = day_of(3, 1) + below(120);
    if (book.say(day, something()).empty()) ++kept;
  }

  ToldBook book;
  int kept = 0;

 private:
  int below(int n) { return std::min(n - 1, static_cast<int>(stream_.uniform() * n)); }
  ColonyId colony() { return below(2) ? alder : birch; }
  HiveId hive() { return HiveId("h" + std::to_string(1 + below(4))); }
  CombsId combs() { return CombsId("c" + std::to_string(1 + below(2))); }

  entries::Payload something() {
    switch (below(16)) {
      case 0:
        return below(4) ? entries::Payload(entries::Inspection{.colony = colony()})
                        : entries::Payload(ropy(colony()));
      case 1:
        return entries::Cleared{.colony = colony(), .by = "the inspector"};
      case 2:
        return entries::ColonyMoved{.colony = colony(), .hive = hive()};
      case 3:
        return entries::Transfer{.colony = colony(), .hive = hive()};
      case 4:
        return entries::Room{.colony = colony(), .super_combs = 10 * (below(3) - 1)};
      case 5:
        return entries::Feed{.colony = colony(), .kg = 2};
      case 6:
        return entries::Treatment{.colony = colony(), .kind = entries::TreatmentKind::formic, .days = 7};
      case 7:
        return entries::CombsMoved{.combs = combs(), .to = entries::CombsGo::on_hive, .colony = colony()};
      case 8:
        return entries::CombsMoved{.combs = combs(), .to = entries::CombsGo::into_store};
      case 9:
        return entries::Harvest{.colony = colony(), .kg = 4, .lot = LotId("lot"), .from = {combs()}};
      case 10:
        return entries::Harvest{.colony = colony(), .kg = 4, .lot = LotId("lot")};
      case 11:
        return entries::Jars{.lot = LotId("lot"), .jars = 3, .net_g = 340};
      case 12:
        return entries::PartNow{.part = PartId(below(2) ? "old" : "new"),
                                .state = static_cast<entries::PartState>(below(9))};
      case 13:
        return entries::Assembled{.hive = hive(), .parts = {PartId(below(2) ? "old" : "new")}};
      case 14:
        return entries::Removed{
            .entry = book.all()[static_cast<std::size_t>(below(static_cast<int>(book.all().size())))].id};
      default:
        return entries::Unite{.colony = colony(), .from = colony()};
    }
  }

  Stream stream_;
};

bool is_a_move(const entries::Payload& payload) {
  return std::holds_alternative<entries::ColonyMoved>(payload) ||
         std::holds_alternative<entries::Transfer>(payload) ||
         std::holds_alternative<entries::Room>(payload) || std::holds_alternative<entries::Feed>(payload) ||
         std::holds_alternative<entries::Unite>(payload) || std::holds_alternative<entries::Harvest>(payload);
}

// What was written before an entry, as it was known when the entry was kept.
std::vector<entries::Entry> known_before(const std::vector<entries::Entry>& all, std::size_t at) {
  return book::standing_entries(std::span(all).first(at), all[at].happened);
}

TEST(GatesHold, nothing_was_moved_to_or_from_a_colony_that_was_known_to_be_suspect) {
  int moves = 0, suspicions = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    Keeper keeper(seed);
    for (int i = 0; i < 60; ++i) keeper.try_something();
    const auto& all = keeper.book.all();
    for (std::size_t i = 0; i < all.size(); ++i) {
      suspicions += suspicious_signs(all[i].payload).empty() ? 0 : 1;
      if (!is_a_move(all[i].payload)) continue;
      ++moves;
      const auto suspects = suspects_on(known_before(all, i), all[i].happened);
      EXPECT_EQ(suspects.at(entries::colony_of(all[i].payload)), nullptr)
          << "seed " << seed << ", entry " << i;
    }
  }
  EXPECT_GT(moves, 300);
  EXPECT_GT(suspicions, 30);
}

TEST(GatesHold, no_suspicion_ends_but_by_the_inspector) {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    Keeper keeper(seed);
    for (int i = 0; i < 60; ++i) keeper.try_something();
    const auto& all = keeper.book.all();
    const Date last = day_of(12, 31);
    const auto suspects = suspects_on(keeper.book.standing(last), last);
    std::set<ColonyId> seen, cleared_or_gone;
    for (const auto& entry : book::standing_entries(all, last)) {
      if (std::holds_alternative<entries::Cleared>(entry.payload))
        cleared_or_gone.insert(entries::colony_of(entry.payload));
    }
    for (const auto& entry : all) {  // removed ones too
      if (!suspicious_signs(entry.payload).empty()) seen.insert(entries::colony_of(entry.payload));
    }
    for (const auto& colony : seen) {
      if (cleared_or_gone.contains(colony)) continue;
      EXPECT_NE(suspects.at(colony), nullptr) << "seed " << seed;
    }
  }
}

TEST(GatesHold, no_lot_is_offered_that_holds_honey_from_a_marked_comb) {
  int offered = 0, refused = 0;
  for (std::uint64_t seed = 1; seed <= 120; ++seed) {
    Keeper keeper(seed);
    for (int i = 0; i < 80; ++i) keeper.try_something();
    const Date last = day_of(12, 31);
    const HoneyLedger ledger = keeper.book.honey(last);
    if (!ledger.faults_of(LotId("lot")).empty()) {
      ++refused;
      continue;
    }
    ++offered;
    // Told again from the entries alone: the batch was on no hive on a day when that hive was fed or treated.
    std::map<CombsId, ColonyId> on;
    std::set<CombsId> marked;
    for (const auto& entry : keeper.book.standing(last)) {
      if (const auto* moved = std::get_if<entries::CombsMoved>(&entry.payload)) {
        on.erase(moved->combs);
        if (moved->colony) on.emplace(moved->combs, *moved->colony);
      }
      const bool doses = std::holds_alternative<entries::Feed>(entry.payload) ||
                         std::holds_alternative<entries::Treatment>(entry.payload);
      for (const auto& [batch, colony] : on) {
        if (doses && colony == entries::colony_of(entry.payload)) marked.insert(batch);
      }
      const auto* harvest = std::get_if<entries::Harvest>(&entry.payload);
      if (harvest == nullptr || !harvest->lot) continue;
      for (const auto& batch : harvest->from) EXPECT_FALSE(marked.contains(batch)) << "seed " << seed;
    }
  }
  EXPECT_GT(offered, 5);
  EXPECT_GT(refused, 5);
}

TEST(GatesHold, no_hive_is_put_together_of_kit_that_was_not_usable) {
  int assembled = 0;
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    Keeper keeper(seed);
    for (int i = 0; i < 60; ++i) keeper.try_something();
    const auto& all = keeper.book.all();
    for (std::size_t i = 0; i < all.size(); ++i) {
      const auto* hive = std::get_if<entries::Assembled>(&all[i].payload);
      if (hive == nullptr) continue;
      ++assembled;
      const auto parts = parts_on(known_before(all, i), all[i].happened);
      for (const auto& part : hive->parts) {
        ASSERT_TRUE(parts.contains(part));
        EXPECT_EQ(parts.at(part).state, entries::PartState::usable) << "seed " << seed;
      }
    }
  }
  EXPECT_GT(assembled, 20);
}

}  // namespace
}  // namespace beegarth::garth
