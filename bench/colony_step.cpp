// How long the daily step takes per member and day, by width of vector, against the same step one member at a
// time. All compute the same bits, so the same work is timed. One core.
#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstring>
#include <vector>

#include "colony/rows.hpp"
#include "colony/step.hpp"
#include "garth/tables/tables.hpp"

namespace {

using namespace beegarth;

constexpr int members = 1024;
constexpr int days = 365;

facts::DayForcing june_day(int day) {
  facts::DayForcing f;
  f.date = *Date::from_ymd(2026, 4, 1) + day % 150;
  f.daylength_h = 14 + 3 * (day % 150) / 150.0;
  f.flight_hours = 6;
  f.temperature_min_C = 9;
  f.temperature_max_C = 19;
  f.nectar_kg_per_day = 1.5;
  f.pollen_index = 0.8;
  f.mites_in_per_day = 1;
  return f;
}

// Nanoseconds per member and day, the best of five runs, each from the same start.
double time_step(colony::StepBlock step, const std::vector<colony::Block>& start,
                 const std::vector<colony::Day>& year, std::vector<colony::Block>& last) {
  std::uint32_t ids[colony::lanes];
  for (std::uint32_t i = 0; i < colony::lanes; ++i) ids[i] = i;
  double best = 1e30;
  for (int run = 0; run < 5; ++run) {
    last = start;
    const auto begin = std::chrono::steady_clock::now();
    for (const colony::Day& day : year) {
      for (colony::Block& block : last) step(block, day, ids);
    }
    const std::chrono::duration<double, std::nano> spent = std::chrono::steady_clock::now() - begin;
    best = std::min(best, spent.count() / (static_cast<double>(members) * days));
  }
  return best;
}

}  // namespace

int main() {
  const auto tables = garth::Tables::built_in();
  if (!tables) return 1;
  const auto model = colony::Model::from((*tables)["colony"]);
  if (!model) return 1;
  facts::Dwelling hive;
  hive.super_combs = 20;
  const colony::Start start{.bees = 8000, .brood_cells = 6000};
  const auto traits = colony::draw_traits(*model, members, {});
  auto ensemble = colony::make_ensemble(*model, hive, *Date::from_ymd(2026, 3, 31), members,
                                        std::span(&start, 1), traits);
  std::vector<colony::Day> year;
  for (int i = 0; i < days; ++i) {
    year.push_back(colony::make_day(*model, hive, june_day(i), 0));
    year.back().turn = i + 1;
    year.back().luck_key = stream_key_words(1, 1);
  }
  const auto& blocks = colony::Access::blocks(ensemble);
  std::vector<colony::Block> plain_end;
  std::vector<colony::Block> end;
  const double plain = time_step(colony::step_block_plain, blocks, year, plain_end);
  std::printf("one member at a time   %7.2f ns per member and day\n", plain);
  const auto report = [&](const char* name, colony::StepBlock step) {
    const double ns = time_step(step, blocks, year, end);
    const bool same = std::memcmp(end.data(), plain_end.data(), end.size() * sizeof(colony::Block)) == 0;
    std::printf("%s %7.2f ns per member and day, %.1f times as fast, %s bits\n", name, ns, plain / ns,
                same ? "the same" : "OTHER");
    return same;
  };
  bool same = report("four lanes (SSE2)     ", colony::step_block_four);
  if (colony::has_eight()) same = report("eight lanes (AVX2)    ", colony::step_block_eight) && same;
  std::printf("%zu bytes per member\n", sizeof(colony::Block) / colony::lanes);
  return same ? 0 : 1;
}
