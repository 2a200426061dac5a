// What is drawn is what is judged: over draws y from one state, the mean of p(y | other state) / p(y | that
// state) is 1, because it is the sum of p(y | other state) over everything that can be written. It fails
// where the two disagree or where the odds of all that can be written do not add up. Room: four standard
// errors of the mean.
#include "belief/writing.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <functional>

namespace beegarth::belief {
namespace {

// Round figures of the size of those in tables/observation.toml.
ObservationErrors errors() {
  ObservationErrors e{};
  e.seams_error = 0.18;
  e.bees_error = 0.22;
  e.brood_combs_error = 0.22;
  e.capped_cells_error = 0.2;
  e.stores_error = 0.25;
  e.super_share_error = 0.5;
  e.floor_seams = 0.4;
  e.floor_cells = 400;
  e.floor_stores = 1;
  e.board_size = 6;
  e.sample_size = 4;
  e.brood_correlation = 0.03;
  e.eggs_seen = 0.9;
  e.eggs_half = 300;
  e.brood_seen = 0.98;
  e.brood_half = 100;
  e.queen_seen = 0.5;
  e.virgin_seen = 0.2;
  e.cell_seen = 0.8;
  e.idle_cup_seen = 0.1;
  e.drones_seen = 0.9;
  e.drones_half = 100;
  e.pollen_error = 0.7;
  e.pollen_little_kg = 0.1;
  e.pollen_some_kg = 0.4;
  e.pollen_plenty_kg = 1;
  e.pollen_in_brood = 0.8;
  e.pollen_in_broodless = 0.4;
  e.calm_queenright = 0.85;
  e.calm_queenless = 0.6;
  e.quick_look = 0.1;
  e.outside_look = 0.01;
  e.false_sight = 0.015;
  e.mistaken = 0.02;
  e.scale_error = 0.7;
  e.live_bee_kg = 0.0001;
  e.brood_cell_kg = 0.0001;
  e.comb_kg = 0.4;
  e.by_eye = {.two_figures = 0.4, .half = 0.2, .one_figure = 0.1};
  e.counted = {.two_figures = 0.2, .half = 0.1, .one_figure = 0.1};
  return e;
}

Visible strong() {
  Visible there{.bees = 20000,
                .drones = 200,
                .eggs = 4000,
                .larvae = 8000,
                .capped_cells = 16000,
                .brood_cells = 28000,
                .drone_cells = 900,
                .stores_kg = 10,
                .pollen_kg = 1,
                .super_kg = 18,
                .charged_cells = 2,
                .mites = 1000,
                .mites_on_adults = 400,
                .infested_share = 0.05};
  there.dwelling.super_combs = 10;
  return there;
}

// A little more of some things, less of others; brood and supers all but none.
Visible other() {
  Visible there = strong();
  there.bees = 17500;
  there.eggs = 2000;
  there.capped_cells = 14500;
  there.brood_cells = 25000;
  there.drone_cells = 1100;
  there.pollen_kg = 0.6;
  there.stores_kg = 12;
  there.super_kg = 22;
  there.charged_cells = 5;
  there.mites_on_adults = 440;
  there.infested_share = 0.07;
  return there;
}
Visible broodless(double capped, double stores_kg, double super_kg) {
  Visible there = strong();
  there.eggs = 0;
  there.capped_cells = capped;
  there.brood_cells = capped;
  there.drone_cells = capped / 2;
  there.pollen_kg = stores_kg / 4;
  there.laying_queen = capped > 0;
  there.stores_kg = stores_kg;
  there.super_kg = super_kg;
  there.mites_on_adults = capped;
  there.infested_share = 0;
  return there;
}

using Write = std::function<Sight(Writer&)>;

void expect_to_add_up(const char* what, const Visible& from, const Visible& to, const Write& write) {
  constexpr int n = 20'000;
  const ObserverTraits ways;
  const ObservationErrors e = errors();
  double mean = 0;
  double squares = 0;
  for (std::uint32_t i = 0; i < n; ++i) {
    Stream luck({.seed = 3, .member = i, .purpose = Purpose::synthetic_truth});
    Writer writer(from, ways, e, luck);
    const Sight said = write(writer);
    const double ratio = std::exp(log_likelihood(said, to, 44, false, ways, e) -
                                  log_likelihood(said, from, 40, false, ways, e));
    mean += ratio / n;
    squares += ratio * ratio / n;
  }
  EXPECT_NEAR(mean, 1, 4 * std::sqrt((squares - mean * mean) / n) + 1e-12) << what;
}

const std::vector<std::pair<const char*, Write>>& looks() {
  static const auto look = [](auto set) {
    return [set](Writer& writer) {
      entries::Inspection said;
      set(said, writer);
      return Sight(said);
    };
  };
  static const std::vector<std::pair<const char*, Write>> all{
      {"seams", look([](auto& said, Writer& w) { said.seams = w.seams(1); })},
      {"bees", look([](auto& said, Writer& w) { said.bees = w.bees(); })},
      {"brood combs", look([](auto& said, Writer& w) { said.brood_combs = w.brood_combs(1); })},
      {"capped cells", look([](auto& said, Writer& w) { said.capped_cells = w.capped_cells(); })},
      {"drone cells", look([](auto& said, Writer& w) { said.drone_cells = w.drone_cells(); })},
      {"pollen", look([](auto& said, Writer& w) { said.pollen = w.pollen(); })},
      {"pollen carried in", look([](auto& said, Writer& w) {
         said.look = entries::Look::outside;
         said.pollen = w.pollen(said.look);
       })},
      {"temper", look([](auto& said, Writer& w) { said.calm = w.says(&SightOdds::calm); })},
      {"stores", look([](auto& said, Writer& w) { said.stores_kg = w.stores_kg(); })},
      {"share of the supers", look([](auto& said, Writer& w) { said.super_share = w.super_share(); })},
      {"eggs", look([](auto& said, Writer& w) { said.eggs = w.says(&SightOdds::eggs); })},
      {"queen cells",
       look([](auto& said, Writer& w) { said.charged_cells = w.says(&SightOdds::charged_cells) ? 1 : 0; })},
  };
  return all;
}

TEST(Writing, of_a_strong_colony_is_drawn_as_it_is_judged) {
  for (const auto& [what, write] : looks()) expect_to_add_up(what, strong(), other(), write);
}

TEST(Writing, of_next_to_nothing_is_drawn_as_it_is_judged) {
  for (const auto& [what, write] : looks())
    expect_to_add_up(what, broodless(0, 0, 0), broodless(60, 0.2, 0.4), write);
}

TEST(Writing, of_counts_and_weights_is_drawn_as_it_is_judged) {
  const auto counted = [](entries::MiteCount asked) {
    return [asked](Writer& writer) {
      entries::MiteCount said = asked;
      said.mites = writer.mites(asked, 40);
      return Sight(said);
    };
  };
  const auto expect = [&](const Visible& from, const Visible& to) {
    expect_to_add_up("board", from, to, counted({.method = entries::MiteMethod::board, .days = 3}));
    expect_to_add_up("roll", from, to, counted({.method = entries::MiteMethod::sugar_roll, .bees = 300}));
    expect_to_add_up("wash", from, to, counted({.method = entries::MiteMethod::wash, .bees = 300}));
    expect_to_add_up("cells", from, to, counted({.method = entries::MiteMethod::brood, .cells = 100}));
  };
  expect(strong(), other());
  expect(broodless(0, 0, 0), broodless(60, 0, 0));
  expect_to_add_up("weight", strong(), other(), [](Writer& writer) {
    return Sight(
        entries::Weight{.kg = writer.weighed(whole_hive_kg(strong(), ObserverTraits{}.tare_kg, errors()))});
  });
}

}  // namespace
}  // namespace beegarth::belief
