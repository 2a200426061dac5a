// Days of an ensemble: the keeper's actions in the morning, then every block of members alike.
#include <algorithm>
#include <cassert>
#include <cmath>

#include "colony/act.hpp"
#include "colony/step.hpp"

namespace beegarth::colony {
namespace {

// Kill rates per day of what lies on the hive, as far as the day is warm enough for it.
void work_of_treatments(Ensemble& ensemble, Day& day) {
  auto& treatments = Access::treatments(ensemble);
  for (auto& t : treatments) {
    t.days_left -= 1;
    if (day.max_C < t.kind.temperature_min_C) continue;
    day.kill_on_bees += t.kind.kill_per_day;
    day.kill_under_cappings -= std::log(1 - t.kind.efficacy_under_cappings) / t.kind.days;
  }
  treatments.erase(
      std::remove_if(treatments.begin(), treatments.end(), [](const auto& t) { return t.days_left <= 0; }),
      treatments.end());
}

// The noise ids of all blocks; lanes beyond the last member get an id of nobody.
std::vector<std::uint32_t> ids_of_lanes(const NoiseKey& noise, std::size_t members, std::size_t blocks) {
  std::vector<std::uint32_t> ids(blocks * lanes, 0xFFFFFFFFU);
  for (std::size_t i = 0; i < members; ++i) {
    ids[i] = noise.ids.empty() ? static_cast<std::uint32_t>(i) : noise.ids[i];
  }
  return ids;
}

Day next_day(Ensemble& ensemble, const Model& model, const facts::DayForcing& forcing) {
  assert(forcing.date == ensemble.date() + 1);
  Access::date(ensemble) = forcing.date;
  Day day = make_day(model, ensemble.dwelling(), forcing, Access::daylength_yesterday(ensemble),
                     ++Access::turn(ensemble));
  work_of_treatments(ensemble, day);
  Access::daylength_yesterday(ensemble) = static_cast<float>(forcing.daylength_h);
  return day;
}

}  // namespace

void advance_days(Ensemble& ensemble, const Model& model, std::span<const facts::DayForcing> forcing,
                  const NoiseKey& noise) {
  assert(noise.ids.empty() || noise.ids.size() == static_cast<std::size_t>(ensemble.members()));
  std::vector<Day> days;
  days.reserve(forcing.size());
  for (const facts::DayForcing& day : forcing) days.push_back(next_day(ensemble, model, day));
  auto& blocks = Access::blocks(ensemble);
  const auto ids = ids_of_lanes(noise, static_cast<std::size_t>(ensemble.members()), blocks.size());
  best_step()({.blocks = blocks.data(),
               .ids = ids.data(),
               .block_count = static_cast<int>(blocks.size()),
               .days = days.data(),
               .day_count = static_cast<int>(days.size()),
               .luck_key = stream_key_words(noise.seed, noise.colony)});
}

void advance_day(Ensemble& ensemble, const Model& model, const facts::DayForcing& forcing,
                 std::span<const Action> actions, const NoiseKey& noise) {
  for (const Action& action : actions) act(ensemble, model, action, forcing.date, noise);
  advance_days(ensemble, model, std::span(&forcing, 1), noise);
}

bool has_eight() {
#if defined(__x86_64__)
  return __builtin_cpu_supports("avx2") != 0;
#else
  return false;
#endif
}

bool has_sixteen() {
#if defined(__x86_64__)
  return __builtin_cpu_supports("avx512f") != 0 && __builtin_cpu_supports("avx512dq") != 0 &&
         __builtin_cpu_supports("avx512bw") != 0 && __builtin_cpu_supports("avx512vl") != 0;
#else
  return false;
#endif
}

Step best_step() {
  return has_sixteen() ? step_sixteen : has_eight() ? step_eight : step_four;
}

}  // namespace beegarth::colony
