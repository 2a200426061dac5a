#include "garth/gates/gates.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

// ---- kit ----
entries::Part part(const char* key, entries::PartOrigin origin) {
  return {.part = PartId(key), .name = key, .what = entries::PartKind::brood_body, .origin = origin};
}
entries::Assembled hive_of(const char* key) {
  return {.hive = h3, .parts = {PartId(key)}};
}

TEST(Kit, inherited_kit_goes_into_no_hive_before_it_is_safe_clean_and_usable) {
  ToldBook book;
  const PartId old("old");
  book.must(day_of(3, 1), part("old", entries::PartOrigin::inherited));
  EXPECT_THAT(book.say(day_of(3, 2), hive_of("old")), HasSubstr("suspect (inherited)"));
  EXPECT_THAT(book.say(day_of(3, 2), entries::PartNow{.part = old, .state = entries::PartState::clean}),
              HasSubstr("scorched, dipped or sent away"));
  book.must(day_of(3, 3), entries::PartNow{.part = old, .state = entries::PartState::scorched});
  EXPECT_THAT(book.say(day_of(3, 3), entries::PartNow{.part = old, .state = entries::PartState::usable}),
              HasSubstr("only clean kit"));
  book.must(day_of(3, 4), entries::PartNow{.part = old, .state = entries::PartState::clean});
  book.must(day_of(3, 5), entries::PartNow{.part = old, .state = entries::PartState::usable});
  EXPECT_THAT(book.say(day_of(3, 6), hive_of("old")), IsEmpty());
}

TEST(Kit, worn_out_is_no_way_round_the_flame) {
  ToldBook book;
  book.must(day_of(3, 1), part("old", entries::PartOrigin::found));
  book.must(day_of(3, 2), entries::PartNow{.part = PartId("old"), .state = entries::PartState::worn_out});
  EXPECT_THAT(
      book.say(day_of(3, 3), entries::PartNow{.part = PartId("old"), .state = entries::PartState::usable}),
      HasSubstr("suspect kit"));
}

TEST(Kit, of_ones_own_making_is_usable_at_once) {
  ToldBook book;
  book.must(day_of(3, 1), part("new", entries::PartOrigin::own_build));
  EXPECT_THAT(book.say(day_of(3, 2), hive_of("new")), IsEmpty());
}

TEST(Kit, that_became_suspect_after_the_hive_was_put_together_holds_the_hive_empty) {
  ToldBook book;
  const PartId box("box");
  book.must(day_of(3, 1), part("box", entries::PartOrigin::own_build));
  book.must(day_of(3, 2), hive_of("box"));
  book.must(day_of(3, 3), entries::PartNow{.part = box, .state = entries::PartState::suspect});
  const std::vector<entries::Payload> ways_in = {
      entries::ColonyMoved{.colony = alder, .hive = h3}, entries::Transfer{.colony = alder, .hive = h3},
      entries::Split{.colony = alder, .into = ColonyId("new"), .name = "New", .hive = h3},
      entries::ColonyBegan{
          .colony = ColonyId("new"), .name = "New", .hive = h3, .how = entries::Beginning::swarm},
      entries::ColonyBegan{
          .colony = ColonyId("new"), .name = "New", .hive = h3, .how = entries::Beginning::bought}};
  for (const auto& way : ways_in)
    EXPECT_THAT(book.say(day_of(3, 4), way), HasSubstr("'h3' is put together of 'box', which is suspect"))
        << entries::kind_name(way);
  book.must(day_of(3, 4), entries::PartNow{.part = box, .state = entries::PartState::worn_out});
  EXPECT_THAT(book.say(day_of(3, 4), ways_in.front()), HasSubstr("which is worn_out"));
  for (const auto state :
       {entries::PartState::scorched, entries::PartState::clean, entries::PartState::usable})
    book.must(day_of(3, 5), entries::PartNow{.part = box, .state = state});
  EXPECT_THAT(book.say(day_of(3, 6), ways_in.front()), IsEmpty());
}

TEST(Kit, of_which_a_hive_was_built_before_is_none_of_it_once_it_was_taken_out) {
  ToldBook book;
  book.must(day_of(3, 1), part("box", entries::PartOrigin::own_build));
  book.must(day_of(3, 1), part("other", entries::PartOrigin::own_build));
  book.must(day_of(3, 2), hive_of("box"));
  book.must(day_of(3, 3), entries::PartNow{.part = PartId("box"), .state = entries::PartState::suspect});
  book.must(day_of(3, 4), hive_of("other"));
  EXPECT_THAT(book.say(day_of(3, 5), entries::ColonyMoved{.colony = alder, .hive = h3}), IsEmpty());
}

TEST(OldComb, of_others_hangs_on_no_hive) {
  using entries::CombOrigin;
  const CombsId old("old");
  const entries::CombsMoved onto{.combs = old, .to = entries::CombsGo::on_hive, .colony = alder};
  for (const auto origin :
       {CombOrigin::bought_used, CombOrigin::inherited, CombOrigin::found, CombOrigin::unknown}) {
    ToldBook book;
    entries::Combs batch{.combs = old, .name = "Old", .count = 5, .origin = origin};
    book.must(day_of(3, 1), batch);
    EXPECT_THAT(book.say(day_of(3, 2), onto), HasSubstr("goes on no hive"));
    EXPECT_THAT(book.say(day_of(3, 2), entries::Room{.colony = alder, .brood_combs = 5, .combs = old}),
                HasSubstr("goes on no hive"));
    batch.colony = alder;
    EXPECT_THAT(book.say(day_of(3, 2), batch), HasSubstr("goes on no hive"));
    EXPECT_THAT(
        book.say(
            day_of(3, 2),
            entries::Combs{
                .combs = CombsId("part"), .name = "Part", .count = 2, .parted_from = old, .colony = alder}),
        HasSubstr("goes on no hive"));
    batch.origin = CombOrigin::own;  // said again, it has the past that it had
    EXPECT_THAT(book.say(day_of(3, 2), batch), HasSubstr("goes on no hive"));
    EXPECT_THAT(book.say(day_of(3, 2), entries::CombsMoved{.combs = old, .to = entries::CombsGo::melted}),
                IsEmpty());
  }
}

TEST(OldComb, hangs_nowhere_when_what_was_said_of_it_is_taken_back) {
  ToldBook book;
  const CombsId old("old");
  book.must(day_of(3, 1),
            entries::Combs{.combs = old, .name = "Old", .count = 5, .origin = entries::CombOrigin::found});
  book.must(day_of(3, 2), entries::Removed{.entry = book.last()});
  EXPECT_THAT(book.say(day_of(3, 3),
                       entries::CombsMoved{.combs = old, .to = entries::CombsGo::on_hive, .colony = alder}),
              HasSubstr("no batch of combs 'old' on that day"));
}

TEST(OldComb, that_is_our_own_or_came_with_its_bees_may_hang) {
  ToldBook book;
  const CombsId own("own"), with("with");
  book.must(day_of(3, 1), entries::Combs{.combs = own, .name = "Own", .count = 5});
  EXPECT_THAT(book.say(day_of(3, 2),
                       entries::CombsMoved{.combs = own, .to = entries::CombsGo::on_hive, .colony = alder}),
              IsEmpty());
  entries::Combs came{.combs = with, .name = "With", .count = 5, .origin = entries::CombOrigin::with_bees};
  book.must(day_of(3, 1), came);
  EXPECT_THAT(book.say(day_of(3, 2),
                       entries::CombsMoved{.combs = with, .to = entries::CombsGo::on_hive, .colony = alder}),
              HasSubstr("of unknown origin"))
      << "with which bees, nobody said";
  came.combs = CombsId("with-alder");
  came.colony = alder;
  EXPECT_THAT(book.say(day_of(3, 1), came), IsEmpty());
}

TEST(Kit, asbestos_cement_is_never_heated) {
  ToldBook book;
  auto roof = part("roof", entries::PartOrigin::inherited);
  roof.asbestos = true;
  book.must(day_of(3, 1), roof);
  EXPECT_THAT(
      book.say(day_of(3, 2), entries::PartNow{.part = PartId("roof"), .state = entries::PartState::scorched}),
      HasSubstr("asbestos"));
}

// ---- hives ----
TEST(Hive, shows_no_more_brood_than_it_takes) {
  ToldBook book;
  book.must(day_of(3, 1), entries::Hive{.hive = h3,
                                        .name = "h3",
                                        .site = SiteId("bank"),
                                        .type = "National",
                                        .super_combs = 10,
                                        .brood_combs_max = 22});
  book.must(day_of(3, 2), entries::ColonyMoved{.colony = alder, .hive = h3});
  EXPECT_THAT(book.say(day_of(5, 1), entries::Inspection{.colony = alder, .brood_combs = 33}),
              HasSubstr("32 combs at most"));
  book.must(day_of(4, 1), entries::Room{.colony = alder, .brood_combs = 11});  // the second body
  EXPECT_THAT(book.say(day_of(5, 1), entries::Inspection{.colony = alder, .brood_combs = 30}), IsEmpty())
      << "in the supers too";
}

TEST(Kit, what_is_said_of_a_part_and_taken_back_lets_no_bees_in) {
  ToldBook book;
  book.must(day_of(3, 1), part("new", entries::PartOrigin::own_build));
  const EntryId said = book.last();
  book.must(day_of(3, 2), hive_of("new"));
  book.must(day_of(3, 3), entries::PartNow{.part = PartId("new"), .state = entries::PartState::suspect});
  book.must(day_of(3, 4), entries::Removed{.entry = said});
  EXPECT_THAT(book.say(day_of(3, 5), entries::ColonyMoved{.colony = alder, .hive = h3}),
              HasSubstr("was taken back"));
}

TEST(Transfer, goes_only_by_a_way_that_the_combs_of_both_hives_allow) {
  using entries::CombsHang;
  ToldBook book;
  const auto hive = [&](const char* key, entries::HiveForm form, std::optional<CombsHang> hang,
                        double long_mm, double deep_mm) {
    book.must(day_of(3, 1), entries::Hive{.hive = HiveId(key),
                                          .name = key,
                                          .site = SiteId("bank"),
                                          .form = form,
                                          .type = "invented",
                                          .combs_hang = hang,
                                          .comb_length_mm = long_mm,
                                          .comb_depth_mm = deep_mm});
  };
  const auto into = [&](const HiveId& to, entries::TransferWay how) {
    ToldBook copy = book;
    return copy.say(day_of(5, 1), entries::Transfer{.colony = alder, .hive = to, .how = how});
  };
  using Way = entries::TransferWay;
  EXPECT_THAT(into(h3, Way::bars_among_frames), IsEmpty()) << "neither says how its combs hang";
  hive("h1", entries::HiveForm::horizontal, CombsHang::bars, 432, 200);
  hive("h3", entries::HiveForm::upright, CombsHang::frames, 432, 216);
  EXPECT_THAT(into(h3, Way::bars_among_frames), IsEmpty());
  EXPECT_THAT(into(h3, Way::combs_lifted_over), HasSubstr("one has frames and the other bars"));
  EXPECT_THAT(into(h3, Way::grown_down), HasSubstr("upright"));
  hive("h1", entries::HiveForm::upright, CombsHang::frames, 432, 216);
  EXPECT_THAT(into(h3, Way::bars_among_frames), HasSubstr("it is for combs on bars"));
  hive("h1", entries::HiveForm::upright, CombsHang::fixed, 432, 216);
  EXPECT_THAT(into(h3, Way::combs_lifted_over), HasSubstr("cannot be lifted"));
}

TEST(Hive, gives_no_more_combs_than_it_has) {
  ToldBook book;
  EXPECT_THAT(book.say(day_of(5, 1), entries::Room{.colony = alder, .brood_combs = -60}),
              HasSubstr("11 combs in the nest"));
  EXPECT_EQ(book.say(day_of(5, 1), entries::Room{.colony = alder, .super_combs = -10}), "")
      << "of supers nothing was told when the hive was entered";
  book.must(day_of(5, 2), entries::Room{.colony = birch, .super_combs = 10});
  EXPECT_THAT(book.say(day_of(5, 3), entries::Room{.colony = birch, .super_combs = -20}),
              HasSubstr("in boxes on top"));
}

TEST(Presence, of_a_colony_is_not_taken_back_under_what_is_said_of_it) {
  ToldBook book;
  book.must(
      day_of(3, 1),
      entries::ColonyBegan{
          .colony = ColonyId("elm"), .name = "Elm", .hive = h3, .how = entries::Beginning::overwintered});
  const EntryId began = book.last();
  book.must(day_of(3, 9), entries::ColonyMoved{.colony = ColonyId("elm"), .hive = HiveId("h4")});
  const EntryId moved = book.last();
  EXPECT_THAT(book.say(day_of(4, 1), entries::Removed{.entry = began}), HasSubstr("would never have begun"));
  book.must(day_of(4, 1), entries::Removed{.entry = moved});
  EXPECT_EQ(book.say(day_of(4, 2), entries::Removed{.entry = began}), "");
}

TEST(Nest, is_not_got_round_by_naming_another_site) {
  ToldBook book;
  const PatchId edge("edge");
  book.must(day_of(4, 1), entries::Patch{.patch = edge, .site = SiteId("bank"), .name = "edge"});
  book.must(day_of(5, 1), entries::Nest{.site = SiteId("bank"), .patch = edge, .place = "bank"});
  EXPECT_THAT(book.say(day_of(5, 2), entries::Cut{.site = SiteId("yard"), .patch = edge, .what = "hedge"}),
              HasSubstr("lies at 'bank'"));
}

TEST(Hive, is_asked_for_nothing_that_it_cannot_take_or_show) {
  ToldBook book;
  book.must(day_of(2, 1), entries::Hive{.hive = h3,
                                        .name = "Long",
                                        .site = SiteId("bank"),
                                        .form = entries::HiveForm::horizontal,
                                        .type = "top-bar",
                                        .can_board = false,
                                        .can_heft = false,
                                        .can_see_seams = false});
  book.must(day_of(2, 2), entries::ColonyMoved{.colony = alder, .hive = h3});
  EXPECT_THAT(book.say(day_of(5, 1), entries::Room{.colony = alder, .super_combs = 5}),
              HasSubstr("takes no box on top"));
  EXPECT_THAT(book.say(day_of(5, 1), entries::Room{.colony = alder, .brood_combs = 2}), IsEmpty());
  EXPECT_THAT(book.say(day_of(5, 1), entries::MiteCount{.colony = alder, .mites = 3, .days = 3}),
              HasSubstr("no place for a board"));
  EXPECT_THAT(book.say(day_of(5, 1), entries::Weight{.colony = alder, .kg = 30}),
              HasSubstr("cannot be lifted"));
  EXPECT_THAT(book.say(day_of(5, 1), entries::Inspection{.colony = alder, .seams = 6}),
              HasSubstr("shows no seams"));
}

TEST(Hive, takes_no_more_combs_than_it_says) {
  ToldBook book;
  entries::Hive large{.hive = h3,
                      .name = "Large",
                      .site = SiteId("bank"),
                      .type = "Large",
                      .brood_combs = 12,
                      .super_combs = 50,
                      .brood_combs_max = 28,
                      .super_combs_max = 20};
  EXPECT_THAT(book.say(day_of(2, 1), large), HasSubstr("takes 20 combs in boxes on top, and would hold 50"));
  large.super_combs = 10;
  large.brood_combs = 30;
  EXPECT_THAT(book.say(day_of(2, 1), large), HasSubstr("takes 28 combs in the nest, and would hold 30"));
  large.brood_combs = 12;
  book.must(day_of(2, 1), large);
  book.must(day_of(2, 2), entries::ColonyMoved{.colony = alder, .hive = h3});
  EXPECT_THAT(book.say(day_of(5, 1), entries::Room{.colony = alder, .brood_combs = 40}),
              HasSubstr("would hold 52"));
  EXPECT_THAT(book.say(day_of(5, 1), entries::Room{.colony = alder, .super_combs = 11}),
              HasSubstr("would hold 21"));
  EXPECT_THAT(book.say(day_of(5, 1), entries::Room{.colony = alder, .super_combs = 10}), IsEmpty());
  EXPECT_THAT(book.say(day_of(5, 2), entries::Room{.colony = alder, .super_combs = 1}),
              HasSubstr("would hold 21"));
  book.must(day_of(5, 3), entries::Room{.colony = alder, .super_combs = -10});
  EXPECT_THAT(book.say(day_of(5, 4), entries::Room{.colony = alder, .super_combs = 10}), IsEmpty());
}

TEST(Hive, that_lies_down_has_no_boxes_and_no_more_crop_than_combs) {
  ToldBook book;
  entries::Hive trough{.hive = h3,
                       .name = "Trough",
                       .site = SiteId("bank"),
                       .form = entries::HiveForm::horizontal,
                       .type = "trough",
                       .brood_combs = 12,
                       .super_combs = 6};
  EXPECT_THAT(book.say(day_of(2, 1), trough), HasSubstr("takes no box on top"));
  trough.super_combs.reset();
  book.must(day_of(2, 1), trough);
  book.must(day_of(2, 2), entries::ColonyMoved{.colony = alder, .hive = h3});
  EXPECT_THAT(book.say(day_of(7, 1), entries::Harvest{.colony = alder, .kg = 20, .combs = 25}),
              HasSubstr("takes 12 combs in all, and 25 would be harvested"));
  EXPECT_THAT(book.say(day_of(7, 1), entries::Harvest{.colony = alder, .kg = 20, .combs = 12}), IsEmpty());
  EXPECT_THAT(book.say(day_of(7, 2), entries::Inspection{.colony = alder, .super_share = 0.5}),
              HasSubstr("takes no box on top, so none is full"));
  trough.can_super = true;
  trough.super_combs = 6;
  EXPECT_THAT(book.say(day_of(7, 3), trough), IsEmpty());
}

// ---- who is where ----
TEST(Presence, a_hive_holds_one_colony_or_two_where_it_is_made_for_two) {
  ToldBook book;
  EXPECT_THAT(book.say(day_of(5, 1), entries::ColonyMoved{.colony = alder, .hive = HiveId("h2")}),
              HasSubstr("'Birch' lives in the hive 'h2' already"));
  book.must(day_of(5, 1), entries::Hive{.hive = HiveId("h2"),
                                        .name = "h2",
                                        .site = SiteId("bank"),
                                        .type = "National",
                                        .two_colonies = true});
  EXPECT_THAT(book.say(day_of(5, 2), entries::ColonyMoved{.colony = alder, .hive = HiveId("h2")}), IsEmpty());
}

TEST(Presence, a_move_entered_late_does_not_put_two_colonies_into_one_hive) {
  ToldBook book;
  book.must(day_of(6, 20), entries::ColonyMoved{.colony = birch, .hive = h3});
  EXPECT_THAT(book.say(day_of(6, 10), entries::ColonyMoved{.colony = alder, .hive = h3}),
              HasSubstr("would hold 2 colonies"));
}

TEST(Presence, nothing_is_done_to_a_colony_before_it_began_or_after_it_was_taken_back) {
  ToldBook book;
  const ColonyId late("late");
  book.must(day_of(6, 1), entries::ColonyBegan{.colony = late, .name = "Late", .hive = h3});
  const EntryId began = book.last();
  EXPECT_THAT(book.say(day_of(5, 1), entries::Feed{.colony = late, .kg = 1}),
              HasSubstr("no colony 'late' on that day"));
  book.must(day_of(6, 2), entries::Removed{.entry = began});
  EXPECT_THAT(book.say(day_of(6, 3), entries::Room{.colony = late, .super_combs = 10}),
              HasSubstr("no colony 'late' on that day"));
}

TEST(Presence, a_crop_is_of_a_stock_that_was_there_or_of_what_a_dead_one_left) {
  for (const auto how : {entries::Ending::died, entries::Ending::sold}) {
    ToldBook book;
    const entries::Harvest crop{.colony = alder, .kg = 5};
    EXPECT_THAT(book.say(day_of(1, 1), crop), HasSubstr("there is no colony 'alder' on that day"));
    book.must(day_of(7, 1), entries::ColonyEnded{.colony = alder, .how = how});
    const std::string said = book.say(day_of(7, 10), crop);
    EXPECT_EQ(said.find("ended on 2026-07-01") == std::string::npos, how == entries::Ending::died) << said;
  }
}
TEST(Presence, a_stock_that_is_gone_sends_no_swarm) {
  ToldBook book;
  book.must(day_of(2, 1), entries::ColonyEnded{.colony = alder, .how = entries::Ending::died});
  const entries::ColonyBegan swarm{.colony = ColonyId("stray"),
                                   .name = "Stray",
                                   .hive = HiveId("h3"),
                                   .how = entries::Beginning::swarm,
                                   .swarm_of = alder};
  EXPECT_THAT(book.say(day_of(5, 1), swarm), HasSubstr("'Alder' ended on 2026-02-01"));
}
TEST(Kit, comb_that_was_bought_as_feed_hangs_nowhere) {
  ToldBook book;
  entries::Feed feed{
      .colony = alder, .kg = 3, .form = entries::FeedForm::comb, .source = entries::FeedSource::bought_feed};
  EXPECT_THAT(book.say(day_of(5, 1), feed), HasSubstr("comb that was bought as feed"));
  feed.source = entries::FeedSource::own_combs;
  EXPECT_THAT(book.say(day_of(5, 1), feed), IsEmpty());
}
TEST(Presence, nothing_is_done_to_a_colony_that_has_ended) {
  ToldBook book;
  book.must(day_of(3, 1), entries::ColonyEnded{.colony = alder, .how = entries::Ending::died});
  EXPECT_THAT(book.say(day_of(3, 2), entries::Feed{.colony = alder, .kg = 1}),
              HasSubstr("ended on 2026-03-01"));
  EXPECT_THAT(book.say(day_of(2, 2), entries::Feed{.colony = alder, .kg = 1}), IsEmpty());
}

// ---- feed and the keeper's own rules ----
TEST(Feed, is_never_honey_of_unknown_origin) {
  ToldBook book;
  EXPECT_THAT(book.say(day_of(3, 1),
                       entries::Feed{
                           .colony = alder, .kg = 1, .source = entries::FeedSource::honey_of_unknown_origin}),
              HasSubstr("never fed"));
}

TEST(OwnRules, are_hard_until_they_are_given_up) {
  ToldBook book;
  book.must(day_of(1, 3), entries::KeeperRule{.rule = entries::Refusal::no_clipping});
  const entries::Queen clipped{.colony = alder, .event = entries::QueenEvent::clipped};
  EXPECT_THAT(book.say(day_of(5, 1), clipped), HasSubstr("your own rule 'no_clipping' of 2026-01-03"));
  book.must(day_of(5, 2), entries::KeeperRule{.rule = entries::Refusal::no_clipping, .kept = false});
  EXPECT_THAT(book.say(day_of(5, 3), clipped), IsEmpty());
}

}  // namespace
}  // namespace beegarth::garth
