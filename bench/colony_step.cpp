// How long the daily step takes per member and day:
//   bench_colony_step            by width of vector, against the same step one member at a time; then a
//   thousand
//                                colonies through a year on one thread and on two
//   bench_colony_step figures F  writes what colony_step.py and colony_step.R need into folder F: rates.csv,
//                                days.csv, and our mean course in course.csv; prints our time
#include <algorithm>
#include <chrono>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <ctime>
#include <fstream>
#include <string>
#include <string_view>
#include <thread>
#include <vector>

#include "colony/rows.hpp"
#include "colony/step.hpp"
#include "colony_year.hpp"
#include "garth/tables/tables.hpp"

namespace {

using namespace beegarth;
using bench::days;
using bench::members;

double seconds_of(const auto& work) {
  const auto begin = std::chrono::steady_clock::now();
  work();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
}

// Of the processor, for this thread alone, so that a busy machine counts for less.
double processor_seconds() {
  timespec t{};
  clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
  return static_cast<double>(t.tv_sec) + static_cast<double>(t.tv_nsec) * 1e-9;
}
double processor_seconds_of(const auto& work) {
  const double begin = processor_seconds();
  work();
  return processor_seconds() - begin;
}

constexpr double ns_a_member_day(double seconds, int colonies = 1) {
  return seconds * 1e9 / (static_cast<double>(members) * days * colonies);
}

colony::Ensemble made(const colony::Model& model, std::span<const colony::Traits> traits) {
  const colony::Start start = bench::start();
  return colony::make_ensemble(model, bench::hive(), bench::eve(), members, std::span(&start, 1), traits);
}

std::vector<colony::Day> plan(const colony::Model& model, const std::vector<facts::DayForcing>& forcing) {
  std::vector<colony::Day> plan;
  float yesterday = 0;
  for (const auto& f : forcing) {
    plan.push_back(
        colony::make_day(model, bench::hive(), f, yesterday, static_cast<std::int32_t>(plan.size()) + 1));
    yesterday = static_cast<float>(f.daylength_h);
  }
  return plan;
}

// The best of five runs, each from the same start; `last` is how it ended.
double time_step(colony::Step step, const colony::Ensemble& start, const std::vector<colony::Day>& plan,
                 std::vector<colony::Block>& last) {
  std::vector<std::uint32_t> ids(members);
  for (std::uint32_t i = 0; i < members; ++i) ids[i] = i;
  double best = 1e30;
  for (int run = 0; run < 5; ++run) {
    last = colony::Access::blocks(start);
    const colony::Stretch stretch{.blocks = last.data(),
                                  .ids = ids.data(),
                                  .block_count = static_cast<int>(last.size()),
                                  .days = plan.data(),
                                  .day_count = days,
                                  .luck_key = stream_key_words(1, 1)};
    best = std::min(best, ns_a_member_day(processor_seconds_of([&] { step(stretch); })));
  }
  return best;
}

bool compare_widths(const colony::Model& model, const char* title,
                    const std::vector<facts::DayForcing>& forcing) {
  const auto start = made(model, colony::draw_traits(model, members, {}));
  const auto days_ahead = plan(model, forcing);
  std::vector<colony::Block> plain_end;
  std::vector<colony::Block> end;
  const double plain = time_step(colony::step_plain, start, days_ahead, plain_end);
  std::printf("%s\n  one member at a time    %7.2f ns per member and day\n", title, plain);
  bool all_same = true;
  const auto report = [&](const char* name, colony::Step step) {
    const double ns = time_step(step, start, days_ahead, end);
    const bool same = std::memcmp(end.data(), plain_end.data(), end.size() * sizeof(colony::Block)) == 0;
    std::printf("  %s %7.2f ns per member and day, %.1f times as fast, %s bits\n", name, ns, plain / ns,
                same ? "the same" : "OTHER");
    all_same = all_same && same;
  };
  report("four lanes (SSE2)      ", colony::step_four);
  if (colony::has_eight()) report("eight lanes (AVX2)     ", colony::step_eight);
  if (colony::has_sixteen()) report("sixteen lanes (AVX-512)", colony::step_sixteen);
  return all_same;
}

struct Spent {
  double wall = 1e30, processor = 1e30;  // s; of the busiest thread
};

// A thousand colonies, each with luck of its own, copied from one start.
Spent time_thousand(const colony::Model& model, const colony::Ensemble& start, int threads) {
  constexpr int colonies = 1000;
  const auto forcing = bench::year();
  std::vector<double> busy(static_cast<std::size_t>(threads));
  Spent spent;
  spent.wall = seconds_of([&] {
    std::vector<std::jthread> crew;
    for (int t = 0; t < threads; ++t) {
      crew.emplace_back([&, t] {
        busy[static_cast<std::size_t>(t)] = processor_seconds_of([&] {
          for (int c = t; c < colonies; c += threads) {
            colony::Ensemble ensemble = start;
            colony::advance_days(ensemble, model, forcing, {.colony = static_cast<std::uint64_t>(c)});
          }
        });
      });
    }
  });
  spent.processor = *std::max_element(busy.begin(), busy.end());
  return spent;
}

void thousand_colonies(const colony::Model& model) {
  const auto start = made(model, colony::draw_traits(model, members, {}));
  Spent best[2];
  for (int run = 0; run < 3; ++run) {  // in turns
    for (int threads = 1; threads <= 2; ++threads) {
      const Spent spent = time_thousand(model, start, threads);
      Spent& b = best[threads - 1];
      b = {std::min(b.wall, spent.wall), std::min(b.processor, spent.processor)};
    }
  }
  std::printf("1,000 colonies x %d members x %d days, copying and planning included\n", members, days);
  std::printf("  one thread  %.2f s (%.2f s of the processor, %.2f ns per member and day)\n", best[0].wall,
              best[0].processor, ns_a_member_day(best[0].processor, 1000));
  std::printf("  two threads %.2f s, %.2f times as fast; %.2f s of each processor, %.2f times as fast\n",
              best[1].wall, best[0].wall / best[1].wall, best[1].processor,
              best[0].processor / best[1].processor);

  const auto forcing = bench::year();
  const double days_apart = processor_seconds_of([&] {
    colony::Ensemble ensemble = start;
    for (const auto& day : forcing) colony::advance_day(ensemble, model, day, {}, {});
  });
  std::printf("  one colony, day by day as where every morning is looked at: %.2f ns per member and day\n",
              ns_a_member_day(days_apart));
}

void write_days(const std::string& folder, const std::vector<colony::Day>& plan) {
  std::ofstream out(folder + "/days.csv");
  out.precision(9);
  const auto line = [&](const auto& each, const colony::Day* d) {
    bool first = true;
    each([&](const char* name, auto member) {
      out << (first ? "" : ",");
      first = false;
      if (d == nullptr) {
        out << name;
      } else {
        out << +(d->*member);
      }
    });
    out << '\n';
  };
  const auto fields = [](const auto& say) {
    using colony::Day;
    say("flight_hours", &Day::flight_hours), say("swarm_weather", &Day::swarm_weather);
    say("mating_weather", &Day::mating_weather), say("lengthening", &Day::lengthening);
    say("light", &Day::light), say("warm", &Day::warm);
    say("season_turn", &Day::season_turn), say("season_peak", &Day::season_peak);
    say("winter_share", &Day::winter_share), say("recruit_most", &Day::recruit_most);
    say("recruit_checked", &Day::recruit_checked), say("winter_work_loss", &Day::winter_work_loss);
    say("winter_idle_work", &Day::winter_idle_work);
    say("drones_keep", &Day::drones_keep), say("cells_per_comb", &Day::cells_per_comb);
    say("honey_kg_per_comb", &Day::honey_kg_per_comb), say("nest_combs", &Day::nest_combs);
    say("super_combs", &Day::super_combs), say("bees_at_home", &Day::bees_at_home);
    say("cells_per_honey_kg", &Day::cells_per_honey_kg);
    say("honey_kg_per_free_cell", &Day::honey_kg_per_free_cell);
    say("nest_honey_kg", &Day::nest_honey_kg), say("nectar_kg", &Day::nectar_kg);
    say("pollen_kg", &Day::pollen_kg), say("bee_honey_kg", &Day::bee_honey_kg);
    say("larva_honey_kg", &Day::larva_honey_kg), say("heat_honey_kg", &Day::heat_honey_kg);
    say("larva_pollen_kg", &Day::larva_pollen_kg), say("draw_combs_per_bee", &Day::draw_combs_per_bee);
    say("laying", &Day::laying), say("drone_share", &Day::drone_share);
    say("drone_layer_eggs", &Day::drone_layer_eggs), say("supersedes", &Day::supersedes);
    say("mates_below", &Day::mates_below), say("swarm_rate", &Day::swarm_rate);
    say("robbers", &Day::robbers), say("rob_kg", &Day::rob_kg);
    say("mite_young_more", &Day::mite_young_more);
    say("mites_in", &Day::mites_in), say("kill_on_bees", &Day::kill_on_bees);
    say("kill_under_cappings", &Day::kill_under_cappings), say("laying_step", &Day::laying_step);
    say("forage_step", &Day::forage_step), say("mite_step", &Day::mite_step);
  };
  line(fields, nullptr);
  for (const colony::Day& day : plan) line(fields, &day);
}

// Means over the members with the usual traits, by day, each with its standard error.
void write_course(const std::string& folder, const colony::Model& model) {
  std::ofstream out(folder + "/course.csv");
  out.precision(9);
  using colony::Quantity;
  const std::array shown{Quantity::bees,         Quantity::brood_cells,   Quantity::drone_brood,
                         Quantity::drones,       Quantity::stores_kg,     Quantity::pollen_kg,
                         Quantity::mites,        Quantity::mites_on_bees, Quantity::undrawn_combs,
                         Quantity::queen_laying, Quantity::swarm_cells,   Quantity::alive};
  out << "day";
  for (const Quantity q : shown) out << ',' << colony::name_of(q) << ',' << colony::name_of(q) << "_se";
  out << '\n';
  const colony::Traits usual{};
  auto ensemble = made(model, std::span(&usual, 1));
  for (const auto& day : bench::year()) {
    colony::advance_day(ensemble, model, day, {}, {});
    out << ensemble.date() - bench::eve();
    for (const Quantity q : shown) {
      const auto values = ensemble.read(q);
      double mean = 0;
      for (const float x : values) mean += static_cast<double>(x) / members;
      double square = 0;
      for (const float x : values) square += std::pow(static_cast<double>(x) - mean, 2);
      out << ',' << mean << ',' << std::sqrt(square / members / members);
    }
    out << '\n';
  }
}

void write_figures(const std::string& folder, const colony::Model& model, const FactTable& table) {
  std::ofstream rates(folder + "/rates.csv");
  rates.precision(9);
  rates << "key,value\n";
  for (const FactRow& row : table.rows()) rates << row.key << ',' << row.value << '\n';
  const auto ahead = plan(model, bench::year());
  write_days(folder, ahead);
  write_course(folder, model);
  const colony::Traits usual{};
  std::vector<colony::Block> end;
  const auto start = made(model, std::span(&usual, 1));
  std::printf("plain %.3f\n", time_step(colony::step_plain, start, ahead, end));
  std::printf("best %.3f\n", time_step(colony::best_step(), start, ahead, end));
}

}  // namespace

int main(int argc, char** argv) {
  const auto tables = garth::Tables::built_in();
  if (!tables) return 1;
  const FactTable& table = (*tables)["colony"];
  const auto model = colony::Model::from(table);
  if (!model) return 1;
  if (argc == 3 && std::string_view(argv[1]) == "figures") {
    write_figures(argv[2], *model, table);
    return 0;
  }
  bool same = compare_widths(*model, "a whole year", bench::year());
  same = compare_widths(*model, "May and June again and again", bench::long_summer()) && same;
  std::printf("%zu bytes per member\n", sizeof(colony::Block) / colony::lanes);
  if (same) thousand_colonies(*model);
  return same ? 0 : 1;
}
