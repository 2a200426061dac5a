#include "belief/project.hpp"

#include <algorithm>

#include "belief/events.hpp"
#include "belief/weather_ahead.hpp"

namespace beegarth::belief {
namespace {

using colony::Quantity;

constexpr std::array<Quantity, traced_count - 1> traced{
    Quantity::bees,          Quantity::brood_cells,        Quantity::stores_kg,
    Quantity::mites,         Quantity::mites_per_100_bees, Quantity::capped_cells,
    Quantity::infested_share};

// Copies the morning's figures of an ensemble into the trace.
class Recorder {
 public:
  Recorder(const Setting& setting, const Members& members, Trace& trace, Keep keep)
      : setting_(setting), trace_(trace), watch_(setting, setting.members), keep_(keep) {
    for (int i = 0; i < setting.members; ++i) tare_.push_back(observer_of(members, setting, i).tare_kg);
  }

  void morning(int day, const colony::Ensemble& ensemble, std::span<const std::uint32_t> which) {
    watch_.morning(day, ensemble, which, trace_);
    if (day >= trace_.whole_from) watch_.autumn(day, ensemble, which, trace_);
    if (keep_ == Keep::courses) record(day, ensemble, which);
  }

  // Beyond the horizon only what is decided in autumn is asked for.
  void beyond(int day, const colony::Ensemble& ensemble, std::span<const std::uint32_t> which) {
    watch_.autumn(day, ensemble, which, trace_);
  }

 private:
  void record(int day, const colony::Ensemble& ensemble, std::span<const std::uint32_t> which) {
    const std::size_t row = trace_.at(day, 0);
    const auto member = [&](std::size_t k) { return row + (which.empty() ? k : which[k]); };
    row_.resize(static_cast<std::size_t>(ensemble.members()));
    const bool whole = day >= trace_.whole_from;
    for (std::size_t q = 0; q < (whole ? traced.size() : fan_count); ++q) {
      ensemble.read(traced[q], row_);
      for (std::size_t k = 0; k < row_.size(); ++k) trace_.values[q][member(k)] = row_[k];
    }
    if (!whole) return;
    const auto pollen = ensemble.read(Quantity::pollen_kg);
    ensemble.read(Quantity::alive, row_);
    Visible there;
    there.dwelling = ensemble.dwelling();
    for (std::size_t k = 0; k < row_.size(); ++k) {
      const std::size_t at = member(k);
      trace_.alive[at] = row_[k];
      there.bees = trace_.values[static_cast<std::size_t>(Traced::bees)][at];
      there.brood_cells = trace_.values[static_cast<std::size_t>(Traced::brood_cells)][at];
      there.stores_kg = trace_.values[static_cast<std::size_t>(Traced::stores_kg)][at];
      there.pollen_kg = pollen[k];
      trace_.values[static_cast<std::size_t>(Traced::weight_kg)][at] =
          static_cast<float>(whole_hive_kg(there, tare_[at - row], setting_.errors));
    }
  }

  const Setting& setting_;
  Trace& trace_;
  EventWatch watch_;
  Keep keep_;
  std::vector<double> tare_;
  std::vector<float> row_;
};

// What is decided in autumn is followed until then, where that is not too far off.
int last_day(const Setting& setting, Date horizon) {
  constexpr int farthest = 240;  // days after today: from early March on
  const Date today = setting.timeline.began + setting.today;
  const Date autumn = end_of_winter_brood(today, setting.latitude_deg);
  const Date last = autumn - today <= farthest ? std::max(horizon, autumn) : horizon;
  return last - setting.timeline.began;
}

void live_future(const Setting& setting, const Fitted& fitted, const WeatherAhead& weather,
                 std::span<const std::uint32_t> which, int horizon, int last, Recorder& recorder) {
  colony::Ensemble ensemble = fitted.members.ensemble.take(which);
  std::vector<std::uint32_t> luck;
  luck.reserve(which.size());
  for (const std::uint32_t i : which)
    luck.push_back(i);  // luck to come is each member's own, and the same for all choices
  const colony::NoiseKey noise{luck_to_come(setting.seed), setting.colony, luck};
  for (int day = setting.today;; ++day) {
    if (day <= horizon)
      recorder.morning(day, ensemble, which);
    else
      recorder.beyond(day, ensemble, which);
    if (day == last) break;
    std::vector<colony::Action> actions;
    if (day == setting.today) actions = actions_on(setting, day, ensemble.dwelling());
    colony::advance_day(ensemble, setting.model, weather.on(setting.timeline.began + day), actions, noise);
  }
}

}  // namespace

Projected project(const Setting& setting, const Fitted& fitted, const Forcing& forcing, Date horizon,
                  Keep keep) {
  const int last = last_day(setting, horizon);
  const int shown = horizon - setting.timeline.began;
  const int kept_days = keep == Keep::courses ? shown : 0;
  Projected projected{Trace(setting.timeline.began, kept_days, setting.members), shown, last, last + 1, {}};
  projected.trace.whole_from = setting.today;
  Recorder recorder(setting, fitted.members, projected.trace, keep);
  Members again = set_back(setting, fitted.members.coordinates, fitted.members.luck);
  live_to(again, setting, setting.today,
          [&](int day, const colony::Ensemble& ensemble) { recorder.morning(day, ensemble, {}); });
  const auto members = static_cast<std::uint32_t>(setting.members);
  const auto futures = static_cast<std::uint32_t>(std::min<std::size_t>(forcing.futures.size(), members));
  for (std::uint32_t f = 0; f < futures; ++f) {
    std::vector<std::uint32_t> which;
    for (std::uint32_t i = f; i < members; i += futures) which.push_back(i);
    const facts::ForcingPath& future = forcing.futures[f];
    const int known = future.empty() ? setting.today : future.back().date + 1 - setting.timeline.began;
    projected.looped_from = std::min(projected.looped_from, std::max(known, setting.today));
    live_future(setting, fitted, WeatherAhead(setting.past, future), which, projected.horizon, last,
                recorder);
  }
  if (keep == Keep::first_days) return projected;
  const std::size_t today = projected.trace.at(setting.today, 0);
  projected.alive_today.assign(projected.trace.alive.begin() + static_cast<std::ptrdiff_t>(today),
                               projected.trace.alive.begin() + static_cast<std::ptrdiff_t>(today + members));
  return projected;
}

}  // namespace beegarth::belief
