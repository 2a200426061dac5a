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

}  // namespace
}  // namespace beegarth::garth
