#include "belief/timeline.hpp"

#include <gtest/gtest.h>

#include <string>

namespace beegarth::belief {
namespace {

const ColonyId alder("alder");

Date on(int month, int day) {
  return *Date::from_ymd(2031, month, day);
}

entries::Entry entry(Date date, const std::string& id, entries::Payload payload) {
  entries::Entry e;
  e.id = EntryId(id);
  e.happened = date;
  e.payload = std::move(payload);
  return e;
}

Timeline laid_out(std::vector<entries::Entry> list, Date today = on(8, 1)) {
  History history;
  history.colony = alder;
  history.began = on(3, 1);
  history.entries = std::move(list);
  return lay_out(history, today);
}

entries::MiteCount board(double days) {
  entries::MiteCount count;
  count.days = days;
  return count;
}

TEST(Timeline, sorts_sights_and_deeds_by_date_and_leaves_out_what_lies_ahead) {
  const Timeline t =
      laid_out({entry(on(6, 1), "b", entries::Inspection{}), entry(on(4, 1), "a", entries::Feed{}),
                entry(on(8, 2), "c", entries::Inspection{})});
  ASSERT_EQ(t.observations.size(), 1U);
  EXPECT_EQ(t.observations[0].date, on(6, 1));
  ASSERT_EQ(t.deeds.size(), 1U);
  EXPECT_EQ(t.deeds[0].day, 31);
}

TEST(Timeline, takes_a_swarm_as_seen_and_as_done) {
  const Timeline t = laid_out({entry(on(5, 20), "a", entries::Swarmed{alder, {}})});
  EXPECT_EQ(t.observations.size(), 1U);
  EXPECT_EQ(t.deeds.size(), 1U);
}

TEST(Timeline, a_colony_found_dead_has_ended_and_the_entry_of_its_end_says_it_again) {
  const Timeline t = laid_out({entry(on(5, 20), "a", entries::DeadColony{.colony = alder}),
                               entry(on(5, 22), "b", entries::ColonyEnded{.colony = alder})});
  ASSERT_TRUE(t.ended);
  EXPECT_EQ(*t.ended, on(5, 20));
  EXPECT_EQ(t.observations.size(), 1U);
  for (const facts::Reason& remark : t.remarks)
    EXPECT_EQ(remark.text.find("left out"), std::string::npos) << remark.text;
}

TEST(Timeline, the_weight_of_a_hive_of_two_colonies_is_left_out_and_said_to_be) {
  History history{.colony = alder, .began = on(3, 1)};
  history.entries = {
      entry(on(5, 1), "a", entries::Weight{.colony = alder, .kg = 60}),
      entry(on(5, 2), "b", entries::Weight{.colony = alder, .kg = 9, .what = entries::Weighed::stores})};
  EXPECT_EQ(lay_out(history, on(8, 1)).observations.size(), 2U);
  history.dwelling.two_colonies = true;
  const Timeline t = lay_out(history, on(8, 1));
  ASSERT_EQ(t.observations.size(), 1U);
  EXPECT_EQ(t.observations.front().entry, 1U);
  EXPECT_NE(t.remarks.front().text.find("another colony lives in it"), std::string::npos);
}

TEST(Timeline, a_hive_found_without_bees_ends_the_colony_unless_bees_were_seen_in_it_since) {
  entries::Inspection empty;
  empty.bees = 0;
  empty.seams = 0;
  const Timeline t = laid_out({entry(on(5, 1), "a", empty), entry(on(5, 9), "b", board(3))});
  EXPECT_EQ(t.ended, on(5, 1));
  ASSERT_EQ(t.observations.size(), 1U);  // what was counted in an empty hive is not judged
  EXPECT_TRUE(std::holds_alternative<DeadOut>(t.observations[0].sight));
  ASSERT_FALSE(t.remarks.empty());
  EXPECT_EQ(t.remarks[0].entries.front(), EntryId("a"));
  entries::Inspection bees;
  bees.seams = 5;
  EXPECT_FALSE(laid_out({entry(on(5, 1), "a", empty), entry(on(5, 9), "b", bees)}).ended);
  const entries::MiteCount wash{.method = entries::MiteMethod::wash, .mites = 3, .bees = 300};
  EXPECT_FALSE(laid_out({entry(on(5, 1), "a", empty), entry(on(5, 9), "b", wash)}).ended);
  entries::Inspection handful;  // less than a seam of them, nothing said of brood
  handful.seams = 0;
  EXPECT_FALSE(laid_out({entry(on(5, 1), "a", handful)}).ended);
  handful.brood_combs = 0;
  handful.eggs = false;  // a small colony alive between queens looks like this
  EXPECT_FALSE(laid_out({entry(on(5, 1), "a", handful)}).ended);
  handful.open_brood = false;
  handful.capped_brood = false;
  EXPECT_TRUE(laid_out({entry(on(5, 1), "a", handful)}).ended);
}

TEST(Timeline, takes_a_unite_from_the_side_of_the_colony) {
  const Timeline goes_on = laid_out({entry(on(5, 20), "a", entries::Unite{alder, ColonyId("birch")})});
  EXPECT_FALSE(goes_on.ended);
  EXPECT_EQ(goes_on.deeds.size(), 1U);
  const Timeline ends = laid_out({entry(on(5, 20), "a", entries::Unite{ColonyId("birch"), alder})});
  ASSERT_TRUE(ends.ended);
  EXPECT_EQ(*ends.ended, on(5, 20));
  EXPECT_TRUE(std::holds_alternative<LivedOn>(ends.observations.at(0).sight));
}

TEST(Timeline, a_swarm_that_names_its_mother_is_not_how_she_began) {
  const entries::ColonyBegan swarm{
      .colony = ColonyId("birch"), .name = "Birch", .how = entries::Beginning::swarm, .swarm_of = alder};
  EXPECT_FALSE(laid_out({entry(on(5, 20), "s", swarm)}).beginning);
  const entries::ColonyBegan own{.colony = alder, .name = "Alder", .how = entries::Beginning::overwintered};
  EXPECT_TRUE(laid_out({entry(on(5, 1), "o", own), entry(on(5, 20), "s", swarm)}).beginning->colony == alder);
}

TEST(Timeline, takes_a_marked_queen_as_a_queen_seen) {
  const Timeline t =
      laid_out({entry(on(5, 20), "a", entries::Queen{alder, entries::QueenEvent::marked, {}, {}})});
  ASSERT_EQ(t.observations.size(), 1U);
  EXPECT_EQ(std::get<entries::Inspection>(t.observations[0].sight).queen, true);
}

TEST(Timeline, reads_no_board_under_a_treatment_and_says_so) {
  entries::Treatment strips;
  strips.kind = entries::TreatmentKind::amitraz;
  strips.days = 42;
  const auto boards = [&](Date read) {
    return laid_out({entry(on(5, 1), "t", strips), entry(read, "b", board(3))}).observations.size();
  };
  EXPECT_EQ(boards(on(5, 1)), 1U);  // read in the morning, before the strips went in
  EXPECT_EQ(boards(on(5, 2)), 0U);
  EXPECT_EQ(boards(on(6, 15)), 0U);  // the strips were in, or had just come out
  EXPECT_EQ(boards(on(6, 23)), 1U);  // three days from 20 June, 50 days after: the fall is natural again
}

TEST(Timeline, says_how_long_nobody_looked) {
  const Timeline t = laid_out({entry(on(3, 20), "a", entries::Inspection{})});
  ASSERT_EQ(t.remarks.size(), 1U);
  EXPECT_NE(t.remarks[0].text.find("134 days without a look"), std::string::npos) << t.remarks[0].text;
}

TEST(Timeline, leaves_out_what_was_seen_after_the_end) {
  const Timeline t =
      laid_out({entry(on(5, 1), "a", entries::ColonyEnded{}), entry(on(5, 9), "b", entries::Inspection{})});
  EXPECT_EQ(t.observations.size(), 1U);
  ASSERT_FALSE(t.remarks.empty());
  EXPECT_EQ(t.remarks[0].entries.at(0), EntryId("b"));
}

}  // namespace
}  // namespace beegarth::belief
