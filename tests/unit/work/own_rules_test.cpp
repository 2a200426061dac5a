// What the keeper will not do stands in no word of any need, and every rule has its price. Everything
// invented.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "asking_words.hpp"
#include "quiet_colony.hpp"
#include "work/refused.hpp"

namespace beegarth::work {
namespace {

using facts::Deed;
using ::testing::Contains;
using ::testing::HasSubstr;
using ::testing::Not;

void all_odds(NeedsInput& input, double now, double end) {
  for (const auto kind :
       {facts::EventKind::out_of_room, facts::EventKind::swarm_preparation, facts::EventKind::stores_short,
        facts::EventKind::queen_trouble, facts::EventKind::winter_mites})
    give_odds(input, kind, now, end);
}

// Keepers in many states, through the year: whatever makes a need that asks for something refused.
std::vector<NeedsInput> many_states() {
  std::vector<NeedsInput> states;
  for (int month = 1; month <= 12; ++month) {
    const Date today = day(2026, month, 10);
    const auto add = [&](auto change) {
      NeedsInput input = invented(today);
      all_odds(input, 0.4, 0.9);
      input.kit = {{"nucleus box", 1}, {"bait box", 1}};
      input.kit_where = {{"bait box", "Withy Meadow, north hedge"}};
      change(input, input.colonies.front());
      states.push_back(std::move(input));
    };
    add([](NeedsInput&, ColonyStatus&) {});
    add([&](NeedsInput&, ColonyStatus& c) { c.last_full_look = seen(today - 30, 0, "look"); });
    add([&](NeedsInput&, ColonyStatus& c) { c.last_charged_cells = seen(today - 3, 2, "look"); });
    add([&](NeedsInput&, ColonyStatus& c) { c.last_sealed_cells = seen(today - 3, 2, "look"); });
    add([&](NeedsInput& i, ColonyStatus& c) {
      c.last_charged_cells = seen(today - 3, 2, "look");
      c.suspect = true;
      ColonyStatus beside = c;
      beside.colony = ColonyId("alder-6");
      beside.suspect = false;
      i.colonies.push_back(beside);
    });
    add([&](NeedsInput&, ColonyStatus& c) {
      c.queen_lost_or_swarmed = seen(today - 2, 1, "swarmed");
      c.last_sealed_cells = seen(today - 2, 5, "look");
    });
    add([&](NeedsInput&, ColonyStatus& c) { c.queen_lost_or_swarmed = seen(today - 20, 1, "swarmed"); });
    add([&](NeedsInput&, ColonyStatus& c) {
      c.no_eggs_first = seen(today - 20, 0, "look-1");
      c.no_eggs_seen = seen(today - 3, 0, "look-2");
    });
    add([&](NeedsInput&, ColonyStatus& c) { c.last_stores = seen(today - 2, 1, "look"); });
    add([&](NeedsInput&, ColonyStatus& c) {
      c.last_stores = seen(today - 2, 1, "look");
      c.supers_on = seen(today - 30, 10, "super");
    });
    add([&](NeedsInput&, ColonyStatus& c) {
      c.mite_counts.push_back({seen(today - 3, 40, "board"), "board"});
      c.last_mite_count = c.mite_counts.back().count;
      c.dwelling.can_heft = false;
    });
    add([&](NeedsInput& i, ColonyStatus&) {
      i.sites.front().aims = {{today.month() % 12 + 1, 4, EntryId("aim")}};
      i.aims = {{today.month() % 12 + 1, 0, EntryId("aim")}};
    });
    add([&](NeedsInput& i, ColonyStatus&) { i.outlooks.front().alive = 0.05; });
  }
  return states;
}

std::set<Deed> refusing(const std::vector<std::string>& rules) {
  return refused_by(std::set<std::string>(rules.begin(), rules.end()));
}

std::string asked_in(const facts::Need& need, const std::string& rule) {
  return own_rules::asked_in(all_words(need) + "\n" + need.write_down + "\n" + need.held, rule);
}

std::vector<facts::Need> kept_by(NeedsInput input, const std::vector<std::string>& rules) {
  input.refused = refusing(rules);
  return keep_rules(needs_of(input), input.refused).needs;
}

TEST(OwnRules, stand_in_no_word_of_any_need) {
  for (const auto& rule : own_rules::asking_words)
    for (const NeedsInput& state : many_states())
      for (const facts::Need& need : kept_by(state, {rule.first}))
        EXPECT_EQ(asked_in(need, rule.first), "")
            << rule.first << ", " << state.today.iso() << ", " << need.key << "\n"
            << all_words(need);
}

TEST(OwnRules, all_of_them_together_stand_in_no_word_either) {
  std::vector<std::string> rules;
  for (const auto& rule : own_rules::asking_words) rules.push_back(rule.first);
  for (const NeedsInput& state : many_states())
    for (const facts::Need& need : kept_by(state, rules))
      for (const std::string& rule : rules)
        EXPECT_EQ(asked_in(need, rule), "") << rule << ", " << need.key << "\n" << all_words(need);
}

// Else the two tests above could not fail.
TEST(OwnRules, are_broken_by_some_need_where_none_is_kept) {
  for (const auto& rule : own_rules::asking_words) {
    if (rule.first == "no_clipping" || rule.first == "no_drone_comb_cut") continue;  // never asked for
    bool asked = false;
    for (const NeedsInput& state : many_states())
      for (const facts::Need& need : needs_of(state)) asked = asked || !asked_in(need, rule.first).empty();
    EXPECT_TRUE(asked) << rule.first;
  }
}

// A deed told in words is told in data as well, so that its price is known.
TEST(OwnRules, whatever_words_ask_for_a_deed_the_need_says_so) {
  for (const NeedsInput& state : many_states())
    for (const facts::Need& need : needs_of(state))
      for (const auto& [rule, words] : own_rules::asking_words) {
        if (!own_rules::asked_in(need.what, rule).empty() && need.held.empty()) {
          const Deed deed = *refusing({rule}).begin();
          EXPECT_TRUE(std::any_of(need.asks.begin(), need.asks.end(),
                                  [&](const auto& asked) { return asked.deed == deed; }))
              << need.key << ": " << need.what << " (" << rule << ")";
        }
      }
}

KeptRules told(NeedsInput input, const std::vector<std::string>& rules) {
  input.refused = refusing(rules);
  return keep_rules(needs_of(input), input.refused);
}

TEST(OwnRules, leave_out_what_can_be_met_in_no_other_way_and_say_what_it_costs) {
  NeedsInput input = invented(day(2026, 12, 10));
  give_odds(input, facts::EventKind::winter_mites, 0.4, 0.9);
  const auto kept = told(input, {"no_organic_acids"});
  EXPECT_EQ(find(kept.needs, "winter-treatment/alder-5/2026"), nullptr);
  EXPECT_THAT(kept.remarks,
              Contains(HasSubstr("By your own rule no organic acids this is left out at alder-5")));
  EXPECT_THAT(kept.remarks, Contains(HasSubstr("Your own rule no organic acids is reckoned to cost")));
}

TEST(OwnRules, name_what_is_left_of_the_ways_to_treat) {
  NeedsInput input = invented(day(2026, 8, 10));
  give_odds(input, facts::EventKind::winter_mites, 0.4, 0.9);
  EXPECT_THAT(find(kept_by(input, {"no_synthetic_strips"}), "treat/alder-5")->what,
              HasSubstr("by your own rules thymol, formic acid or a brood break are left"));
  EXPECT_THAT(find(kept_by(input, {"no_organic_acids", "no_synthetic_strips"}), "treat/alder-5")->what,
              HasSubstr("by your own rules thymol or a brood break are left"));
  EXPECT_THAT(find(needs_of(input), "treat/alder-5")->what, Not(HasSubstr("your own rules")));
}

// Arithmetic: odds 0.9 of 40 kg; strips 0.9, acids 0.85, brood break 0.75, thymol 0.7 (tables/work).
TEST(OwnRules, cost_what_the_refused_class_would_have_saved_beside_the_others) {
  NeedsInput input = invented(day(2026, 8, 10));
  give_odds(input, facts::EventKind::winter_mites, 0.9, 0.9);
  EXPECT_THAT(told(input, {"no_synthetic_strips"}).remarks,
              Contains(HasSubstr("no synthetic strips is reckoned to cost 1.8 kg of honey equivalent")));
  const auto both = told(input, {"no_synthetic_strips", "no_organic_acids"}).remarks;
  EXPECT_THAT(both, Contains(HasSubstr("no synthetic strips is reckoned to cost 5.4 kg")));
  EXPECT_THAT(both, Contains(HasSubstr("no organic acids is reckoned to cost 3.6 kg")));
  EXPECT_THAT(both, Contains(HasSubstr("tables/work saved_by_acids")));
}

TEST(OwnRules, that_nothing_in_the_plan_asks_to_break_cost_nothing_and_drone_comb_is_not_reckoned) {
  const auto remarks = told(invented(day(2026, 6, 10)), {"no_uniting", "no_drone_comb_cut"}).remarks;
  EXPECT_THAT(remarks, Contains(HasSubstr("no uniting costs nothing in this plan")));
  EXPECT_THAT(remarks, Contains(HasSubstr("no drone comb cut is not reckoned")));
}

// Arithmetic: 14 days x (1/7 - 1/10) looks of 25 minutes at 2 kg an hour and 0.5 kg an opening: 0.8 kg.
TEST(OwnRules, no_clipping_costs_the_looks_that_a_clipped_queen_would_spare) {
  NeedsInput input = invented(day(2026, 5, 20));
  input.colonies.front().last_full_look = seen(day(2026, 5, 13), 0, "look");
  EXPECT_THAT(told(input, {"no_clipping"}).remarks,
              Contains(HasSubstr("no clipping is reckoned to cost 0.8 kg")));
  input.colonies.front().queen_clipped = true;
  EXPECT_THAT(told(input, {"no_clipping"}).remarks, Contains(HasSubstr("costs nothing in this plan")));
}

TEST(OwnRules, swarms_let_go_ask_for_no_look_for_cells_and_still_for_eggs) {
  NeedsInput input = invented(day(2026, 5, 20));
  input.colonies.front().last_full_look = seen(day(2026, 5, 1), 0, "look");
  give_odds(input, facts::EventKind::queen_trouble, 0.6, 0.8);
  EXPECT_NE(find(needs_of(input), "look-cells/alder-5"), nullptr);
  const auto kept = told(input, {"swarms_let_go"});
  EXPECT_EQ(find(kept.needs, "look-cells/alder-5"), nullptr);
  EXPECT_NE(find(kept.needs, "look-eggs/alder-5"), nullptr);
  EXPECT_THAT(kept.remarks, Contains(HasSubstr("bait boxes may catch what leaves")));
}

TEST(OwnRules, without_sugar_a_hungry_stock_is_given_combs_of_honey) {
  NeedsInput input = invented(day(2026, 5, 20));
  give_odds(input, facts::EventKind::stores_short, 0.4, 0.9);
  const auto needs = kept_by(input, {"no_sugar"});
  const auto* need = find(needs, "feed/alder-5");
  ASSERT_NE(need, nullptr);
  EXPECT_THAT(need->what, HasSubstr("combs of your own honey"));
  EXPECT_THAT(need->what, HasSubstr("unite it in time"));
  EXPECT_THAT(find(kept_by(input, {"no_sugar", "no_uniting"}), "feed/alder-5")->what,
              Not(HasSubstr("unite")));
  EXPECT_THAT(told(input, {"no_sugar"}).remarks,
              Contains(HasSubstr("at most, where there is no comb of honey")));
}

}  // namespace
}  // namespace beegarth::work
