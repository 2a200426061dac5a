#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <utility>

#include "garth/ledgers/suspects.hpp"
#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;

struct SuspectAlder : testing::Test {
  SuspectAlder() { book.must(day_of(5, 10), ropy(alder)); }
  ToldBook book;
  Date after = day_of(5, 12);
};

TEST_F(SuspectAlder, is_not_made_well_by_rows_of_the_keepers_own) {
  const auto own = [](const char* table, const char* row, const char* unit) {
    return entries::TableOverride{.table = table, .row = row, .value = 0, .unit = unit, .source = "me"};
  };
  const auto stops = own("duty_general", "american_foulbrood_stops_movement", "yes/no");
  const auto back = own("work", "comb_look_back_days", "days");
  for (const auto& one : {stops, back})
    EXPECT_THAT(book.say(after, one), HasSubstr("'Alder' is suspect: what makes it so")) << one.row;
  EXPECT_THAT(book.say(after, own("work", "look_minutes", "min")), Not(HasSubstr("is suspect")));
  book.must(after, entries::Cleared{.colony = alder, .by = "the inspector (invented)"});
  EXPECT_THAT(book.say(day_of(5, 20), back), Not(HasSubstr("is suspect")));
}
TEST_F(SuspectAlder, holds_combs_that_left_beside_it_as_feed_too) {
  ToldBook other;
  other.must(day_of(5, 1), entries::Room{.colony = birch, .super_combs = 10});
  other.must(day_of(5, 9), entries::Room{.colony = birch, .super_combs = -10});
  other.must(day_of(5, 9), entries::ColonyBegan{.colony = ColonyId("far"),
                                                .name = "Far",
                                                .hive = HiveId("h4"),
                                                .how = entries::Beginning::overwintered});
  other.must(day_of(5, 10), ropy(alder));
  const entries::Feed combs{.colony = ColonyId("far"), .kg = 3, .form = entries::FeedForm::comb};
  EXPECT_THAT(other.say(day_of(5, 12), combs), HasSubstr("10 combs that nobody named"));
  const entries::Feed sugar{.colony = ColonyId("far"), .kg = 3, .form = entries::FeedForm::syrup};
  EXPECT_THAT(other.say(day_of(5, 12), sugar), IsEmpty());
}

TEST_F(SuspectAlder, no_deed_moves_anything_to_or_from_it) {
  const std::vector<entries::Payload> moves = {
      entries::Split{.colony = alder, .into = ColonyId("new"), .name = "New", .hive = h3},
      entries::Unite{.colony = birch, .from = alder},
      entries::Unite{.colony = alder, .from = birch},
      entries::Transfer{.colony = alder, .hive = h3},
      entries::ColonyMoved{.colony = alder, .hive = h3},
      entries::Room{.colony = alder, .super_combs = 10},
      entries::Feed{.colony = alder, .kg = 2},
      entries::Harvest{.colony = alder, .kg = 5},
      entries::Queen{.colony = alder, .event = entries::QueenEvent::introduced},
      entries::ColonyEnded{.colony = alder, .how = entries::Ending::sold},
      entries::Sale{.what = entries::Goods::bees, .description = "a stock", .colony = alder},
      entries::Combs{.combs = CombsId("c"), .name = "c", .count = 3, .colony = alder},
  };
  for (const auto& move : moves) {
    EXPECT_THAT(book.say(after, move), HasSubstr("is suspect since 2026-05-10")) << entries::kind_name(move);
  }
}

TEST_F(SuspectAlder, its_whole_site_is_held_with_it) {
  EXPECT_THAT(book.say(after, entries::Room{.colony = birch, .super_combs = 10}),
              HasSubstr("site 'bank' is suspect"));
  EXPECT_THAT(
      book.say(after,
               entries::Hive{.hive = HiveId("h2"), .name = "h2", .site = SiteId("yard"), .type = "National"}),
      HasSubstr("suspect"));
}

TEST_F(SuspectAlder, its_site_is_not_closed_and_so_forgotten) {
  EXPECT_THAT(book.say(after, entries::SiteClosed{.site = SiteId("bank")}),
              HasSubstr("site 'bank' is suspect"));
  EXPECT_THAT(book.say(after, entries::SiteClosed{.site = SiteId("yard")}), IsEmpty());
}

TEST_F(SuspectAlder, no_part_that_lies_at_its_site_is_built_in_or_carried_elsewhere) {
  const PartId box("box");
  book.must(day_of(4, 1), entries::Part{.part = box, .name = "box", .site = SiteId("bank")});
  EXPECT_THAT(book.say(after, entries::Assembled{.hive = HiveId("h4"), .parts = {box}}),
              HasSubstr("suspect"));
  EXPECT_THAT(book.say(after, entries::Part{.part = box, .name = "box", .site = SiteId("yard")}),
              HasSubstr("suspect"));
  EXPECT_THAT(book.say(after, entries::Part{.part = box, .name = "box", .site = SiteId("bank")}), IsEmpty());
}

TEST_F(SuspectAlder, what_is_sold_says_where_it_comes_from_as_long_as_anything_is_suspect) {
  using entries::Goods;
  for (const Goods what : {Goods::bees, Goods::queen, Goods::kit, Goods::honey})
    EXPECT_THAT(book.say(after, entries::Sale{.what = what, .description = "x"}),
                HasSubstr("does not say where it comes from"));
  EXPECT_THAT(book.say(after, entries::Sale{.what = Goods::plants, .description = "x"}), IsEmpty());
}

TEST_F(SuspectAlder, its_wet_combs_go_back_to_nobody) {
  const LotId lot("l1");
  book.must(day_of(5, 1), entries::Lot{.lot = lot, .name = "Spring"});
  book.must(day_of(5, 1), entries::Harvest{.colony = alder, .kg = 5, .lot = lot});
  EXPECT_THAT(book.say(after, entries::Extraction{.lot = lot, .wet_combs_back = true}), HasSubstr("suspect"));
  EXPECT_THAT(book.say(after, entries::Extraction{.lot = lot, .wet_combs_back = false}), IsEmpty());
}

TEST_F(SuspectAlder, looks_treatments_and_its_death_may_be_entered) {
  EXPECT_THAT(book.say(after, entries::Inspection{.colony = alder}), IsEmpty());
  EXPECT_THAT(book.say(after, entries::Treatment{.colony = alder, .kind = entries::TreatmentKind::thymol}),
              IsEmpty());
  EXPECT_THAT(book.say(after, entries::ColonyEnded{.colony = alder, .how = entries::Ending::died}),
              IsEmpty());
}

TEST_F(SuspectAlder, what_happened_before_the_suspicion_may_still_be_entered) {
  EXPECT_THAT(book.say(day_of(5, 1), entries::Room{.colony = alder, .super_combs = 10}), IsEmpty());
}

TEST_F(SuspectAlder, only_the_inspector_lifts_it) {
  const EntryId sign = book.last();
  EXPECT_THAT(book.say(after, entries::Removed{.entry = sign}), HasSubstr("without the inspector's word"));
  EXPECT_THAT(book.say(after, entries::Inspection{.colony = alder}, sign),
              HasSubstr("without the inspector's word"));
  EXPECT_THAT(book.say(after, entries::Cleared{.colony = alder, .by = "the bee inspector"}), IsEmpty());
  EXPECT_THAT(book.say(after, entries::Room{.colony = alder, .super_combs = 10}), IsEmpty());
}

TEST_F(SuspectAlder, stays_suspect_at_the_site_after_the_colony_has_died) {
  book.must(after, entries::ColonyEnded{.colony = alder, .how = entries::Ending::died});
  EXPECT_THAT(book.say(after + 3, entries::Room{.colony = birch, .super_combs = 10}), HasSubstr("suspect"));
}

TEST(Suspicion, goes_along_with_a_split_entered_before_the_sign_was_seen) {
  ToldBook book;
  book.must(day_of(5, 1),
            entries::Split{.colony = alder, .into = ColonyId("new"), .name = "New", .hive = h3});
  book.keep_anyway({.happened = day_of(4, 20), .payload = ropy(alder)});
  const auto suspects = suspects_on(book.standing(day_of(5, 2)), day_of(5, 2));
  ASSERT_NE(suspects.at(ColonyId("new")), nullptr);
  EXPECT_THAT(suspects.at(ColonyId("new"))->signs,
              testing::Contains(testing::Property(&SuspectSign::text, "ropy larva in Alder")));
}

TEST(Suspicion, follows_a_colony_to_every_site_it_has_stood_at_since) {
  ToldBook book;
  book.must(day_of(5, 10), ropy(alder));
  book.keep_anyway(
      {.happened = day_of(5, 11), .payload = entries::ColonyMoved{.colony = alder, .hive = HiveId("h4")}});
  const auto suspects = suspects_on(book.standing(day_of(5, 12)), day_of(5, 12));
  EXPECT_NE(suspects.at(SiteId("bank")), nullptr);
  EXPECT_NE(suspects.at(SiteId("yard")), nullptr);
}

TEST_F(SuspectAlder, no_move_entered_late_frees_what_it_stood_in) {
  EXPECT_THAT(book.say(day_of(5, 1), entries::ColonyMoved{.colony = alder, .hive = HiveId("h4")}),
              HasSubstr("would end the suspicion of the hive 'h1'"));
  EXPECT_THAT(book.say(day_of(5, 12), entries::Removed{.entry = book.all()[6].id}),
              HasSubstr("would end the suspicion"));
}

TEST_F(SuspectAlder, its_sign_is_not_put_off_to_a_later_day) {
  EXPECT_THAT(book.say(day_of(6, 1), ropy(alder), book.last()),
              HasSubstr("would end the suspicion of 'alder'"));
}

TEST_F(SuspectAlder, its_combs_are_burnt_and_go_nowhere_else) {
  ToldBook other;
  other.must(day_of(5, 1), entries::Combs{.combs = CombsId("c"), .name = "c", .count = 3, .colony = alder});
  other.must(day_of(5, 10), ropy(alder));
  EXPECT_THAT(other.say(day_of(5, 12),
                        entries::Combs{.combs = CombsId("c"), .name = "c", .count = 3, .colony = birch}),
              HasSubstr("suspect"));
  EXPECT_THAT(
      other.say(day_of(5, 12), entries::CombsMoved{.combs = CombsId("c"), .to = entries::CombsGo::burnt}),
      IsEmpty());
}

TEST(Suspicion, of_a_colony_that_was_united_away_falls_on_the_one_that_took_it_in) {
  ToldBook book;
  for (const auto& colony : {alder, birch}) book.must(day_of(5, 1), entries::Inspection{.colony = colony});
  book.must(day_of(5, 1), entries::Unite{.colony = birch, .from = alder});
  book.must(day_of(5, 10), ropy(alder));
  EXPECT_THAT(book.say(day_of(5, 11), entries::ColonyMoved{.colony = birch, .hive = h3}),
              HasSubstr("suspect"));
}

TEST_F(SuspectAlder, a_sign_entered_by_mistake_is_taken_back_once_the_inspector_has_cleared_it) {
  const EntryId sign = book.last();
  book.must(after, entries::Cleared{.colony = alder, .by = "the bee inspector"});
  EXPECT_THAT(book.say(after + 1, entries::Removed{.entry = sign, .reason = "entered by mistake"}),
              IsEmpty());
  EXPECT_EQ(suspects_on(book.standing(after + 1), after + 1).at(alder), nullptr);
}

TEST_F(SuspectAlder, a_word_for_one_colony_does_not_free_another) {
  const EntryId sign = book.last();
  book.must(day_of(5, 11), ropy(birch));
  book.must(after, entries::Cleared{.colony = birch, .by = "the bee inspector"});
  EXPECT_THAT(book.say(after + 1, entries::Removed{.entry = sign}),
              HasSubstr("suspicion of 'alder' without the inspector's word"));
}

TEST(Suspicion, is_raised_by_what_a_laboratory_found_and_by_what_was_reported) {
  using entries::Finding;
  using entries::SampleOf;
  const auto found = [](SampleOf of, Finding finding, entries::Text result) {
    return entries::Sample{.colony = alder, .of = of, .finding = finding, .result = std::move(result)};
  };
  const std::vector<std::pair<entries::Payload, bool>> cases = {
      {found(SampleOf::brood, Finding::found, "European foulbrood"), true},
      {found(SampleOf::debris, Finding::found, "spores of P. larvae (AFB)"), true},
      {found(SampleOf::bees, Finding::found, "Aethina tumida"), true},
      {found(SampleOf::brood, Finding::found, std::nullopt), true},
      {found(SampleOf::bees, Finding::found, std::nullopt), false},
      {found(SampleOf::bees, Finding::found, "nosema"), false},
      {found(SampleOf::brood, Finding::found, "chalk brood spores"), false},
      {found(SampleOf::brood, Finding::pending, std::nullopt), false},
      {found(SampleOf::brood, Finding::nothing_found, "no foulbrood"), false},
      {entries::Reported{.site = SiteId("bank"), .colony = alder, .what = "american_foulbrood"}, true},
      {entries::Reported{.site = SiteId("bank"), .what = "european_foulbrood"}, true},
      {entries::Reported{.site = SiteId("bank"), .what = "varroa"}, false},
      {entries::Reported{.site = SiteId("yard"), .what = "european_foulbrood"},
       false}};  // nobody lives there
  for (const auto& [said, suspect] : cases) {
    ToldBook book;
    book.must(day_of(5, 10), said);
    EXPECT_EQ(suspects_on(book.standing(day_of(5, 11)), day_of(5, 11)).at(alder) != nullptr, suspect)
        << book::payload_json(said);
  }
}

TEST_F(SuspectAlder, a_report_of_what_is_suspect_already_makes_nothing_else_suspect) {
  book.must(after, entries::Reported{.site = SiteId("bank"), .what = "american_foulbrood"});
  const auto suspects = suspects_on(book.standing(after), after);
  EXPECT_EQ(suspects.at(birch), nullptr);
  EXPECT_EQ(suspects.at(alder)->signs.size(), 2U);  // the ropy larva and its thread
}

TEST(Suspicion, falls_on_those_that_were_split_off_before_the_sign_was_seen) {
  ToldBook book;
  const ColonyId daughter("new");
  book.must(day_of(5, 1), entries::Split{.colony = alder, .into = daughter, .name = "New", .hive = h3});
  book.must(day_of(5, 10), ropy(alder));
  EXPECT_NE(suspects_on(book.standing(day_of(5, 10)), day_of(5, 10)).at(daughter), nullptr);
  book.must(day_of(5, 12), entries::Cleared{.colony = daughter, .by = "the bee inspector"});
  book.must(day_of(5, 14), ropy(alder));
  EXPECT_EQ(suspects_on(book.standing(day_of(5, 14)), day_of(5, 14)).at(daughter), nullptr);
}

TEST(Suspicion, goes_along_with_a_swarm_of_our_own) {
  ToldBook book;
  const ColonyId prime("prime");
  const entries::ColonyBegan hived{.colony = prime,
                                   .name = "Prime",
                                   .hive = HiveId("h4"),
                                   .how = entries::Beginning::swarm,
                                   .swarm_of = alder};
  book.must(day_of(5, 1), hived);
  book.must(day_of(5, 10), ropy(alder));
  EXPECT_NE(suspects_on(book.standing(day_of(5, 10)), day_of(5, 10)).at(prime), nullptr);
  ToldBook later;
  later.must(day_of(5, 10), ropy(alder));
  EXPECT_THAT(later.say(day_of(5, 12), hived), HasSubstr("'Alder' is suspect"));
}

TEST(Suspicion, chalk_brood_and_a_wet_board_raise_none) {
  ToldBook book;
  book.must(day_of(5, 10), entries::Sign{.colony = alder, .signs = {"chalk_brood", "dysentery"}});
  EXPECT_THAT(book.say(day_of(5, 11), entries::Room{.colony = alder, .super_combs = 10}), IsEmpty());
}

// ---- disease follows combs ----
const CombsId stored("stored");
const ColonyId far_off("far");

// A batch and unnamed boxes came off Alder in April; a colony elsewhere; the sign of 10 May.
struct CombsOfAlder : testing::Test {
  explicit CombsOfAlder(Date off = day_of(4, 20)) {
    book.must(
        day_of(1, 3),
        entries::ColonyBegan{
            .colony = far_off, .name = "Far", .hive = HiveId("h4"), .how = entries::Beginning::overwintered});
    book.must(day_of(1, 4), entries::Combs{.combs = stored, .name = "Stored", .count = 5, .colony = alder});
    book.must(off, entries::CombsMoved{.combs = stored, .to = entries::CombsGo::into_store});
    book.must(off, entries::Room{.colony = alder, .super_combs = 10});
    book.must(off, entries::Room{.colony = alder, .super_combs = -10});
    book.must(day_of(5, 10), ropy(alder));
  }
  ToldBook book;
  Date after = day_of(5, 25);
};

TEST_F(CombsOfAlder, that_left_it_before_the_sign_was_seen_go_nowhere) {
  EXPECT_THAT(
      book.say(after,
               entries::CombsMoved{.combs = stored, .to = entries::CombsGo::on_hive, .colony = far_off}),
      HasSubstr("'stored' came off 'Alder' on 2026-04-20, and 'Alder' is suspect since 2026-05-10"));
  EXPECT_THAT(book.say(after, entries::Room{.colony = far_off, .brood_combs = 5, .combs = stored}),
              HasSubstr("came off 'Alder'"));
  EXPECT_THAT(book.say(after, entries::Combs{.combs = stored, .name = "S", .count = 5, .colony = far_off}),
              HasSubstr("suspect"));
  EXPECT_THAT(book.say(after, entries::CombsMoved{.combs = stored, .to = entries::CombsGo::melted}),
              HasSubstr("came off 'Alder'"));
  EXPECT_THAT(book.say(after, entries::CombsMoved{.combs = stored, .to = entries::CombsGo::burnt}),
              IsEmpty());
}

TEST_F(CombsOfAlder, are_held_in_parts_too) {
  const CombsId part("part");
  book.must(day_of(5, 1), entries::Combs{.combs = part, .name = "Part", .count = 2, .parted_from = stored});
  EXPECT_THAT(
      book.say(after, entries::CombsMoved{.combs = part, .to = entries::CombsGo::on_hive, .colony = far_off}),
      HasSubstr("'part' came off 'Alder'"));
}

TEST_F(CombsOfAlder, that_nobody_named_hold_every_drawn_comb_that_nobody_names) {
  entries::Room room{.colony = far_off, .super_combs = 10};
  EXPECT_THAT(book.say(after, room), HasSubstr("10 combs that nobody named came off 'Alder' on 2026-04-20"));
  room.undrawn = 10;
  EXPECT_THAT(book.say(after, room), IsEmpty());
  book.must(after, entries::Combs{.combs = CombsId("own"), .name = "Own", .count = 10});
  room = {.colony = far_off, .super_combs = 10, .combs = CombsId("own")};
  EXPECT_THAT(book.say(after, room), IsEmpty());
}

TEST_F(CombsOfAlder, are_free_again_once_the_inspector_has_cleared_it) {
  book.must(after, entries::Cleared{.colony = alder, .by = "the bee inspector"});
  EXPECT_THAT(book.say(after, entries::Room{.colony = far_off, .super_combs = 10}), IsEmpty());
  EXPECT_THAT(
      book.say(after,
               entries::CombsMoved{.combs = stored, .to = entries::CombsGo::on_hive, .colony = far_off}),
      IsEmpty());
}

TEST_F(SuspectAlder, holds_combs_of_its_neighbours_that_left_them_before) {
  ToldBook other;
  other.must(
      day_of(1, 3),
      entries::ColonyBegan{
          .colony = far_off, .name = "Far", .hive = HiveId("h4"), .how = entries::Beginning::overwintered});
  other.must(day_of(1, 4), entries::Combs{.combs = stored, .name = "S", .count = 5, .colony = birch});
  other.must(day_of(4, 1), entries::CombsMoved{.combs = stored, .to = entries::CombsGo::into_store});
  other.must(day_of(5, 10), ropy(alder));
  EXPECT_THAT(
      other.say(after,
                entries::CombsMoved{.combs = stored, .to = entries::CombsGo::on_hive, .colony = far_off}),
      HasSubstr("'stored' came off 'Birch' on 2026-04-01, and 'Alder' is suspect"));
}

TEST(Suspicion, looks_a_year_back_on_combs_and_no_further) {
  ToldBook book;
  book.must(
      day_of(1, 3),
      entries::ColonyBegan{
          .colony = far_off, .name = "Far", .hive = HiveId("h4"), .how = entries::Beginning::overwintered});
  book.must(day_of(2, 1), entries::Combs{.combs = stored, .name = "S", .count = 5, .colony = alder});
  book.must(day_of(2, 2), entries::CombsMoved{.combs = stored, .to = entries::CombsGo::into_store});
  book.must(day_of(2, 3, 2027), ropy(alder));
  EXPECT_THAT(
      book.say(day_of(3, 1, 2027),
               entries::CombsMoved{.combs = stored, .to = entries::CombsGo::on_hive, .colony = far_off}),
      IsEmpty());
}

TEST_F(SuspectAlder, boxes_are_not_put_on_by_telling_the_hive_again) {
  ToldBook told;
  entries::Hive hive{
      .hive = HiveId("h2"), .name = "h2", .site = SiteId("bank"), .type = "National", .super_combs = 10};
  told.must(day_of(5, 1), hive);
  told.must(day_of(5, 10), ropy(alder));
  hive.super_combs = 20;
  EXPECT_THAT(told.say(after, hive), HasSubstr("site 'bank' is suspect"));
  hive.super_combs = 0;
  EXPECT_THAT(told.say(after, hive), HasSubstr("suspect"));
  hive.super_combs = 10;
  hive.name = "Second";
  EXPECT_THAT(told.say(after, hive), IsEmpty()) << "nothing was put on or taken off";
  hive.brood_combs = 14;
  EXPECT_THAT(told.say(after, hive), HasSubstr("suspect"));
}

TEST(Suspect, combs_leave_by_no_parting_off) {
  ToldBook book;
  const auto batch = [](const char* key, std::optional<ColonyId> on, std::optional<CombsId> whole) {
    return entries::Combs{.combs = CombsId(key),
                          .name = key,
                          .count = whole ? 1 : 2,
                          .drawn_year = 2026,
                          .parted_from = std::move(whole),
                          .colony = std::move(on)};
  };
  book.must(day_of(5, 28), batch("k", alder, {}));
  book.must(day_of(6, 1), ropy(alder));
  EXPECT_NE(book.say(day_of(6, 2), batch("k2", birch, CombsId("k"))), "");
  EXPECT_NE(book.say(day_of(6, 2), batch("k3", {}, CombsId("k"))), "");
}

}  // namespace
}  // namespace beegarth::garth
