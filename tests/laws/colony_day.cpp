// What must hold on every day of every colony.
#include <Random123/philox.h>

#include <array>
#include <bit>
#include <cstring>

#include "base/random.hpp"
#include "colony/act.hpp"
#include "colony/luck.hpp"
#include "colony/rows.hpp"
#include "colony/step.hpp"
#include "colony_years.hpp"
#include "garth/threads.hpp"

namespace beegarth {
namespace {

using colony::Access;
using colony::Quantity;
namespace row = colony::row;

colony::Ensemble varied(int members) {
  const auto& model = testing::shipped_model();
  const colony::Start start = testing::autumn_start();
  const auto traits = colony::draw_traits(model, members, {.seed = 5});
  facts::Dwelling hive;  // a single box: crowding, swarms and hunger all happen
  return colony::make_ensemble(model, hive, *Date::from_ymd(2025, 9, 30), members, std::span(&start, 1),
                               traits);
}

void live_a_day(colony::Ensemble& e, std::span<const std::uint32_t> ids = {}) {
  colony::advance_day(e, testing::shipped_model(), testing::temperate_day(e.date() + 1), {},
                      {.seed = 9, .ids = ids});
}

TEST(ColonyDay, bees_come_out_die_or_leave_and_nothing_else) {
  auto e = varied(64);
  for (int day = 0; day < 365; ++day) {
    const auto before = e.read(Quantity::bees);
    live_a_day(e);
    const auto after = e.read(Quantity::bees);
    for (int i = 0; i < 64; ++i) {
      const auto at = static_cast<std::size_t>(i);
      const float expected = before[at] + Access::at(e, row::emerged_today, i) -
                             Access::at(e, row::died_today, i) - Access::at(e, row::left_today, i);
      ASSERT_NEAR(after[at], expected, 0.5F + 1e-4F * before[at]) << e.date().iso() << " member " << i;
    }
  }
}

TEST(ColonyDay, nothing_is_ever_below_zero_or_not_a_number_and_the_dead_stay_dead) {
  auto e = varied(64);
  std::vector<float> was = e.read(Quantity::alive);
  for (int day = 0; day < 3 * 365; ++day) {
    live_a_day(e);
    for (int i = 0; i < 64; ++i) {
      for (int r = 0; r < row::first_trait; ++r) {
        const float x = Access::at(e, r, i);
        const bool luck = r == row::luck_laying || r == row::luck_forage || r == row::luck_mites;
        ASSERT_TRUE(luck ? std::isfinite(x) : x >= 0) << "row " << r << " on " << e.date().iso();
      }
    }
    const auto now = e.read(Quantity::alive);
    const auto bees = e.read(Quantity::bees);
    for (std::size_t i = 0; i < now.size(); ++i) {
      ASSERT_LE(now[i], was[i]);
      if (now[i] == 0) {
        ASSERT_EQ(bees[i], 0);
      }
    }
    was = now;
  }
  EXPECT_LT(*std::min_element(was.begin(), was.end()), 1)
      << "untreated colonies in one box: some must have died";
}

// The bits of every number, since 0 and -0 are equal but not the same.
std::vector<std::uint32_t> words_of(const colony::Block& block) {
  std::vector<std::uint32_t> words;
  words.reserve(sizeof block / sizeof(float));
  for (const auto& lane : block.rows) {
    for (const float x : lane) words.push_back(std::bit_cast<std::uint32_t>(x));
  }
  return words;
}

struct Width {
  const char* name;
  colony::Step step;
};
std::vector<Width> widths_here() {
  std::vector<Width> widths{{"plain", colony::step_plain}, {"four", colony::step_four}};
  if (colony::has_eight()) widths.push_back({"eight", colony::step_eight});
  if (colony::has_sixteen()) widths.push_back({"sixteen", colony::step_sixteen});
  return widths;
}

// Two years from the first of October in one box, in which all happens that can: hunger, swarms, new queens,
// robbing, deaths; in August a treatment that reaches under cappings.
std::vector<colony::Day> two_years(const colony::Model& model, const colony::Ensemble& e) {
  std::vector<colony::Day> days;
  for (int i = 0; i < 2 * 365; ++i) {
    auto forcing = testing::temperate_day(e.date() + 1 + i);
    forcing.robbing = 1;
    days.push_back(colony::make_day(model, e.dwelling(), forcing, 0, i + 1));
    days.back().mites_in = i % 3 == 0 ? 2.0F : 0.0F;
    if (forcing.date.month() == 8) {
      days.back().kill_on_bees = 0.03F;
      days.back().kill_under_cappings = 0.01F;
    }
  }
  return days;
}

TEST(ColonyDay, every_width_of_vector_gives_the_same_bits) {
  auto e = varied(48);  // three blocks: a pair and one left over
  for (int i = 0; i < 48; i += 5) Access::at(e, row::stores, i) = 3;
  for (int i = 1; i < 48; i += 10) Access::at(e, row::stores, i) = 0.2F;  // hungry while it is still warm
  const auto easily_gone = testing::model_with({{"abscond_per_day", 0.5}});
  const auto days = two_years(easily_gone, e);
  std::array<std::uint32_t, 48> ids{};
  for (std::uint32_t i = 0; i < 48; ++i) ids[i] = i * 7;
  std::vector<std::vector<std::uint32_t>> ends;
  for (const Width& width : widths_here()) {
    auto blocks = Access::blocks(e);
    width.step({.blocks = blocks.data(),
                .ids = ids.data(),
                .block_count = 3,
                .days = days.data(),
                .day_count = static_cast<int>(days.size()),
                .luck_key = {3, 4}});
    ends.emplace_back();
    for (const colony::Block& block : blocks) {
      const auto words = words_of(block);
      ends.back().insert(ends.back().end(), words.begin(), words.end());
    }
    EXPECT_EQ(ends.back(), ends.front()) << width.name;
    for (int event = 0; event < colony::event_count; ++event) {
      int times = 0;
      for (const colony::Block& block : blocks) {
        for (const float day : block.rows[row::first_event + event]) times += day < colony::never ? 1 : 0;
      }
      EXPECT_GT(times, 0) << "event " << event << " never happened: the bits of its stage were not compared";
    }
  }
}

TEST(ColonyDay, many_days_in_one_go_are_as_many_days_one_by_one) {
  auto by_day = varied(40);
  auto at_once = by_day;
  const colony::Action treat = colony::Treat{.kind = "formic"};
  const auto& model = testing::shipped_model();
  std::vector<facts::DayForcing> days;
  for (int i = 0; i < 500; ++i) days.push_back(testing::temperate_day(by_day.date() + 1 + i));
  colony::advance_day(by_day, model, days[0], std::span(&treat, 1), {.seed = 9});
  colony::advance_day(at_once, model, days[0], std::span(&treat, 1), {.seed = 9});
  for (std::size_t i = 1; i < days.size(); ++i) colony::advance_day(by_day, model, days[i], {}, {.seed = 9});
  colony::advance_days(at_once, model, std::span(days).subspan(1), {.seed = 9});
  EXPECT_EQ(by_day.date(), at_once.date());
  EXPECT_EQ(by_day.hash(), at_once.hash());
}

// Half a comb of food: half of the eggs.
TEST(ColonyDay, a_queen_lays_in_proportion_to_food_where_there_is_less_than_she_wants) {
  const double wanted = static_cast<double>(testing::shipped_model().rates.laying_stores_kg);
  const auto eggs_with = [&](double share) {
    const colony::Start start{.bees = 15000, .stores_kg = wanted * share, .pollen_kg = 1, .mites = 0};
    const auto traits = testing::homely();
    auto e =
        colony::make_ensemble(testing::shipped_model(), testing::roomy_hive(), *Date::from_ymd(2026, 5, 10),
                              16, std::span(&start, 1), std::span(&traits, 1));
    auto dearth = testing::temperate_day(e.date() + 1);
    dearth.nectar_kg_per_day = 0;
    dearth.flight_hours = 0;
    colony::advance_day(e, testing::shipped_model(), dearth, {}, {.seed = 9});
    return testing::median(e, Quantity::eggs);
  };
  EXPECT_EQ(eggs_with(3), eggs_with(2));
  EXPECT_NEAR(eggs_with(0.5) / eggs_with(2), 0.5, 0.05);  // the day's meal comes first
}

// A rich flow with no super: the nest takes more of it as the brood goes.
TEST(ColonyDay, honey_fills_more_of_the_nest_when_laying_has_ended) {
  const auto honey_on = [](int month) {
    const colony::Start start{.bees = 30000, .stores_kg = 12, .pollen_kg = 1, .mites = 0};
    const auto traits = testing::homely();
    auto e =
        colony::make_ensemble(testing::shipped_model(), facts::Dwelling{}, *Date::from_ymd(2026, month, 1),
                              16, std::span(&start, 1), std::span(&traits, 1));
    for (int i = 0; i < 24; ++i) {
      auto flow = testing::temperate_day(e.date() + 1);
      flow.nectar_kg_per_day = 8;
      flow.flight_hours = 6;
      colony::advance_day(e, testing::shipped_model(), flow, {}, {.seed = 9});
    }
    return testing::median(e, Quantity::stores_kg);
  };
  EXPECT_GT(honey_on(9), 1.2 * honey_on(6));
}

// The hash is what the model says, to the last bit, on every machine and at every width: it changes with the
// model's rates and with the order of its arithmetic, and with nothing else.
TEST(ColonyDay, a_season_is_the_same_on_any_number_of_threads) {
  const auto start = varied(40);
  const auto season_of = [&](std::uint64_t colony) {
    auto e = start;
    for (int i = 0; i < 300; ++i) {
      colony::advance_day(e, testing::shipped_model(), testing::temperate_day(e.date() + 1), {},
                          {.seed = 9, .colony = colony});
    }
    return e.hash();
  };
  for (const int threads : {1, 2, 7}) {
    std::array<std::uint64_t, 14> hashes{};
    garth::for_each_index(hashes.size(), threads, [&](std::size_t i) { hashes[i] = season_of(i); });
    std::uint64_t all = 0;
    for (const std::uint64_t hash : hashes) all = all * 1099511628211ULL + hash;
    EXPECT_EQ(all, 8560062109645567221ULL) << threads << " threads";
  }
}

TEST(ColonyDay, a_member_does_not_care_where_it_stands) {
  auto e = varied(40);
  std::vector<std::uint32_t> turned(40);
  std::vector<std::uint32_t> ids(40);
  for (std::uint32_t i = 0; i < 40; ++i) {
    turned[i] = 39 - i;
    ids[i] = i;
  }
  auto other = e.take(turned);
  for (int day = 0; day < 300; ++day) {
    live_a_day(e, ids);
    live_a_day(other, turned);
  }
  EXPECT_EQ(e.hash(), other.take(turned).hash());
}

TEST(ColonyDay, copies_stay_equal_with_the_same_luck_and_part_with_other_luck) {
  auto e = varied(16);
  const std::vector<std::uint32_t> twins{3, 3};
  auto pair = e.take(twins);
  auto apart = pair;
  const std::vector<std::uint32_t> other_luck{3, 4};
  for (int day = 0; day < 30; ++day) {
    live_a_day(pair, twins);
    live_a_day(apart, other_luck);
  }
  const auto same = pair.read(Quantity::mites);
  const auto different = apart.read(Quantity::mites);
  EXPECT_EQ(same[0], same[1]);
  EXPECT_NE(different[0], different[1]);
}

template <class F>
void expect_luck_of_random123() {
  const std::array<std::uint32_t, 4> ids{0, 1, 14, 4000000000U};
  const colony::LuckKeys keys(stream_key_words(17, 23), static_cast<std::uint32_t>(Purpose::daily_noise));
  constexpr auto width = static_cast<std::size_t>(colony::Lane<F>::width);
  for (std::size_t first = 0; first < ids.size(); first += width) {
    colony::Dice<F> dice;
    dice.take_up(keys, &ids[first]);
    const auto words = dice.words(keys, colony::luck_day(keys, 20000));
    for (std::size_t k = 0; k < 4; ++k) {
      std::array<std::uint32_t, width> drawn{};
      std::memcpy(drawn.data(), &words.word[k], sizeof drawn);
      for (std::size_t i = 0; i < width; ++i) {
        const auto k0k1 = stream_key_words(17, 23);
        const auto expected = r123::Philox4x32_R<colony::philox::rounds>{}(
            {{ids[first + i], 20000, static_cast<std::uint32_t>(Purpose::daily_noise), 0}},
            {{k0k1[0], k0k1[1]}});
        EXPECT_EQ(drawn[i], expected[k]);
      }
    }
  }
}

// Against the generator of its authors, Random123.
TEST(ColonyDay, luck_is_drawn_as_by_the_authors_of_the_generator) {
  expect_luck_of_random123<float>();
  expect_luck_of_random123<colony::Float4>();
}

TEST(ColonyDay, ageing_moves_no_bees) {
  for (int turn = 0; turn < 50; ++turn) {
    for (int age = 0; age + 1 < colony::worker_days; ++age) {
      EXPECT_EQ(colony::worker_row(turn, age), colony::worker_row(turn + 1, age + 1));
    }
  }
}

// On a cool day as on a warm one: the rising and the falling year meet at the longest day.
TEST(ColonyDay, laying_does_not_leap_at_the_longest_day) {
  const auto& model = testing::shipped_model();
  for (const double mean_C : {12.0, 14.0, 16.0, 19.0}) {
    const auto laying_on = [&](int day) {
      facts::DayForcing forcing = testing::temperate_day(*Date::from_ymd(2026, 6, day));
      forcing.temperature_min_C = mean_C - 5;
      forcing.temperature_max_C = mean_C + 5;
      const auto before = testing::temperate_day(forcing.date - 1);
      return colony::make_day(model, testing::roomy_hive(), forcing, static_cast<float>(before.daylength_h),
                              0)
          .laying;
    };
    EXPECT_NEAR(laying_on(24), laying_on(18), 0.03 * laying_on(18)) << mean_C;
  }
}

TEST(ColonyDay, the_two_parts_of_a_split_are_what_there_was) {
  auto whole = varied(16);
  while (whole.date() < *Date::from_ymd(2026, 5, 20)) live_a_day(whole);
  auto home = whole;
  auto moved = whole;
  const colony::SplitAway split{
      .bees_share = 0.4, .brood_share = 0.3, .stores_share = 0.2, .queen_leaves = true};
  const colony::Action here = split;
  const colony::Action there = colony::KeepPart{split};
  const auto& model = testing::shipped_model();
  // A day on which nothing else happens would hide the split in births and deaths; so the actions alone are
  // compared through what cannot change in a day: brood capped yesterday and before, and the mites in it.
  const auto forcing = testing::temperate_day(whole.date() + 1);
  colony::advance_day(home, model, forcing, std::span(&here, 1), {});
  colony::advance_day(moved, model, forcing, std::span(&there, 1), {});
  colony::advance_day(whole, model, forcing, {}, {});
  const int turn = Access::turn(whole);
  for (int i = 0; i < 16; ++i) {
    for (int age = 10; age < colony::worker_days; ++age) {
      const int r = colony::worker_row(turn, age);
      EXPECT_NEAR(Access::at(home, r, i) + Access::at(moved, r, i), Access::at(whole, r, i),
                  1e-3 + 1e-5 * Access::at(whole, r, i));
    }
  }
  EXPECT_EQ(testing::median(home, Quantity::queen_laying), 0);
  EXPECT_EQ(testing::median(moved, Quantity::queen_laying), 1);
}

TEST(ColonyDay, foragers_that_fly_back_from_a_new_site_are_lost_with_their_mites_and_nobody_else_is) {
  auto stays = varied(16);
  while (stays.date() < *Date::from_ymd(2026, 6, 1)) live_a_day(stays);
  auto moves = stays;
  const colony::Action move = colony::MovedSite{.foragers_stray = 0.5};
  colony::act(moves, testing::shipped_model(), move, moves.date(), {});
  for (int i = 0; i < 16; ++i) {
    const float foragers = Access::at(stays, row::foragers, i);
    EXPECT_FLOAT_EQ(Access::at(moves, row::foragers, i), foragers / 2);
    const float bees = stays.read(Quantity::bees)[static_cast<std::size_t>(i)];
    EXPECT_NEAR(moves.read(Quantity::bees)[static_cast<std::size_t>(i)], bees - foragers / 2, 1e-5F * bees);
    if (bees > 0) {
      EXPECT_NEAR(Access::at(moves, row::mites, i),
                  Access::at(stays, row::mites, i) * (1 - foragers / 2 / bees), 1e-3);
    }
  }
}

TEST(Traits, half_of_the_draws_lie_below_the_middle_and_nine_in_ten_within_the_range) {
  const auto& model = testing::shipped_model();
  const auto drawn = colony::draw_traits(model, 4000, {.seed = 2});
  for (const auto& info : colony::all_traits()) {
    const FactRow* row = testing::shipped_tables()["colony"].find(info.key);
    ASSERT_NE(row, nullptr);
    int below = 0;
    int within = 0;
    // The range is as wide as low..high on the logarithm and centred on the value.
    const double half = std::sqrt(*row->high / *row->low);
    for (const auto& traits : drawn) {
      const double x = model.prior.value(info.trait, static_cast<double>(traits[info.trait]));
      below += x < row->value ? 1 : 0;
      within += x > row->value / half && x < row->value * half ? 1 : 0;
    }
    EXPECT_NEAR(below / 4000.0, 0.5, 5 * std::sqrt(0.25 / 4000)) << info.key;
    EXPECT_NEAR(within / 4000.0, 0.9, 5 * std::sqrt(0.09 / 4000)) << info.key;
  }
}

}  // namespace
}  // namespace beegarth
