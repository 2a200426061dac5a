// Each gate told again in the plainest way, by nothing but the entries, for whatever a keeper tried to enter.
// What was kept must hold by what was known when it was kept. None of this asks the ledgers that the gates
// ask.
#include <gtest/gtest.h>

#include <cstdlib>
#include <functional>
#include <map>
#include <set>

#include "laws/any_keeper.hpp"

namespace beegarth::garth {
namespace {

using entries::Entry;
using Known = std::vector<Entry>;  // what counted when an entry was kept, until its day, oldest first

bool is_long() {
  const char* wish = std::getenv("BEEGARTH_LONG");
  return wish != nullptr && std::string(wish) == "yes";
}
int keepers() {
  return is_long() ? 600 : 60;
}

template <class Kind>
const Kind* as(const Entry& entry) {
  return std::get_if<Kind>(&entry.payload);
}

using Told = std::function<void(const Known&, const Entry&)>;

// Every entry that was kept, with what was known then. A correction is judged without what it corrects.
void each_kept(const Told& told) {
  for (int seed = 1; seed <= keepers(); ++seed) {
    SCOPED_TRACE("keeper " + std::to_string(seed));
    AnyKeeper keeper(static_cast<std::uint64_t>(seed));
    keeper.try_things(90);
    const auto& all = keeper.book.all();
    for (std::size_t i = 0; i < all.size(); ++i) {
      Known before(all.begin(), all.begin() + static_cast<std::ptrdiff_t>(i));
      std::erase_if(before, [&](const Entry& one) { return all[i].supersedes == one.id; });
      told(book::standing_entries(before, all[i].happened), all[i]);
    }
  }
}

// ---- honey ----
// Boxes on top of each colony, and whether they were on while it was given anything.
struct Boxes {
  int on = 0;
  bool dosed = false;
};

bool doses(const Entry& entry) {
  if (const auto* treatment = as<entries::Treatment>(entry))
    return treatment->kind != entries::TreatmentKind::drone_comb_removed &&
           treatment->kind != entries::TreatmentKind::brood_removed;
  return as<entries::Feed>(entry) != nullptr;
}

// Whether a crop of `colony` may hold what was given: its boxes were on then, or they came drawn and unnamed
// after boxes of which that is true had been taken off anywhere.
bool may_hold_doses(const Known& known, const ColonyId& colony) {
  std::map<ColonyId, Boxes> boxes;
  bool store_dosed = false;
  for (const Entry& entry : known) {
    if (doses(entry)) {
      Boxes& those = boxes[entries::colony_of(entry.payload)];
      those.dosed = those.dosed || those.on > 0;
    }
    const auto* room = as<entries::Room>(entry);
    if (room == nullptr || !room->super_combs) continue;
    Boxes& those = boxes[room->colony];
    if (*room->super_combs > 0) {
      those.on += *room->super_combs;
      those.dosed = those.dosed || (store_dosed && !room->combs && !room->undrawn);
    } else {
      if (those.on > 0 && !room->combs) store_dosed = store_dosed || those.dosed;
      those.on = std::max(0, those.on + *room->super_combs);
      if (those.on == 0) those.dosed = false;
    }
  }
  return boxes[colony].on > 0 && boxes[colony].dosed;
}

// Telling a hive again, moves and unions put boxes on and off as well: books without them are plainly told.
bool boxes_come_by_room_only(const Known& known) {
  return std::none_of(known.begin(), known.end(), [](const Entry& entry) {
    const auto* hive = as<entries::Hive>(entry);
    return (hive && hive->super_combs) || as<entries::Unite>(entry) || as<entries::Transfer>(entry);
  });
}

TEST(GatesRetold, no_crop_for_people_is_of_boxes_that_were_on_while_the_bees_were_fed_or_treated) {
  int crops = 0, kept_back = 0;
  each_kept([&](const Known& known, const Entry& entry) {
    const auto* harvest = as<entries::Harvest>(entry);
    if (harvest == nullptr || !harvest->from.empty() || !boxes_come_by_room_only(known)) return;
    ++crops;
    EXPECT_FALSE(may_hold_doses(known, harvest->colony)) << entry.id.text();
  });
  EXPECT_GT(crops, 10);
  // And there is such honey to be refused in these books.
  for (int seed = 1; seed <= 60; ++seed) {
    AnyKeeper keeper(static_cast<std::uint64_t>(seed));
    keeper.try_things(90);
    for (const auto& colony : {alder, birch})
      kept_back += may_hold_doses(keeper.book.standing(day_of(12, 1)), colony) ? 1 : 0;
  }
  EXPECT_GT(kept_back, 5);
}

TEST(GatesRetold, no_honey_is_sold_without_its_lot_where_a_lot_is_known) {
  int sales = 0;
  each_kept([&](const Known& known, const Entry& entry) {
    const auto* sale = as<entries::Sale>(entry);
    const bool asks = std::any_of(known.begin(), known.end(), [](const Entry& one) {
      return as<entries::Lot>(one) || as<entries::Harvest>(one);
    });
    if (sale == nullptr || !asks) return;
    ++sales;
    EXPECT_FALSE((sale->what == entries::Goods::honey || sale->jars) && !sale->lot);
  });
  EXPECT_GT(sales, 10);
}

// ---- suspect ----
TEST(GatesRetold, no_batch_hangs_elsewhere_that_was_on_a_colony_in_the_year_before_its_sign) {
  int moved = 0;
  each_kept([&](const Known& known, const Entry& entry) {
    const auto* moves = as<entries::CombsMoved>(entry);
    if (moves == nullptr || !moves->colony) return;
    ++moved;
    std::set<ColonyId> been_on, suspect;
    for (const Entry& one : known) {
      const auto* before = as<entries::CombsMoved>(one);
      if (before && before->combs == moves->combs && before->colony) been_on.insert(*before->colony);
      if (as<entries::Sign>(one)) suspect.insert(entries::colony_of(one.payload));
      if (const auto* word = as<entries::Cleared>(one)) suspect.erase(word->colony);
    }
    for (const auto& colony : been_on)
      EXPECT_FALSE(suspect.contains(colony)) << moves->combs.text() << " was on " << colony.text();
  });
  EXPECT_GT(moved, 20);
}

// ---- quarantine and uniting ----
// Simply: from the day it came, or that was said, until it is lifted, the day is over, or after six weeks a
// full look through sealed brood.
bool in_quarantine(const Known& known, const ColonyId& colony, Date day) {
  bool from_outside = false;
  Date came, until = *Date::from_ymd(1900, 1, 1);
  for (const Entry& entry : known) {
    if (const auto* began = as<entries::ColonyBegan>(entry); began && began->colony == colony) {
      from_outside = began->how == entries::Beginning::swarm || began->how == entries::Beginning::unknown;
      came = entry.happened + 42;
    }
    if (const auto* said = as<entries::Quarantine>(entry); said && said->colony == colony) {
      if (said->lifted.value_or(false)) {
        from_outside = false;
        until = *Date::from_ymd(1900, 1, 1);
      } else {
        until = *said->until;
        came = std::max(came, until);
      }
    }
    const auto* look = as<entries::Inspection>(entry);
    const bool full = look && look->colony == colony && look->look == entries::Look::full &&
                      look->capped_brood.value_or(false);
    if (full && from_outside && entry.happened >= came) from_outside = false, until = came;
  }
  return from_outside || until >= day;
}

TEST(GatesRetold, no_stock_in_quarantine_is_united_split_or_sold) {
  int deeds = 0, apart = 0;
  each_kept([&](const Known& known, const Entry& entry) {
    std::vector<ColonyId> touched;
    if (const auto* unite = as<entries::Unite>(entry)) touched = {unite->colony, unite->from};
    if (const auto* split = as<entries::Split>(entry)) touched = {split->colony};
    if (const auto* sale = as<entries::Sale>(entry);
        sale && sale->colony && (sale->what == entries::Goods::bees || sale->what == entries::Goods::queen))
      touched = {*sale->colony};
    if (const auto* ended = as<entries::ColonyEnded>(entry);
        ended && (ended->how == entries::Ending::sold || ended->how == entries::Ending::given_away))
      touched = {ended->colony};
    for (const auto& colony : touched) {
      ++deeds;
      EXPECT_FALSE(in_quarantine(known, colony, entry.happened)) << entries::kind_name(entry.payload);
    }
    for (const auto& colony : {alder, birch, ColonyId("n1"), ColonyId("n2")})
      apart += in_quarantine(known, colony, entry.happened) ? 1 : 0;
  });
  EXPECT_GT(deeds, 50);
  EXPECT_GT(apart, 50);
}

TEST(GatesRetold, no_stocks_are_united_whose_brood_was_not_looked_through) {
  int united = 0;
  each_kept([&](const Known& known, const Entry& entry) {
    const auto* unite = as<entries::Unite>(entry);
    if (unite == nullptr) return;
    ++united;
    for (const auto& colony : {unite->colony, unite->from})
      EXPECT_TRUE(std::any_of(known.begin(), known.end(), [&](const Entry& one) {
        const auto* look = as<entries::Inspection>(one);
        return look && look->colony == colony && look->look == entries::Look::full &&
               entry.happened - one.happened <= 14;
      })) << colony.text();
  });
  EXPECT_GT(united, 5);
}

// ---- kit and hives ----
TEST(GatesRetold, no_bees_go_into_a_hive_with_a_part_that_is_not_usable_or_onto_combs_that_were_found) {
  int into_built = 0;
  each_kept([&](const Known& known, const Entry& entry) {
    if (const auto* moved = as<entries::CombsMoved>(entry); moved && moved->colony) {
      EXPECT_NE(moved->combs.text(), "found");
    }
    if (const auto* room = as<entries::Room>(entry);
        room && room->combs && (room->super_combs.value_or(0) > 0 || room->brood_combs.value_or(0) > 0)) {
      EXPECT_NE(room->combs->text(), "found");
    }
    HiveId hive;
    if (const auto* moved = as<entries::ColonyMoved>(entry)) hive = moved->hive;
    if (const auto* moved = as<entries::Transfer>(entry)) hive = moved->hive;
    if (const auto* split = as<entries::Split>(entry)) hive = split->hive;
    std::vector<PartId> parts;
    std::map<PartId, entries::PartState> now;
    for (const Entry& one : known) {
      if (const auto* built = as<entries::Assembled>(one); built && built->hive == hive) parts = built->parts;
      if (const auto* said = as<entries::PartNow>(one)) now[said->part] = said->state;
    }
    for (const auto& part : parts) {
      ++into_built;
      if (!now.contains(part)) continue;
      EXPECT_TRUE(now[part] == entries::PartState::usable || now[part] == entries::PartState::worn_out)
          << part.text() << " in " << hive.text();
    }
  });
  EXPECT_GT(into_built, 5);
}

TEST(GatesRetold, no_hive_is_given_more_boxes_than_it_takes) {
  int given = 0;
  each_kept([&](const Known& known, const Entry& entry) {
    const auto* room = as<entries::Room>(entry);
    if (room == nullptr || room->super_combs.value_or(0) <= 0) return;
    std::map<ColonyId, HiveId> home;
    std::map<HiveId, int> boxes;
    std::map<HiveId, std::optional<int>> most;
    for (const Entry& one : known) {
      if (const auto* began = as<entries::ColonyBegan>(one)) home[began->colony] = began->hive;
      if (const auto* moved = as<entries::ColonyMoved>(one)) home[moved->colony] = moved->hive;
      if (const auto* moved = as<entries::Transfer>(one)) home[moved->colony] = moved->hive;
      if (const auto* split = as<entries::Split>(one)) home[split->into] = split->hive;
      if (const auto* hive = as<entries::Hive>(one)) {
        boxes[hive->hive] = hive->super_combs.value_or(boxes[hive->hive]);
        most[hive->hive] = hive->super_combs_max;
      }
      if (const auto* before = as<entries::Room>(one))
        boxes[home[before->colony]] =
            std::max(0, boxes[home[before->colony]] + before->super_combs.value_or(0));
    }
    const HiveId hive = home[room->colony];
    if (!most[hive]) return;
    ++given;
    EXPECT_LE(boxes[hive] + *room->super_combs, *most[hive]);
  });
  EXPECT_GT(given, 5);
}

TEST(GatesRetold, no_hive_holds_a_second_colony_and_no_dead_colony_is_worked_on) {
  int deeds = 0;
  each_kept([&](const Known& known, const Entry& entry) {
    const ColonyId colony = entries::colony_of(entry.payload);
    const bool deed = as<entries::Feed>(entry) || as<entries::Room>(entry) || as<entries::Treatment>(entry) ||
                      as<entries::ColonyMoved>(entry) || as<entries::Transfer>(entry);
    std::map<ColonyId, HiveId> home;
    bool two = false;
    HiveId hive;
    if (const auto* moved = as<entries::ColonyMoved>(entry)) hive = moved->hive;
    if (const auto* moved = as<entries::Transfer>(entry)) hive = moved->hive;
    for (const Entry& one : known) {
      if (const auto* began = as<entries::ColonyBegan>(one)) home[began->colony] = began->hive;
      if (const auto* moved = as<entries::ColonyMoved>(one)) home[moved->colony] = moved->hive;
      if (const auto* moved = as<entries::Transfer>(one)) home[moved->colony] = moved->hive;
      if (const auto* split = as<entries::Split>(one)) home[split->into] = split->hive;
      if (const auto* ended = as<entries::ColonyEnded>(one)) home.erase(ended->colony);
      if (const auto* unite = as<entries::Unite>(one)) home.erase(unite->from);
      if (const auto* told = as<entries::Hive>(one); told && told->hive == hive)
        two = told->two_colonies.value_or(false);
    }
    if (!deed) return;
    ++deeds;
    EXPECT_TRUE(home.contains(colony)) << entries::kind_name(entry.payload);
    home.erase(colony);
    const auto there =
        std::count_if(home.begin(), home.end(), [&](const auto& one) { return one.second == hive; });
    if (!hive.empty()) {
      EXPECT_LE(there, two ? 1 : 0);
    }
  });
  EXPECT_GT(deeds, 200);
}

// ---- feed, the keeper's own rules, nests ----
TEST(GatesRetold, no_rule_of_the_keeper_is_broken_and_no_honey_of_unknown_origin_is_fed) {
  int bound = 0;
  each_kept([&](const Known& known, const Entry& entry) {
    std::map<entries::Refusal, bool> rules;
    for (const Entry& one : known)
      if (const auto* rule = as<entries::KeeperRule>(one)) rules[rule->rule] = rule->kept;
    bound += rules[entries::Refusal::no_sugar] ? 1 : 0;
    const auto* feed = as<entries::Feed>(entry);
    const auto* queen = as<entries::Queen>(entry);
    const bool clipped = queen && queen->event == entries::QueenEvent::clipped;
    EXPECT_FALSE(feed && feed->source == entries::FeedSource::honey_of_unknown_origin);
    EXPECT_FALSE(feed && feed->source == entries::FeedSource::sugar && rules[entries::Refusal::no_sugar]);
    EXPECT_FALSE(as<entries::Unite>(entry) && rules[entries::Refusal::no_uniting]);
    EXPECT_FALSE(as<entries::Split>(entry) && rules[entries::Refusal::no_artificial_swarms]);
    EXPECT_FALSE(clipped && rules[entries::Refusal::no_clipping]);
  });
  EXPECT_GT(bound, 50);
}

TEST(GatesRetold, nothing_is_cut_at_a_site_with_a_nest_that_is_tied_to_no_patch) {
  int cuts = 0, nests = 0;
  each_kept([&](const Known& known, const Entry& entry) {
    std::map<SiteId, bool> locked;
    for (const Entry& one : known)
      if (const auto* nest = as<entries::Nest>(one)) locked[nest->site] = !nest->gone.value_or(false);
    for (const auto& [site, is] : locked) nests += is ? 1 : 0;
    const auto* cut = as<entries::Cut>(entry);
    if (cut == nullptr) return;
    ++cuts;
    EXPECT_FALSE(locked[cut->site]) << cut->site.text();
  });
  EXPECT_GT(cuts, 20);
  EXPECT_GT(nests, 50);
}

// ---- descent ----
TEST(GatesRetold, no_queen_descends_from_herself) {
  int mothers = 0;
  for (int seed = 1; seed <= keepers(); ++seed) {
    AnyKeeper keeper(static_cast<std::uint64_t>(seed));
    keeper.try_things(90);
    std::map<QueenId, QueenId> mother;
    for (const Entry& entry : keeper.book.standing(day_of(12, 31)))
      if (const auto* began = as<entries::QueenBegan>(entry)) {
        mother.erase(began->queen);
        if (began->mother) mother[began->queen] = *began->mother;
      }
    for (const auto& [queen, hers] : mother) {
      ++mothers;
      QueenId at = queen;
      for (int steps = 0; steps < 10 && mother.contains(at); ++steps) {
        at = mother[at];
        EXPECT_NE(at, queen) << "keeper " << seed;
      }
    }
  }
  EXPECT_GT(mothers, 10);
}

}  // namespace
}  // namespace beegarth::garth
