// What must hold of every outlook, whatever the colony.
#include <gtest/gtest.h>

#include <bit>
#include <cmath>
#include <string>
#include <thread>

#include "belief/belief.hpp"
#include "calibration/synthetic.hpp"

namespace beegarth {
namespace {

using synthetic::day;
using synthetic::entry_on;

constexpr int members = 96;

// Every number of an outlook, bit for bit, and every word.
class Bits {
 public:
  void add(double x) { hash_ = (hash_ ^ std::bit_cast<std::uint64_t>(x)) * 1099511628211ULL; }
  void add(const std::string& text) { hash_ = (hash_ ^ stable_hash(text)) * 1099511628211ULL; }
  std::uint64_t hash() const { return hash_; }

 private:
  std::uint64_t hash_ = 14695981039346656037ULL;
};

std::uint64_t bits_of(const facts::Outlook& outlook) {
  Bits bits;
  bits.add(outlook.alive);
  bits.add(outlook.effective_sample_size);
  for (const auto& event : outlook.events) {
    bits.add(event.definition);
    for (const auto& point : event.course) {
      for (const double x : {point.odds.value, point.odds.low, point.odds.high}) bits.add(x);
    }
    for (const auto& why : event.why) bits.add(why.text);
  }
  for (const auto& fan : outlook.fans) {
    for (const auto& levels : fan.levels) {
      for (const double x : levels) bits.add(x);
    }
  }
  for (const auto& learnt : outlook.learnt) bits.add(learnt.posterior_sd);
  for (const auto& remark : outlook.remarks) bits.add(remark.text);
  return bits.hash();
}

struct Asked {
  belief::History history;
  belief::Forcing forcing;
  belief::Options options;
};

entries::Inspection look(double seams, std::optional<int> charged = std::nullopt) {
  entries::Inspection seen;
  seen.seams = seams;
  seen.brood_combs = std::round(0.7 * seams);
  seen.eggs = true;
  seen.charged_cells = charged;
  seen.stores_kg = 9;
  return seen;
}

Asked may_colony(const std::string& name = "alder") {
  Asked asked;
  asked.history.colony = ColonyId(name);
  asked.history.began = day(2031, 3, 20);
  entries::MiteCount board;
  board.mites = 6;
  board.days = 3;
  asked.history.entries = {entry_on(day(2031, 3, 28), 1, look(5)), entry_on(day(2031, 4, 20), 2, look(8, 0)),
                           entry_on(day(2031, 5, 6), 3, look(10, 0)), entry_on(day(2031, 5, 10), 4, board),
                           entry_on(day(2031, 5, 20), 5, look(12, 4))};
  asked.options = {.members = members, .seed = 3, .today = day(2031, 5, 21), .horizon = day(2031, 6, 20)};
  asked.forcing.past = synthetic::season(1, asked.history.began, asked.options.today - 1);
  for (std::uint64_t f = 0; f < 8; ++f) {
    asked.forcing.futures.push_back(synthetic::season(10 + f, asked.options.today, asked.options.horizon));
  }
  return asked;
}

facts::Outlook foresee(const Asked& asked) {
  static const belief::Tables tables = synthetic::tables();
  auto outlook = belief::foresee(asked.history, asked.forcing, tables, asked.options);
  if (!outlook) throw std::runtime_error(one_line(outlook.problem()));
  return *outlook;
}

Problem problem_of(const Asked& asked) {
  static const belief::Tables tables = synthetic::tables();
  const auto outlook = belief::foresee(asked.history, asked.forcing, tables, asked.options);
  if (outlook) return {ProblemKind::bad_input, "there was no problem", "", ""};
  return outlook.problem();
}

const facts::EventOutlook& event(const facts::Outlook& outlook, facts::EventKind kind) {
  for (const auto& one : outlook.events) {
    if (one.kind == kind) return one;
  }
  throw std::logic_error("no such event");
}

void expect_sound(const facts::Outlook& outlook) {
  EXPECT_EQ(outlook.events.size(), 9U);
  EXPECT_TRUE(std::isfinite(outlook.effective_sample_size));
  EXPECT_GE(outlook.effective_sample_size, 1.0);
  for (const auto& one : outlook.events) {
    double before = 0;
    EXPECT_FALSE(one.definition.empty());
    EXPECT_FALSE(one.course.empty());
    for (const auto& point : one.course) {
      EXPECT_GE(point.odds.value, before);
      EXPECT_LE(point.odds.low, point.odds.value);
      EXPECT_LE(point.odds.value, point.odds.high);
      EXPECT_LE(point.odds.high, 1.0);
      EXPECT_GE(point.odds.low, 0.0);
      before = point.odds.value;
    }
  }
  EXPECT_EQ(outlook.fans.size(), 5U);
  for (const auto& fan : outlook.fans) {
    EXPECT_EQ(fan.dates.size(), fan.levels.size());
    for (const auto& levels : fan.levels) {
      for (std::size_t i = 0; i < levels.size(); ++i) {
        EXPECT_TRUE(std::isfinite(levels[i])) << fan.quantity;
        EXPECT_LE(levels[i == 0 ? 0 : i - 1], levels[i]) << fan.quantity;
      }
    }
  }
  for (const auto& learnt : outlook.learnt) {
    EXPECT_LE(0, learnt.contraction_low) << learnt.parameter;
    EXPECT_LE(learnt.contraction_low, learnt.contraction) << learnt.parameter;
    EXPECT_LE(learnt.contraction, learnt.contraction_high) << learnt.parameter;
    EXPECT_LE(learnt.contraction_high, 1) << learnt.parameter;
  }
}

TEST(BeliefLaws, an_outlook_is_sound_and_the_same_every_time) {
  const facts::Outlook first = foresee(may_colony());
  expect_sound(first);
  EXPECT_EQ(bits_of(first), bits_of(foresee(may_colony())));
  EXPECT_NE(bits_of(first), bits_of(foresee(may_colony("birch"))));  // another colony has other luck
}

TEST(BeliefLaws, entries_later_than_today_change_no_bit) {
  Asked asked = may_colony();
  const auto without = bits_of(foresee(asked));
  asked.history.entries.push_back(entry_on(day(2031, 5, 22), 6, look(2, 12)));
  asked.history.entries.push_back(entry_on(day(2031, 6, 2), 7, entries::ColonyEnded{}));
  EXPECT_EQ(bits_of(foresee(asked)), without);
}

TEST(BeliefLaws, weather_later_than_the_horizon_and_before_the_colony_began_changes_no_fan) {
  Asked asked = may_colony();
  const auto without = foresee(asked);
  auto longer = synthetic::season(1, asked.history.began - 40, asked.history.began - 1);
  longer.insert(longer.end(), asked.forcing.past.begin(), asked.forcing.past.end());
  asked.forcing.past = longer;
  const auto with = foresee(asked);
  for (std::size_t f = 0; f < with.fans.size(); ++f) EXPECT_EQ(with.fans[f].levels, without.fans[f].levels);
}

TEST(BeliefLaws, charged_cells_seen_raise_the_odds_of_swarm_preparation_and_are_named_as_the_reason) {
  Asked with_cells = may_colony();
  with_cells.options.members = 512;
  Asked without_cells = with_cells;
  without_cells.history.entries.back() = entry_on(day(2031, 5, 20), 5, look(12, 0));
  const auto seen = foresee(with_cells);
  const auto none = foresee(without_cells);
  const auto& high = event(seen, facts::EventKind::swarm_preparation);
  const auto& low = event(none, facts::EventKind::swarm_preparation);
  EXPECT_GT(high.course.front().odds.value, low.course.front().odds.value + 0.3);
  ASSERT_FALSE(high.why.empty());
  ASSERT_FALSE(high.why.front().entries.empty());
  EXPECT_EQ(high.why.front().entries.front(), EntryId("entry-5")) << high.why.front().text;
  EXPECT_FALSE(high.why.front().sources.empty());
}

TEST(BeliefLaws, removing_an_inspection_changes_the_odds_and_the_why_that_named_it) {
  Asked asked = may_colony();
  const auto with = foresee(asked);
  asked.history.entries.pop_back();
  const auto without = foresee(asked);
  EXPECT_NE(event(with, facts::EventKind::swarm_preparation).course.back().odds.value,
            event(without, facts::EventKind::swarm_preparation).course.back().odds.value);
  for (const auto& one : without.events) {
    for (const auto& why : one.why) {
      for (const auto& entry : why.entries) EXPECT_NE(entry, EntryId("entry-5"));
    }
  }
}

TEST(BeliefLaws, colonies_reckoned_on_any_number_of_threads_come_out_bit_for_bit_alike) {
  constexpr int colonies = 7;
  std::array<std::uint64_t, colonies> alone{};
  for (int c = 0; c < colonies; ++c)
    alone.at(static_cast<std::size_t>(c)) = bits_of(foresee(may_colony("c" + std::to_string(c))));
  for (const int threads : {2, 7}) {
    std::array<std::uint64_t, colonies> together{};
    std::vector<std::thread> workers;
    workers.reserve(static_cast<std::size_t>(threads));
    for (int t = 0; t < threads; ++t) {
      workers.emplace_back([&, t] {
        for (int c = t; c < colonies; c += threads) {
          together.at(static_cast<std::size_t>(c)) = bits_of(foresee(may_colony("c" + std::to_string(c))));
        }
      });
    }
    for (auto& worker : workers) worker.join();
    EXPECT_EQ(together, alone) << threads << " threads";
  }
}

TEST(BeliefLaws, more_bees_seen_means_more_bees_believed) {
  Asked asked = may_colony();
  const double twelve = foresee(asked).fans[0].levels[62][3];
  asked.history.entries.back() = entry_on(day(2031, 5, 20), 5, look(6, 4));
  EXPECT_LT(foresee(asked).fans[0].levels[62][3], twelve);
}

TEST(BeliefLaws, a_move_within_the_range_of_forage_costs_bees_and_one_beyond_it_none) {
  Asked stays = may_colony();
  Asked near = stays;
  Asked far = stays;
  near.history.moves = {{stays.options.today - 1, 2}};
  far.history.moves = {{stays.options.today - 1, 20}};
  EXPECT_EQ(bits_of(foresee(far)), bits_of(foresee(stays)));
  const auto bees_today = [](const Asked& asked) { return foresee(asked).fans[0].levels[62][3]; };
  EXPECT_LT(bees_today(near), 0.95 * bees_today(stays));
}

TEST(BeliefLaws, without_supers_none_fill_and_with_many_they_fill_later_than_with_few) {
  Asked asked = may_colony();
  asked.history.dwelling.super_combs = 0;
  EXPECT_EQ(event(foresee(asked), facts::EventKind::supers_full).course.back().odds.value, 0);
  EXPECT_EQ(event(foresee(asked), facts::EventKind::surplus).course.back().odds.value, 0);
  asked.history.dwelling.super_combs = 4;
  const double few = event(foresee(asked), facts::EventKind::supers_full).course.back().odds.value;
  asked.history.dwelling.super_combs = 40;
  const double many = event(foresee(asked), facts::EventKind::supers_full).course.back().odds.value;
  EXPECT_GT(few, 0.2);
  EXPECT_LT(many, few);
}

// Nothing entered of it yet; a small crowd knows its odds to 0.2 only.
Asked autumn_colony(Date today, Date horizon, int crowd) {
  Asked asked = may_colony();
  asked.history.entries.clear();
  asked.history.began = day(2031, 8, 1);
  asked.options.today = today;
  asked.options.horizon = horizon;
  asked.options.members = crowd;
  asked.forcing.past = synthetic::season(1, asked.history.began, today - 1);
  asked.forcing.futures.assign(4, synthetic::season(5, today, horizon));
  return asked;
}

TEST(BeliefLaws, a_colony_that_is_small_in_autumn_is_likelier_too_small_for_the_winter) {
  Asked asked = autumn_colony(day(2031, 9, 10), day(2031, 10, 10), 4096);
  const auto odds_with = [&](double seams) {
    asked.history.entries = {entry_on(day(2031, 8, 10), 1, look(seams)),
                             entry_on(day(2031, 9, 9), 2, look(seams))};
    const auto outlook = foresee(asked);
    const auto& small = event(outlook, facts::EventKind::small_for_winter);
    EXPECT_EQ(small.course.back().by, day(2031, 10, 31));  // followed beyond the horizon until it is decided
    return small.course.back().odds.value;
  };
  const double three_seams = odds_with(3);
  EXPECT_GT(three_seams, 0.8);
  EXPECT_LT(odds_with(13), three_seams - 0.3);
}

TEST(BeliefLaws, a_colony_may_be_dead_already_and_is_likelier_to_be_dead_by_spring_the_more_mites_it_has) {
  Asked asked = autumn_colony(day(2031, 9, 20), day(2032, 3, 31), 1024);
  auto seen = look(10);
  seen.stores_kg = 16;
  const auto death_with = [&](int mites) {
    const entries::MiteCount wash{.method = entries::MiteMethod::wash, .mites = mites, .bees = 300};
    asked.history.entries = {entry_on(day(2031, 9, 5), 1, seen), entry_on(day(2031, 9, 6), 2, wash)};
    const auto outlook = foresee(asked);
    const auto& death = event(outlook, facts::EventKind::death);
    EXPECT_EQ(death.course.back().by, day(2032, 3, 31));
    EXPECT_NEAR(death.course.front().odds.value, 1 - outlook.alive, 1e-9);
    return death.course.back().odds.value;
  };
  EXPECT_GT(death_with(30), death_with(1) + 0.3);
}

TEST(BeliefLaws, a_swarm_that_was_told_did_not_leave_unseen) {
  Asked asked = may_colony();
  EXPECT_GT(foresee(asked).swarmed_unseen, 0);
  asked.history.entries.push_back(
      entry_on(day(2031, 5, 21), 6, entries::Swarmed{.colony = asked.history.colony}));
  EXPECT_EQ(foresee(asked).swarmed_unseen, 0);
}

// Combs of stores seen with boxes on are those of the nest: no figure of all that there is.
TEST(BeliefLaws, combs_of_stores_are_a_figure_of_all_stores_only_where_nothing_stands_above) {
  const auto stores_marked = [](int super_combs) {
    Asked asked = may_colony();
    auto seen = look(12);
    seen.stores_kg.reset();
    seen.store_combs = 2;
    asked.history.entries = {
        entry_on(day(2031, 5, 1), 1,
                 entries::Room{.colony = asked.history.colony, .super_combs = super_combs}),
        entry_on(day(2031, 5, 20), 2, seen)};
    const auto outlook = foresee(asked);
    return std::any_of(outlook.seen.begin(), outlook.seen.end(),
                       [](const auto& mark) { return mark.quantity == "stores_kg"; });
  };
  EXPECT_TRUE(stores_marked(0));
  EXPECT_FALSE(stores_marked(10));
}

// The bees are shaken and what they had is left behind, or the combs go over with them.
TEST(BeliefLaws, a_colony_shaken_into_another_hive_has_neither_brood_nor_honey) {
  Asked asked = may_colony();
  asked.options.members = 256;
  const auto middle_after = [&](entries::TransferWay how, std::string_view quantity) {
    Asked moved = asked;
    moved.history.entries.push_back(entry_on(day(2031, 5, 20), 8, entries::Transfer{.how = how}));
    const auto outlook = foresee(moved);
    for (const auto& fan : outlook.fans) {
      if (fan.quantity == quantity)
        return fan.levels[static_cast<std::size_t>(day(2031, 5, 21) - fan.dates.front())][3];
    }
    throw std::logic_error("no such fan");
  };
  EXPECT_GT(middle_after(entries::TransferWay::combs_lifted_over, "brood_cells"), 5000);
  EXPECT_LT(middle_after(entries::TransferWay::shaken, "brood_cells"), 3000);  // a day's eggs
  EXPECT_GT(middle_after(entries::TransferWay::combs_lifted_over, "stores_kg"), 5);
  EXPECT_LT(middle_after(entries::TransferWay::shaken, "stores_kg"), 3);
}

// On 31 October it is decided for this year, and the course says nothing of the next.
TEST(BeliefLaws, what_is_decided_in_autumn_is_told_to_that_day_and_not_beyond) {
  for (const auto& [today, last] :
       {std::pair{day(2031, 9, 10), day(2031, 10, 31)}, std::pair{day(2031, 10, 31), day(2031, 10, 31)},
        std::pair{day(2031, 11, 1), day(2032, 10, 31)}}) {
    Asked asked = autumn_colony(today, day(2032, 11, 15), members);
    asked.history.entries = {entry_on(day(2031, 8, 10), 1, look(8))};
    const auto outlook = foresee(asked);
    for (const auto kind : {facts::EventKind::small_for_winter, facts::EventKind::winter_mites}) {
      const auto& decided = event(outlook, kind);
      EXPECT_EQ(decided.course.back().by, last);
      EXPECT_NE(decided.definition.find(last.iso()), std::string::npos);
    }
    EXPECT_EQ(event(outlook, facts::EventKind::death).course.back().by, asked.options.horizon);
  }
}

// From the day on which a second colony lives in its hive it has half of the combs.
TEST(BeliefLaws, a_colony_whose_hive_is_halved_runs_out_of_room_sooner_and_weighing_both_tells_of_neither) {
  Asked asked = may_colony();
  asked.history.dwelling.brood_combs = 22;
  const double whole = event(foresee(asked), facts::EventKind::out_of_room).course.back().odds.value;
  facts::Dwelling half = asked.history.dwelling;
  half.brood_combs = 11;
  half.two_colonies = true;
  asked.history.rehoused = {{day(2031, 5, 1), half, false}};
  const double halved = event(foresee(asked), facts::EventKind::out_of_room).course.back().odds.value;
  EXPECT_GT(halved, whole + 0.2);
  const auto left_out = [&](Date date) {
    Asked weighed = asked;
    weighed.history.entries.push_back(
        entry_on(date, 9, entries::Weight{.kg = 40, .what = entries::Weighed::whole_hive}));
    const auto outlook = foresee(weighed);
    return std::any_of(outlook.remarks.begin(), outlook.remarks.end(), [](const facts::Reason& remark) {
      return remark.text.find("another colony lives in it") != std::string::npos;
    });
  };
  EXPECT_FALSE(left_out(day(2031, 4, 28)));
  EXPECT_TRUE(left_out(day(2031, 5, 8)));
}

// ---- what a keeper's book may hold ----

TEST(BeliefBadInput, without_any_entry_gives_the_usual_of_the_season_and_says_so) {
  Asked asked = may_colony();
  asked.history.entries.clear();
  const auto outlook = foresee(asked);
  expect_sound(outlook);
  bool said = false;
  for (const auto& remark : outlook.remarks)
    said = said || remark.text.find("nothing was seen") != std::string::npos;
  EXPECT_TRUE(said);
}

TEST(BeliefBadInput, entries_out_of_order_give_the_same_bits) {
  Asked asked = may_colony();
  const auto in_order = bits_of(foresee(asked));
  std::reverse(asked.history.entries.begin(), asked.history.entries.end());
  EXPECT_EQ(bits_of(foresee(asked)), in_order);
}

TEST(BeliefBadInput, entries_before_the_colony_began_are_left_out_with_a_remark) {
  Asked asked = may_colony();
  asked.history.entries.push_back(entry_on(day(2031, 2, 1), 9, look(11)));
  const auto outlook = foresee(asked);
  ASSERT_FALSE(outlook.remarks.empty());
  EXPECT_EQ(outlook.remarks.front().entries.front(), EntryId("entry-9"));
}

TEST(BeliefBadInput, contradictory_entries_are_said_to_be_so_and_never_give_nonsense) {
  Asked asked = may_colony();
  entries::Inspection huge;
  huge.bees = 120000;
  huge.eggs = false;
  huge.capped_cells = 0;
  huge.stores_kg = 120;
  huge.seams = 0;
  asked.history.entries.push_back(entry_on(day(2031, 5, 20), 6, huge));
  const auto outlook = foresee(asked);
  expect_sound(outlook);
  bool said = false;
  for (const auto& remark : outlook.remarks) {
    for (const auto& entry : remark.entries) said = said || entry == EntryId("entry-6");
  }
  EXPECT_TRUE(said);
}

TEST(BeliefBadInput, a_count_that_no_course_goes_with_is_left_out_and_said_so) {
  Asked asked = may_colony();
  asked.options.members = 256;
  const auto without = foresee(asked);
  entries::MiteCount board;
  board.mites = 10000;
  board.days = 3;
  asked.history.entries.insert(asked.history.entries.begin() + 4, entry_on(day(2031, 5, 12), 8, board));
  const auto outlook = foresee(asked);
  expect_sound(outlook);
  EXPECT_GT(outlook.alive, 0.98);
  EXPECT_NEAR(outlook.fans[0].levels[0][3], without.fans[0].levels[0][3],
              0.15 * without.fans[0].levels[0][3]);
  const auto said = std::find_if(outlook.remarks.begin(), outlook.remarks.end(), [](const auto& remark) {
    return !remark.entries.empty() && remark.entries.front() == EntryId("entry-8");
  });
  ASSERT_NE(said, outlook.remarks.end());
  EXPECT_NE(said->text.find("left out of what is believed"), std::string::npos) << said->text;
}

TEST(BeliefLaws, washes_that_agree_with_each_other_are_heard) {
  Asked asked = may_colony();
  asked.options.members = 256;
  asked.options.today = day(2031, 5, 24);
  asked.forcing.past = synthetic::season(1, asked.history.began, asked.options.today - 1);
  for (auto& future : asked.forcing.futures)
    future = synthetic::season(10, asked.options.today, asked.options.horizon);
  asked.history.entries.erase(asked.history.entries.begin() + 3);  // the board of 10 May, which was clean
  for (int i = 0; i < 3; ++i) {
    const entries::MiteCount wash{.method = entries::MiteMethod::wash, .mites = 45, .bees = 300};
    asked.history.entries.push_back(entry_on(day(2031, 5, 21 + i), 20 + i, wash));
  }
  const auto outlook = foresee(asked);
  const auto& fan = outlook.fans[4];
  ASSERT_EQ(fan.quantity, "mites_per_100_bees");
  const auto today = static_cast<std::size_t>(asked.options.today - fan.dates.front());
  EXPECT_GT(fan.levels[today][3], 7);  // 15 in 100 were seen
}

TEST(BeliefLaws, a_daughter_begins_with_what_the_split_gave_her) {
  const auto bees_with = [](double share) {
    Asked asked = may_colony();
    asked.history.from_split = true;
    asked.history.began = day(2031, 5, 10);
    asked.options.today = day(2031, 5, 11);
    asked.history.entries = {entry_on(day(2031, 5, 10), 1,
                                      entries::Split{.colony = ColonyId("mother"),
                                                     .into = asked.history.colony,
                                                     .bees_share = share,
                                                     .brood_share = share,
                                                     .queen_goes = true})};
    asked.forcing.past = synthetic::season(1, asked.history.began, asked.options.today - 1);
    for (auto& future : asked.forcing.futures)
      future = synthetic::season(10, asked.options.today, asked.options.horizon);
    return foresee(asked).fans[0].levels[1][3];
  };
  EXPECT_NEAR(bees_with(0.8) / bees_with(0.2), 4, 0.4);
}

TEST(BeliefBadInput, a_dead_colony_that_was_inspected_afterwards_stays_dead_with_a_remark) {
  Asked asked = may_colony();
  asked.history.entries.insert(asked.history.entries.begin() + 3,
                               entry_on(day(2031, 5, 8), 8, entries::ColonyEnded{}));
  const auto outlook = foresee(asked);
  expect_sound(outlook);
  EXPECT_EQ(outlook.alive, 0);
  EXPECT_EQ(outlook.fans[0].levels.back()[6], 0);
  EXPECT_FALSE(outlook.remarks.empty());
}

TEST(BeliefBadInput, requests_that_cannot_be_met_are_problems_that_name_what_is_wrong) {
  Asked no_futures = may_colony();
  no_futures.forcing.futures.clear();
  EXPECT_EQ(problem_of(no_futures).where, "futures");
  Asked backwards = may_colony();
  backwards.options.horizon = backwards.options.today - 1;
  EXPECT_EQ(problem_of(backwards).where, "horizon");
  Asked unborn = may_colony();
  unborn.options.today = unborn.history.began - 1;
  EXPECT_EQ(problem_of(unborn).where, "today");
  Asked short_past = may_colony();
  short_past.forcing.past.pop_back();
  EXPECT_EQ(problem_of(short_past).where, "past");
  Asked gap = may_colony();
  gap.forcing.futures[2].erase(gap.forcing.futures[2].begin() + 3);
  EXPECT_EQ(problem_of(gap).where, "futures[2]");
  Asked nonsense = may_colony();
  nonsense.forcing.past[3].flight_hours = std::nan("");
  EXPECT_EQ(problem_of(nonsense).where, "past");
  Asked few = may_colony();
  few.options.members = 1;
  EXPECT_EQ(problem_of(few).where, "members");
}

TEST(BeliefBadInput, a_colony_on_its_first_day_and_a_horizon_of_today_work) {
  Asked asked = may_colony();
  asked.options.today = asked.history.began;
  asked.options.horizon = asked.options.today;
  asked.forcing.futures.assign(1, synthetic::season(4, asked.options.today, asked.options.today));
  expect_sound(foresee(asked));
}

TEST(BeliefBadInput, south_of_the_equator_the_seasons_are_turned) {
  Asked asked = may_colony();
  asked.options.latitude_deg = -38;
  const auto outlook = foresee(asked);
  expect_sound(outlook);
  const auto& mites = event(outlook, facts::EventKind::winter_mites);
  EXPECT_EQ(mites.course.back().by, asked.options.horizon);  // 1 May is over: next autumn is too far off
}

}  // namespace
}  // namespace beegarth
