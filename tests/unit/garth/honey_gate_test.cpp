#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "told_book.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

entries::Treatment thymol(double days = 28) {
  return {.colony = alder, .kind = entries::TreatmentKind::thymol, .days = days};
}
entries::Room supers(int combs, const ColonyId& colony = alder) {
  return {.colony = colony, .super_combs = combs};
}
entries::Harvest crop(std::vector<CombsId> from = {}, const ColonyId& colony = alder) {
  return {.colony = colony, .kg = 12, .from = std::move(from)};
}
const CombsId white("white");

TEST(Honey, from_boxes_put_on_after_the_treatment_is_for_people) {
  ToldBook book;
  book.must(day_of(3, 1), thymol());
  book.must(day_of(5, 1), supers(10));
  EXPECT_THAT(book.say(day_of(7, 20), crop()), IsEmpty());
}

TEST(Honey, from_boxes_that_were_on_during_treatment_is_not) {
  ToldBook book;
  book.must(day_of(5, 1), supers(10));
  book.must(day_of(6, 1), thymol());
  EXPECT_THAT(book.say(day_of(7, 20), crop()), HasSubstr("treated with thymol on 2026-06-01"));
  auto kept_back = crop();
  kept_back.for_people = false;
  EXPECT_THAT(book.say(day_of(7, 20), kept_back), IsEmpty());
}

TEST(Honey, from_boxes_put_on_before_the_withdrawal_is_over_is_not) {
  ToldBook book;
  auto treatment = thymol(28);
  treatment.withdrawal_days = 14;
  book.must(day_of(4, 1), treatment);  // until 29 April, withdrawal until 13 May
  book.must(day_of(5, 10), supers(10));
  EXPECT_THAT(book.say(day_of(7, 20), crop()), HasSubstr("not for people"));
}

TEST(Honey, a_treatment_without_an_end_lasts_until_the_keeper_ends_it) {
  ToldBook book;
  book.must(day_of(3, 1), entries::Treatment{.colony = alder, .kind = entries::TreatmentKind::amitraz});
  book.must(day_of(4, 12), entries::TreatmentEnded{.colony = alder, .kind = entries::TreatmentKind::amitraz});
  book.must(day_of(4, 20), supers(10));
  EXPECT_THAT(book.say(day_of(7, 20), crop()), IsEmpty());
}

TEST(Honey, from_the_nest_of_a_colony_that_was_ever_fed_is_not) {
  ToldBook book;
  book.must(day_of(3, 1), entries::Feed{.colony = alder, .kg = 4});
  EXPECT_THAT(book.say(day_of(7, 20), crop()), HasSubstr("fed on 2026-03-01"));
}

TEST(Honey, from_a_named_batch_goes_by_what_that_batch_lived_through) {
  ToldBook book;
  book.must(day_of(2, 1),
            entries::Combs{.combs = white, .name = "White", .count = 8, .use = entries::CombUse::honey});
  book.must(day_of(3, 1), entries::Feed{.colony = alder, .kg = 4});
  book.must(day_of(4, 1),
            entries::CombsMoved{.combs = white, .to = entries::CombsGo::on_hive, .colony = alder});
  EXPECT_THAT(book.say(day_of(7, 20), crop({white})), IsEmpty());
}

TEST(Honey, a_mark_goes_with_the_comb_through_the_store_to_another_hive) {
  ToldBook book;
  book.must(
      day_of(2, 1),
      entries::Combs{
          .combs = white, .name = "White", .count = 8, .use = entries::CombUse::honey, .colony = alder});
  book.must(day_of(3, 1), entries::Feed{.colony = alder, .kg = 4});
  book.must(day_of(4, 1), entries::CombsMoved{.combs = white, .to = entries::CombsGo::into_store});
  book.must(day_of(5, 1),
            entries::CombsMoved{.combs = white, .to = entries::CombsGo::on_hive, .colony = birch});
  EXPECT_THAT(book.say(day_of(7, 20), crop({white}, birch)), HasSubstr("'White' was on a hive that was fed"));
}

TEST(Honey, of_a_lot_is_offered_only_while_all_its_crops_stand_up) {
  ToldBook book;
  const LotId lot("l1");
  book.must(day_of(5, 1), supers(10));
  book.must(day_of(7, 20), entries::Lot{.lot = lot, .name = "Summer"});
  EXPECT_THAT(book.say(day_of(7, 21), entries::Jars{.lot = lot, .jars = 20, .net_g = 340}),
              HasSubstr("no harvest"));
  auto first = crop();
  first.lot = lot;
  book.must(day_of(7, 20), first);
  EXPECT_THAT(book.say(day_of(7, 21), entries::Jars{.lot = lot, .jars = 20, .net_g = 340}), IsEmpty());
  // A feed that was forgotten is entered later: from then on nothing of the lot is offered.
  book.must(day_of(6, 10), entries::Feed{.colony = alder, .kg = 2});
  EXPECT_THAT(book.honey(day_of(8, 1)).faults_of(lot), testing::ElementsAre(HasSubstr("fed on 2026-06-10")));
  EXPECT_THAT(
      book.say(day_of(8, 1), entries::Sale{.what = entries::Goods::honey, .description = "jars", .lot = lot}),
      HasSubstr("cannot be sold"));
}

TEST(Honey, from_combs_that_a_treated_colony_left_in_the_hive_is_not) {
  ToldBook book;
  book.must(day_of(3, 1), thymol(42));
  book.must(day_of(5, 1), entries::ColonyEnded{.colony = alder, .how = entries::Ending::died});
  book.must(
      day_of(5, 20),
      entries::ColonyBegan{
          .colony = ColonyId("new"), .name = "New", .hive = HiveId("h1"), .how = entries::Beginning::swarm});
  EXPECT_THAT(book.say(day_of(7, 20), crop({}, ColonyId("new"))), HasSubstr("treated with thymol"));
}

TEST(Honey, from_boxes_of_a_guest_united_with_a_colony_under_treatment_is_not) {
  ToldBook book;
  book.must(day_of(4, 1), supers(11, birch));
  book.must(day_of(5, 2), thymol(42));
  for (const auto& colony : {alder, birch}) book.must(day_of(5, 5), entries::Inspection{.colony = colony});
  book.must(day_of(5, 5), entries::Unite{.colony = alder, .from = birch});
  EXPECT_THAT(book.say(day_of(7, 20), crop()), HasSubstr("not for people"));
}

TEST(Honey, from_a_batch_that_was_never_on_the_colony_is_not_its_crop) {
  ToldBook book;
  book.must(day_of(2, 1),
            entries::Combs{.combs = white, .name = "White", .count = 8, .use = entries::CombUse::honey});
  EXPECT_THAT(book.say(day_of(7, 20), crop({white})), HasSubstr("never on this colony"));
}

TEST(Honey, in_the_jars_is_no_more_than_was_harvested) {
  ToldBook book;
  const LotId lot("l1");
  book.must(day_of(5, 1), supers(10));
  book.must(day_of(7, 20), entries::Lot{.lot = lot, .name = "Summer"});
  auto first = crop();  // 12 kg
  first.lot = lot;
  book.must(day_of(7, 20), first);
  book.must(day_of(8, 1), entries::Jars{.lot = lot, .jars = 30, .net_g = 340});  // 10.2 kg
  EXPECT_THAT(book.say(day_of(8, 2), entries::Jars{.lot = lot, .jars = 6, .net_g = 340}),
              HasSubstr("holds 12 kg by its harvests, and its jars would hold 12.24 kg"));
  // Nor by jars entered late, for a day before the others.
  EXPECT_THAT(book.say(day_of(7, 25), entries::Jars{.lot = lot, .jars = 6, .net_g = 340}),
              HasSubstr("its jars would hold 12.24 kg"));
  book.must(day_of(8, 2), entries::Jars{.lot = lot, .jars = 5, .net_g = 340});
}

TEST(Honey, sold_is_no_more_than_was_harvested_or_filled) {
  ToldBook book;
  const LotId lot("l1");
  book.must(day_of(5, 1), supers(10));
  book.must(day_of(7, 20), entries::Lot{.lot = lot, .name = "Summer", .moisture_pct = 17.5});
  auto first = crop();  // 12 kg
  first.lot = lot;
  book.must(day_of(7, 20), first);
  entries::Sale sale{.what = entries::Goods::honey, .description = "x", .lot = lot, .kg = 13};
  EXPECT_THAT(book.say(day_of(8, 3), sale), HasSubstr("13 kg of it would be sold"));
  sale = {.what = entries::Goods::honey, .description = "x", .lot = lot, .jars = 6};
  EXPECT_THAT(book.say(day_of(8, 3), sale), HasSubstr("0 jars of lot 'l1' were filled"));
  book.must(day_of(8, 1), entries::Jars{.lot = lot, .jars = 10, .net_g = 340});
  book.must(day_of(8, 3), sale);
  EXPECT_THAT(book.say(day_of(8, 4), sale), HasSubstr("12 would be sold"));
}

TEST(Honey, corrected_twice_is_in_the_lot_once_and_as_the_smaller) {
  ToldBook book;
  const LotId lot("l1");
  book.must(day_of(5, 1), supers(10));
  book.must(day_of(7, 20), entries::Lot{.lot = lot, .name = "Summer"});
  auto said = crop();
  said.lot = lot;
  book.must(day_of(7, 20), said);
  const EntryId harvest = book.last();
  said.kg = 11;
  ASSERT_THAT(book.say(day_of(7, 20), said, harvest), IsEmpty());
  said.kg = 13;
  ASSERT_THAT(book.say(day_of(7, 20), said, book.last()), IsEmpty());  // the correction corrected
  said.kg = 10;
  ASSERT_THAT(book.say(day_of(7, 20), said, harvest), IsEmpty());  // and the first entry once more
  const Date day = day_of(8, 1);
  const auto ledger = honey_on(book.standing(day), day, {}, first_said(book.all()));
  EXPECT_EQ(ledger.crops.size(), 2U);
  EXPECT_DOUBLE_EQ(ledger.held_kg(lot), 10);
  EXPECT_THAT(book.say(day, entries::Jars{.lot = lot, .jars = 30, .net_g = 340}), HasSubstr("holds 10 kg"));
}

TEST(Honey, of_a_marked_batch_stays_marked_whatever_is_corrected) {
  ToldBook book;
  entries::Combs batch{
      .combs = white, .name = "White", .count = 8, .use = entries::CombUse::honey, .colony = alder};
  book.must(day_of(2, 1), batch);
  const EntryId brought_in = book.last();
  book.must(day_of(3, 1), entries::Feed{.colony = alder, .kg = 4});
  const EntryId feed = book.last();
  EXPECT_THAT(book.say(day_of(4, 1), batch, brought_in), HasSubstr("would clear the mark of 'White'"));
  EXPECT_THAT(book.say(day_of(4, 1), entries::Removed{.entry = brought_in}), HasSubstr("clear the mark"));
  auto elsewhere = batch;
  elsewhere.colony.reset();
  EXPECT_THAT(book.say(day_of(2, 1), elsewhere, brought_in), HasSubstr("clear the mark"));
  batch.count = 7;
  EXPECT_THAT(book.say(day_of(2, 1), batch, brought_in), IsEmpty());
  EXPECT_TRUE(book.honey(day_of(5, 1)).batches.at(white).mark);
  // A feed that was not given marks nothing.
  EXPECT_THAT(book.say(day_of(4, 2), entries::Removed{.entry = feed}), IsEmpty());
  EXPECT_FALSE(book.honey(day_of(5, 1)).batches.at(white).mark);
}

TEST(Honey, drone_comb_cut_out_marks_nothing) {
  ToldBook book;
  book.must(day_of(5, 1), supers(10));
  book.must(day_of(6, 1),
            entries::Treatment{.colony = alder, .kind = entries::TreatmentKind::drone_comb_removed});
  EXPECT_THAT(book.say(day_of(7, 20), crop()), IsEmpty());
}

TEST(Honey, boxes_that_came_off_just_before_are_the_ones_harvested) {
  ToldBook book;
  book.must(day_of(3, 1), entries::Feed{.colony = alder, .kg = 4});
  book.must(day_of(5, 1), supers(10));
  book.must(day_of(7, 18), supers(-10));
  EXPECT_THAT(book.say(day_of(7, 20), crop()), IsEmpty());
}

TEST(Honey, boxes_taken_off_as_a_batch_take_their_mark_along_and_leave_none_in_the_store) {
  ToldBook book;
  book.must(day_of(5, 1), supers(10));
  book.must(day_of(5, 5), entries::Feed{.colony = alder, .kg = 3});
  book.must(day_of(6, 1),
            entries::Combs{.combs = white, .name = "White", .count = 10, .use = entries::CombUse::honey});
  auto off = supers(-10);
  off.combs = white;
  book.must(day_of(6, 1), off);
  book.must(day_of(6, 10), supers(10, birch));
  EXPECT_THAT(book.say(day_of(7, 20), crop({}, birch)), IsEmpty());
  book.must(day_of(7, 21),
            entries::CombsMoved{.combs = white, .to = entries::CombsGo::on_hive, .colony = birch});
  EXPECT_THAT(book.say(day_of(8, 20), crop({white}, birch)), HasSubstr("fed on 2026-05-05"));
  EXPECT_THAT(book.say(day_of(8, 20), crop({}, birch)), HasSubstr("may be of 'White'"));
}

TEST(Honey, boxes_that_came_off_marked_may_be_the_ones_harvested_though_fresh_ones_are_on) {
  ToldBook book;
  book.must(day_of(5, 1), supers(10));
  book.must(day_of(6, 1), thymol(20));
  book.must(day_of(7, 10), supers(-10));
  auto fresh = supers(10);
  fresh.undrawn = 10;
  book.must(day_of(7, 10), fresh);
  EXPECT_THAT(book.say(day_of(7, 12), crop()), HasSubstr("treated with thymol"));
  EXPECT_THAT(book.say(day_of(8, 20), crop()), IsEmpty());
}

TEST(Honey, boxes_of_a_colony_that_was_moved_united_or_died_keep_their_mark_in_the_store) {
  const std::vector<entries::Payload> ways = {
      entries::Transfer{.colony = alder, .hive = h3},
      entries::ColonyMoved{.colony = alder, .hive = h3},
      entries::ColonyEnded{.colony = alder, .how = entries::Ending::died},
  };
  for (const auto& way : ways) {
    ToldBook book;
    book.must(day_of(5, 1), supers(10));
    book.must(day_of(5, 5), entries::Feed{.colony = alder, .kg = 3});
    book.must(day_of(6, 1), way);
    book.must(day_of(6, 10), supers(10, birch));
    EXPECT_THAT(book.say(day_of(7, 20), crop({}, birch)), HasSubstr("not for people"))
        << entries::kind_name(way);
  }
}

TEST(Honey, from_combs_of_the_nest_that_were_hung_up_into_the_boxes_is_not) {
  ToldBook book;
  book.must(day_of(3, 1), entries::Feed{.colony = alder, .kg = 4});
  book.must(day_of(5, 1), entries::Room{.colony = alder, .brood_combs = -5, .super_combs = 5});
  EXPECT_THAT(book.say(day_of(7, 20), crop()), HasSubstr("fed on 2026-03-01"));
}

TEST(Honey, is_sold_by_its_lot_as_soon_as_the_book_knows_of_one) {
  ToldBook book;
  const entries::Sale sale{.what = entries::Goods::honey, .description = "two jars", .jars = 2};
  EXPECT_THAT(book.say(day_of(7, 1), sale), IsEmpty());
  book.must(day_of(5, 1), supers(10));
  book.must(day_of(7, 20), crop());
  EXPECT_THAT(book.say(day_of(7, 21), sale),
              HasSubstr("of no lot, and the book knows of a harvest since 2026-07-20"));
  EXPECT_THAT(book.say(day_of(7, 19), sale), IsEmpty());
}

TEST(Honey, part_of_a_batch_takes_its_mark_and_its_age_along) {
  ToldBook book;
  const CombsId all("all"), some("some");
  book.must(day_of(3, 1), entries::Combs{.combs = all,
                                         .name = "all",
                                         .count = 10,
                                         .use = entries::CombUse::honey,
                                         .drawn_year = 2024,
                                         .colony = alder});
  book.must(day_of(3, 10), entries::Feed{.colony = alder, .kg = 2});
  book.must(day_of(4, 1), entries::CombsMoved{.combs = all, .to = entries::CombsGo::into_store});
  const auto part = [&](int count) {
    return entries::Combs{
        .combs = some, .name = "some", .count = count, .use = entries::CombUse::honey, .parted_from = all};
  };
  EXPECT_THAT(book.say(day_of(4, 2), part(11)), HasSubstr("has 10 combs"));
  book.must(day_of(4, 2), part(4));
  const HoneyLedger ledger = book.honey(day_of(4, 3));
  EXPECT_EQ(ledger.batches.at(all).combs.count, 6);
  EXPECT_EQ(ledger.batches.at(some).combs.drawn_year, 2024);
  EXPECT_TRUE(ledger.batches.at(some).mark);
  book.must(day_of(5, 1),
            entries::CombsMoved{.combs = some, .to = entries::CombsGo::on_hive, .colony = birch});
  EXPECT_THAT(book.say(day_of(7, 1), entries::Harvest{.colony = birch, .kg = 4, .from = {some}}),
              HasSubstr("not for people"));
}

TEST(Honey, no_more_is_extracted_than_was_harvested) {
  ToldBook book;
  const LotId lot("L1");
  book.must(day_of(7, 1), entries::Lot{.lot = lot, .name = "Early"});
  EXPECT_THAT(book.say(day_of(7, 2), entries::Extraction{.lot = lot, .kg = 5}), HasSubstr("holds 0 kg"));
  book.must(day_of(7, 1), entries::Harvest{.colony = alder, .kg = 11, .lot = lot});
  book.must(day_of(7, 2), entries::Extraction{.lot = lot, .kg = 6});
  EXPECT_THAT(book.say(day_of(7, 3), entries::Extraction{.lot = lot, .kg = 6}),
              HasSubstr("12 kg would have been"));
  EXPECT_EQ(book.say(day_of(7, 3), entries::Extraction{.lot = lot, .kg = 4.5}), "");
}

TEST(Honey, what_is_sold_loose_and_what_is_in_jars_come_out_of_one_lot) {
  ToldBook book;
  const LotId lot("L1");
  book.must(day_of(7, 1), entries::Lot{.lot = lot, .name = "Early"});
  book.must(day_of(7, 1), entries::Harvest{.colony = alder, .kg = 9, .lot = lot});
  book.must(day_of(7, 3), entries::Jars{.lot = lot, .jars = 10, .net_g = 454});
  const auto loose = [&](double kg) {
    return entries::Sale{.what = entries::Goods::honey, .description = "a bucket", .lot = lot, .kg = kg};
  };
  EXPECT_THAT(book.say(day_of(7, 4), loose(5)), HasSubstr("4.54 kg are in jars"));
  book.must(day_of(7, 4), loose(4));
  EXPECT_NE(book.say(day_of(7, 5), entries::Jars{.lot = lot, .jars = 2, .net_g = 454}), "");
  EXPECT_EQ(book.say(day_of(7, 5), entries::Sale{.what = entries::Goods::honey,
                                                 .description = "jars, weighed",
                                                 .lot = lot,
                                                 .jars = 10,
                                                 .kg = 4.54}),
            "")
      << "the weight of jars is not loose honey too";
  EXPECT_NE(book.say(day_of(7, 6),
                     entries::Sale{.what = entries::Goods::feed, .description = "honey for bees", .kg = 6}),
            "");
}

TEST(Honey, a_named_batch_has_as_many_combs_as_come_off_and_hangs_there) {
  ToldBook book;
  const CombsId one("one");
  book.must(day_of(4, 1),
            entries::Combs{.combs = one, .name = "one", .count = 1, .use = entries::CombUse::honey});
  book.must(day_of(5, 1), entries::Room{.colony = alder, .super_combs = 11});
  book.must(day_of(5, 2),
            entries::Treatment{.colony = alder, .kind = entries::TreatmentKind::amitraz, .days = 42});
  EXPECT_THAT(book.say(day_of(6, 20), entries::Room{.colony = alder, .super_combs = -11, .combs = one}),
              HasSubstr("has 1 combs"));
  book.must(day_of(6, 1),
            entries::CombsMoved{.combs = one, .to = entries::CombsGo::on_hive, .colony = birch});
  EXPECT_THAT(book.say(day_of(6, 20), entries::Room{.colony = alder, .super_combs = -1, .combs = one}),
              HasSubstr("hangs on 'birch'"));
}

}  // namespace
}  // namespace beegarth::garth
