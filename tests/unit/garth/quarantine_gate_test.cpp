#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

TEST(Quarantine, keeps_a_stock_apart_until_its_day_or_until_it_is_lifted) {
  ToldBook book;
  book.must(day_of(6, 1), entries::Quarantine{.colony = alder, .until = day_of(7, 1)});
  const entries::Unite unite{.colony = birch, .from = alder};
  for (const auto& colony : {alder, birch}) book.must(day_of(6, 19), entries::Inspection{.colony = colony});
  EXPECT_THAT(book.say(day_of(7, 1), unite), HasSubstr("in quarantine until 2026-07-01"));
  ToldBook lifted = book;
  lifted.must(day_of(6, 20), entries::Quarantine{.colony = alder, .lifted = true});
  EXPECT_THAT(lifted.say(day_of(6, 21), unite), IsEmpty());
  EXPECT_THAT(book.say(day_of(7, 2), unite), IsEmpty());
}

TEST(Quarantine, is_not_shortened_but_lifted_and_does_not_end_before_it_begins) {
  ToldBook book;
  EXPECT_THAT(book.say(day_of(6, 1), entries::Quarantine{.colony = alder, .until = day_of(5, 1)}),
              HasSubstr("before its own day"));
  book.must(day_of(6, 1), entries::Quarantine{.colony = alder, .until = day_of(7, 1)});
  EXPECT_THAT(book.say(day_of(6, 5), entries::Quarantine{.colony = alder, .until = day_of(6, 8)}),
              HasSubstr("in quarantine until 2026-07-01"));
  book.must(day_of(6, 5), entries::Quarantine{.colony = alder, .until = day_of(8, 1)});
  book.must(day_of(6, 20), entries::Quarantine{.colony = alder, .lifted = true});
}
TEST(Quarantine, holds_combs_that_went_by_way_of_the_store) {
  ToldBook book;
  const CombsId combs("k");
  book.must(day_of(6, 1), entries::Quarantine{.colony = alder, .until = day_of(7, 1)});
  book.must(day_of(6, 2), entries::Combs{.combs = combs, .name = "K", .count = 3, .colony = alder});
  book.must(day_of(6, 3), entries::CombsMoved{.combs = combs, .to = entries::CombsGo::into_store});
  EXPECT_THAT(book.say(day_of(6, 4),
                       entries::CombsMoved{.combs = combs, .to = entries::CombsGo::on_hive, .colony = birch}),
              HasSubstr("shares no combs"));
  EXPECT_THAT(book.say(day_of(6, 4),
                       entries::CombsMoved{.combs = combs, .to = entries::CombsGo::on_hive, .colony = alder}),
              IsEmpty());
}

TEST(Quarantine, lets_no_boxes_go_unnamed_and_no_part_be_sold_under_another_name) {
  ToldBook book;
  book.must(day_of(5, 1), entries::Room{.colony = alder, .super_combs = 11});
  book.must(day_of(6, 1), entries::Quarantine{.colony = alder, .until = day_of(7, 1)});
  EXPECT_THAT(book.say(day_of(6, 2), entries::Room{.colony = alder, .super_combs = -11}),
              HasSubstr("go unnamed"));
  using entries::Goods;
  for (const Goods what : {Goods::bees, Goods::other, Goods::plants})
    EXPECT_NE(book.say(day_of(6, 2), entries::Sale{.what = what, .description = "swarm", .colony = alder}),
              "");
  EXPECT_THAT(book.say(day_of(6, 2), entries::Sale{.what = Goods::bees, .description = "swarm"}),
              HasSubstr("without saying of which colony"));
  EXPECT_EQ(
      book.say(day_of(6, 2), entries::Sale{.what = Goods::bees, .description = "a nucleus", .colony = birch}),
      "");
}

// ---- swarms and stocks of unknown origin ----
const ColonyId swarm("swarm");

struct Swarm : testing::Test {
  Swarm() {
    book.must(
        day_of(5, 1),
        entries::ColonyBegan{.colony = swarm, .name = "Swarm", .hive = h3, .how = entries::Beginning::swarm});
  }
  void look(Date day, const ColonyId& colony = swarm) {
    book.must(day, entries::Inspection{.colony = colony, .brood_combs = 5, .capped_brood = true});
  }
  ToldBook book;
  const Date over = day_of(5, 1) + 42;
};

TEST_F(Swarm, is_in_quarantine_by_itself) {
  look(day_of(5, 1));
  look(day_of(5, 1), alder);
  const std::vector<entries::Payload> refused = {
      entries::Unite{.colony = alder, .from = swarm},
      entries::Unite{.colony = swarm, .from = alder},
      entries::Split{.colony = swarm, .into = ColonyId("new"), .name = "New", .hive = HiveId("h4")},
      entries::Sale{.what = entries::Goods::bees, .description = "a stock", .colony = swarm},
      entries::Sale{.what = entries::Goods::queen, .description = "a queen", .colony = swarm},
      entries::ColonyEnded{.colony = swarm, .how = entries::Ending::sold},
      entries::ColonyEnded{.colony = swarm, .how = entries::Ending::given_away},
      entries::Room{.colony = swarm, .brood_combs = -2}};
  for (const auto& deed : refused)
    EXPECT_THAT(book.say(day_of(5, 2), deed), HasSubstr("'swarm' is in quarantine until 2026-06-12"))
        << entries::kind_name(deed);
  EXPECT_THAT(book.say(day_of(5, 2), entries::Feed{.colony = swarm, .kg = 2}), IsEmpty());
  EXPECT_THAT(book.say(day_of(5, 2), entries::Room{.colony = swarm, .brood_combs = 3, .undrawn = 3}),
              IsEmpty());
}

TEST_F(Swarm, gets_no_combs_that_hung_elsewhere_and_gives_none) {
  const CombsId combs("k");
  book.must(day_of(5, 1), entries::Combs{.combs = combs, .name = "K", .count = 3, .colony = alder});
  EXPECT_THAT(book.say(day_of(5, 2),
                       entries::CombsMoved{.combs = combs, .to = entries::CombsGo::on_hive, .colony = swarm}),
              HasSubstr("quarantine"));
  EXPECT_THAT(book.say(day_of(5, 2), entries::Room{.colony = swarm, .brood_combs = 3, .combs = combs}),
              HasSubstr("quarantine"));
  EXPECT_THAT(
      book.say(day_of(5, 2), entries::Combs{.combs = combs, .name = "K", .count = 3, .colony = swarm}),
      HasSubstr("quarantine"));
  book.must(day_of(5, 2),
            entries::Combs{.combs = CombsId("its"), .name = "Its", .count = 3, .colony = swarm});
  EXPECT_THAT(
      book.say(day_of(5, 3), entries::Room{.colony = alder, .brood_combs = 3, .combs = CombsId("its")}),
      HasSubstr("quarantine"));
}

TEST_F(Swarm, is_free_after_its_days_by_a_full_look_through_sealed_brood_without_a_sign) {
  const entries::Sale sale{.what = entries::Goods::bees, .description = "a stock", .colony = swarm};
  look(over - 1);
  EXPECT_THAT(book.say(over + 1, sale), HasSubstr("until a full look from then on")) << "looked too soon";
  book.must(over, entries::Inspection{.colony = swarm, .look = entries::Look::quick, .capped_brood = true});
  EXPECT_THAT(book.say(over + 1, sale), HasSubstr("quarantine")) << "not through every comb";
  book.must(over, entries::Inspection{.colony = swarm, .capped_brood = false});
  EXPECT_THAT(book.say(over + 1, sale), HasSubstr("quarantine")) << "no sealed brood to look at";
  book.must(over, entries::Inspection{.colony = swarm, .capped_brood = true, .signs = {"patchy_brood"}});
  EXPECT_THAT(book.say(over + 1, sale), HasSubstr("quarantine")) << "a sign was seen";
  look(over + 1);
  EXPECT_THAT(book.say(over + 1, sale), IsEmpty());
}

TEST_F(Swarm, is_free_when_the_keeper_lifts_it) {
  book.must(day_of(5, 20), entries::Quarantine{.colony = swarm, .lifted = true});
  EXPECT_THAT(book.say(day_of(5, 21), entries::ColonyEnded{.colony = swarm, .how = entries::Ending::sold}),
              IsEmpty());
}

TEST_F(Swarm, is_not_set_free_sooner_by_a_nearer_day) {
  EXPECT_THAT(book.say(day_of(5, 3), entries::Quarantine{.colony = swarm, .until = day_of(5, 10)}),
              HasSubstr("in quarantine until 2026-06-12"));
  book.must(day_of(5, 3), entries::Quarantine{.colony = swarm, .until = day_of(7, 1)});
  EXPECT_THAT(book.say(day_of(5, 4), entries::ColonyEnded{.colony = swarm, .how = entries::Ending::sold}),
              HasSubstr("quarantine"));
}

TEST_F(Swarm, is_not_set_free_by_correcting_how_it_began) {
  entries::ColonyBegan began{
      .colony = swarm, .name = "Swarm", .hive = h3, .how = entries::Beginning::overwintered};
  EXPECT_THAT(book.say(day_of(5, 1), began, book.last()), HasSubstr("end the quarantine of 'swarm'"));
  began.how = entries::Beginning::swarm;
  began.name = "The swarm";
  EXPECT_THAT(book.say(day_of(5, 1), began, book.last()), IsEmpty()) << "it is still one";
  began.swarm_of = alder;
  EXPECT_THAT(book.say(day_of(5, 1), began, book.last()), IsEmpty()) << "now it is known whose it is";
}

TEST_F(Swarm, is_carried_to_a_place_of_its_own_and_not_to_where_others_stand) {
  const entries::ColonyMoved away{.colony = swarm, .hive = HiveId("h4")};
  ToldBook alone = book;
  EXPECT_THAT(alone.say(day_of(5, 2), away), IsEmpty());
  book.must(day_of(5, 1), entries::ColonyMoved{.colony = birch, .hive = HiveId("h4")});
  book.must(day_of(5, 1), entries::Hive{.hive = HiveId("h4"),
                                        .name = "h4",
                                        .site = SiteId("yard"),
                                        .type = "National",
                                        .two_colonies = true});
  EXPECT_THAT(book.say(day_of(5, 2), away), HasSubstr("'Birch' stands at 'yard'"));
  EXPECT_THAT(book.say(day_of(5, 2),
                       entries::Hive{.hive = h3, .name = "h3", .site = SiteId("yard"), .type = "National"}),
              HasSubstr("'Birch' stands at 'yard'"));
}

TEST_F(Swarm, gives_its_queen_to_no_other_and_no_queens_are_reared_from_it) {
  const QueenId queen("q"), daughter("d");
  book.must(day_of(5, 2),
            entries::QueenBegan{.queen = queen, .name = "Q", .origin = entries::QueenOrigin::swarm});
  book.must(day_of(5, 2),
            entries::Queen{.colony = swarm, .event = entries::QueenEvent::seen, .which = queen});
  EXPECT_THAT(
      book.say(day_of(5, 3),
               entries::Queen{.colony = alder, .event = entries::QueenEvent::introduced, .which = queen}),
      HasSubstr("its queen goes to no other stock"));
  entries::QueenBegan reared{
      .queen = daughter, .name = "D", .mother = queen, .origin = entries::QueenOrigin::reared};
  EXPECT_THAT(book.say(day_of(5, 20), reared), HasSubstr("no queens are reared from it"));
  reared.origin = entries::QueenOrigin::supersedure;
  EXPECT_THAT(book.say(day_of(5, 20), reared), IsEmpty()) << "what bees do of themselves may be written down";
}

TEST(Quarantine, begins_by_itself_for_what_comes_from_outside_only) {
  using entries::Beginning;
  const auto kept_apart = [](Beginning how, std::optional<ColonyId> swarm_of = std::nullopt) {
    ToldBook book;
    book.must(day_of(5, 1),
              entries::ColonyBegan{
                  .colony = swarm, .name = "Swarm", .hive = h3, .how = how, .swarm_of = std::move(swarm_of)});
    return !book.say(day_of(5, 2), entries::ColonyEnded{.colony = swarm, .how = entries::Ending::sold})
                .empty();
  };
  EXPECT_TRUE(kept_apart(Beginning::swarm));
  EXPECT_TRUE(kept_apart(Beginning::unknown));
  EXPECT_FALSE(kept_apart(Beginning::swarm, alder)) << "out of our own colony";
  EXPECT_TRUE(kept_apart(Beginning::swarm, swarm)) << "out of itself";
  EXPECT_FALSE(kept_apart(Beginning::overwintered));
  EXPECT_FALSE(kept_apart(Beginning::bought));
}

TEST(Quarantine, of_a_swarm_is_not_kept_in_a_hive_where_another_stock_lives) {
  ToldBook book;
  book.must(day_of(2, 1), entries::Hive{.hive = HiveId("h1"),
                                        .name = "h1",
                                        .site = SiteId("bank"),
                                        .type = "National",
                                        .two_colonies = true});
  entries::ColonyBegan began{
      .colony = ColonyId("stray"), .name = "Stray", .hive = HiveId("h1"), .how = entries::Beginning::swarm};
  EXPECT_THAT(book.say(day_of(5, 20), began), HasSubstr("'Alder' lives in the hive 'h1'"));
  began.swarm_of = birch;
  EXPECT_THAT(book.say(day_of(5, 20), began), IsEmpty());
}

// ---- uniting ----
TEST(Unite, asks_for_a_look_through_the_brood_of_both) {
  ToldBook book;
  const entries::Unite unite{.colony = birch, .from = alder};
  EXPECT_THAT(book.say(day_of(5, 20), unite), HasSubstr("the brood of 'Birch' was not looked through"));
  book.must(day_of(5, 20), entries::Inspection{.colony = birch});
  book.must(day_of(5, 5), entries::Inspection{.colony = alder});
  EXPECT_THAT(book.say(day_of(5, 20), unite),
              HasSubstr("'Alder' was not looked through in the 14 days before, last on 2026-05-05"));
  book.must(day_of(5, 18), entries::Inspection{.colony = alder, .look = entries::Look::outside});
  EXPECT_THAT(book.say(day_of(5, 20), unite), HasSubstr("'Alder' was not looked through"));
  book.must(day_of(5, 18), entries::Inspection{.colony = alder});
  EXPECT_THAT(book.say(day_of(5, 20), unite), IsEmpty());
}

TEST(Unite, is_not_done_while_the_last_look_through_either_saw_disease) {
  ToldBook book;
  const entries::Unite unite{.colony = birch, .from = alder};
  book.must(day_of(5, 15), entries::Inspection{.colony = birch});
  book.must(day_of(5, 15), entries::Inspection{.colony = alder, .signs = {"sac_brood"}});
  EXPECT_THAT(book.say(day_of(5, 16), unite), HasSubstr("'Alder' was seen with sac brood on 2026-05-15"));
  book.must(day_of(5, 15), entries::Inspection{.colony = alder});
  EXPECT_THAT(book.say(day_of(5, 16), unite), HasSubstr("sac brood")) << "a second word on the same day";
  book.must(day_of(5, 17), entries::Inspection{.colony = alder, .signs = {"robbing", "laying_workers"}});
  book.must(day_of(5, 18), entries::Sign{.colony = birch, .signs = {"chalk_brood"}});
  EXPECT_THAT(book.say(day_of(5, 19), unite), HasSubstr("'Birch' was seen with chalk brood on 2026-05-18"));
  book.must(day_of(5, 20), entries::Inspection{.colony = birch});
  EXPECT_THAT(book.say(day_of(5, 20), unite), IsEmpty());
}

}  // namespace
}  // namespace beegarth::garth
