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
  EXPECT_THAT(book.say(day_of(5, 1), entries::Inspection{.colony = alder, .brood_combs = 30}), IsEmpty())
      << "in the supers too";
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

TEST(Presence, nothing_is_done_to_a_colony_that_has_ended) {
  ToldBook book;
  book.must(day_of(3, 1), entries::ColonyEnded{.colony = alder, .how = entries::Ending::died});
  EXPECT_THAT(book.say(day_of(3, 2), entries::Feed{.colony = alder, .kg = 1}),
              HasSubstr("ended on 2026-03-01"));
  EXPECT_THAT(book.say(day_of(2, 2), entries::Feed{.colony = alder, .kg = 1}), IsEmpty());
}

TEST(Quarantine, keeps_a_stock_apart_until_its_day_or_until_it_is_lifted) {
  ToldBook book;
  book.must(day_of(6, 1), entries::Quarantine{.colony = alder, .until = day_of(7, 1)});
  const entries::Unite unite{.colony = birch, .from = alder};
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
