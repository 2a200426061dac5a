// One day of an ensemble: the keeper's actions in the morning, then every block of members alike.
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
    day.kill_on_bees -= std::log(1 - t.kind.efficacy_on_adults) / t.kind.days;
    day.kill_under_cappings -= std::log(1 - t.kind.efficacy_under_cappings) / t.kind.days;
  }
  treatments.erase(
      std::remove_if(treatments.begin(), treatments.end(), [](const auto& t) { return t.days_left <= 0; }),
      treatments.end());
}

// The noise ids of one block; lanes beyond the last member get an id of nobody.
std::array<std::uint32_t, lanes> ids_of_block(const NoiseKey& noise, int members, std::size_t block) {
  std::array<std::uint32_t, lanes> ids{};
  for (std::size_t lane = 0; lane < lanes; ++lane) {
    const std::size_t member = block * lanes + lane;
    const bool is_member = member < static_cast<std::size_t>(members);
    ids[lane] = !is_member          ? 0xFFFFFFFFU
                : noise.ids.empty() ? static_cast<std::uint32_t>(member)
                                    : noise.ids[member];
  }
  return ids;
}

}  // namespace

void advance_day(Ensemble& ensemble, const Model& model, const facts::DayForcing& forcing,
                 std::span<const Action> actions, const NoiseKey& noise) {
  assert(forcing.date == ensemble.date() + 1);
  assert(noise.ids.empty() || noise.ids.size() == static_cast<std::size_t>(ensemble.members()));
  for (const Action& action : actions) act(ensemble, model, action, forcing.date, noise);

  Access::date(ensemble) = forcing.date;
  Day day = make_day(model, ensemble.dwelling(), forcing, Access::daylength_yesterday(ensemble));
  day.turn = ++Access::turn(ensemble);
  day.luck_key = stream_key_words(noise.seed, noise.colony);
  work_of_treatments(ensemble, day);
  Access::daylength_yesterday(ensemble) = static_cast<float>(forcing.daylength_h);

  const StepBlock step = best_step();
  auto& blocks = Access::blocks(ensemble);
  for (std::size_t b = 0; b < blocks.size(); ++b) {
    step(blocks[b], day, ids_of_block(noise, ensemble.members(), b).data());
  }
}

bool has_eight() {
#if defined(__x86_64__)
  return __builtin_cpu_supports("avx2") != 0;
#else
  return false;
#endif
}

StepBlock best_step() {
  return has_eight() ? step_block_eight : step_block_four;
}

}  // namespace beegarth::colony
