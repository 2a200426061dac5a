#include "work/plan_model.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <set>

namespace beegarth::work {

namespace {

// Spread of a day's maximum about its median over the weather members, used only for jobs that ask for more
// or less warmth than an opening does. From memory: day-to-day spread of maxima in a temperate spring, about
// 3 C.
constexpr double temperature_spread_C = 3;
constexpr double warmth_of_an_opening_C = 13;  // already within SiteDay::opening
constexpr double dusk_span_hours = 1.5;        // a dusk job wants the last hour and a half before dark
// Between days that are alike in all else, the one nearer to the best day.
constexpr double price_per_day_from_best = 1e-3;

double odds_of_warmth(double least_C, double median_max_C) {
  return 0.5 * std::erfc((least_C - median_max_C) / (temperature_spread_C * std::sqrt(2.0)));
}

double hours_price(const PlanInput& input, double minutes) {
  return input.price_per_hour * minutes / 60;
}

// Whole hours given, three quarters, half and a quarter of them, in half hours; each where the weather suits
// best.
std::vector<Shift> shifts_of(const PlanInput& input, const Sifted& sifted, int day) {
  const Availability& hours = input.hours[static_cast<std::size_t>(day)];
  const double length = hours.end_hour - hours.start_hour;
  if (length <= 0) return {};
  std::set<int> sites;
  for (const int i : sifted.needs) sites.insert(sifted.site_of[static_cast<std::size_t>(i)]);
  const auto fitness = [&](double start, double end) {
    double sum = 0;
    for (const int site : sites)
      sum += mean_over(input.weather[static_cast<std::size_t>(site)][static_cast<std::size_t>(day)].opening,
                       start, end);
    return sites.empty() ? 0.0 : sum / static_cast<double>(sites.size());
  };
  std::vector<Shift> shifts{{day, hours.start_hour, hours.end_hour}};
  double best_so_far = fitness(hours.start_hour, hours.end_hour);
  for (const double share : {0.75, 0.5, 0.25}) {
    const double part = std::max(1.0, std::ceil(2 * length * share) / 2);
    if (part >= shifts.back().end_hour - shifts.back().start_hour) continue;
    double best = -1;
    Shift choice;
    const int half_hours = static_cast<int>((length - part) * 2 + 1e-9);
    for (int late = 0; late <= half_hours; ++late) {
      const double start = hours.start_hour + 0.5 * late;
      const double fit = fitness(start, start + part);
      if (fit > best + 1e-9) {
        best = fit;
        choice = {day, start, start + part};
      }
    }
    constexpr double worth_another_shift = 0.02;
    if (best <= best_so_far + worth_another_shift) continue;
    best_so_far = best;
    shifts.push_back(choice);
  }
  return shifts;
}

class Builder {
 public:
  Builder(const PlanInput& input, const Roads& roads, const Sifted& sifted)
      : input_(input), roads_(roads), sifted_(sifted) {}

  Model build() {
    model_.days = input_.days;
    for (int day = 0; day < input_.days; ++day)
      for (const Shift& shift : shifts_of(input_, sifted_, day)) model_.shifts.push_back(shift);
    for (const int i : sifted_.needs) add_job(i);
    bind_jobs();
    add_openings();
    for (int shift = 0; shift < static_cast<int>(model_.shifts.size()); ++shift) add_rounds(shift);
    return std::move(model_);
  }

 private:
  const facts::Need& need(int i) const { return input_.needs[static_cast<std::size_t>(i)]; }

  bool kept_shut(const facts::Need& one, Date date) const {
    return std::any_of(sifted_.keep_shut.begin(), sifted_.keep_shut.end(), [&](int i) {
      const auto& shut = need(i);
      return date >= shut.earliest && date <= shut.latest &&
             std::find(shut.clashes.begin(), shut.clashes.end(), one.key) != shut.clashes.end();
    });
  }

  void add_job(int i) {
    const facts::Need& one = need(i);
    const int site = sifted_.site_of[static_cast<std::size_t>(i)];
    Job job{.need = i,
            .site = site,
            .minutes = std::max(0, one.minutes),
            .last = one.last_in_round,
            .never = one.loss.never};
    const bool reach_dusk = hours_reach_dusk(one, site);
    std::map<int, double> if_rained_off;
    for (int s = 0; s < static_cast<int>(model_.shifts.size()); ++s) {
      const Shift& shift = model_.shifts[static_cast<std::size_t>(s)];
      const Date date = input_.from + shift.day;
      if (date < one.earliest || date > one.latest || kept_shut(one, date)) continue;
      const SiteDay& weather =
          input_.weather[static_cast<std::size_t>(site)][static_cast<std::size_t>(shift.day)];
      const double odds = job_odds(one, weather, shift.start_hour, shift.end_hour, reach_dusk);
      if (odds < input_.least_odds) continue;
      const auto known = if_rained_off.find(shift.day);
      const double otherwise = known != if_rained_off.end() ? known->second
                                                            : if_rained_off[shift.day] = loss_after_rain(
                                                                  input_, roads_, one, site, shift.day);
      const double cost = odds * loss_on(one.loss, date) + (1 - odds) * otherwise +
                          hours_price(input_, job.minutes) +
                          price_per_day_from_best * std::abs(date - one.best);
      job.options.push_back({s, odds, cost});
    }
    model_.jobs.push_back(std::move(job));
  }

  bool hours_reach_dusk(const facts::Need& one, int site) const {
    for (int day = 0; day < input_.days; ++day) {
      const Date date = input_.from + day;
      const Availability& hours = input_.hours[static_cast<std::size_t>(day)];
      if (date < one.earliest || date > one.latest || hours.end_hour <= hours.start_hour) continue;
      const SiteDay& weather = input_.weather[static_cast<std::size_t>(site)][static_cast<std::size_t>(day)];
      if (hours.end_hour >= dusk_hour(weather) - dusk_span_hours) return true;
    }
    return false;
  }

  void bind_jobs() {
    std::map<std::string, int> by_key;
    for (std::size_t j = 0; j < model_.jobs.size(); ++j)
      by_key[need(model_.jobs[j].need).key] = static_cast<int>(j);
    std::set<std::pair<int, int>> pairs;
    for (std::size_t j = 0; j < model_.jobs.size(); ++j) {
      Job& job = model_.jobs[j];
      for (const auto& key : need(job.need).after) {
        const auto first = by_key.find(key);
        if (first == by_key.end()) continue;  // answered already
        const Job& before = model_.jobs[static_cast<std::size_t>(first->second)];
        job.after.push_back({first->second, before.site != job.site || (before.last && !job.last)});
      }
      for (const auto& key : need(job.need).clashes) {
        const auto other = by_key.find(key);
        const int self = static_cast<int>(j);
        if (other != by_key.end() && other->second != self)
          pairs.insert({std::min(self, other->second), std::max(self, other->second)});
      }
    }
    for (const auto& [low, high] : pairs) model_.jobs[static_cast<std::size_t>(low)].clashes.push_back(high);
  }

  void add_openings() {
    if (input_.price_of_opening <= 0) return;
    std::map<std::pair<ColonyId, int>, Opening> openings;
    for (std::size_t j = 0; j < model_.jobs.size(); ++j) {
      const facts::Need& one = need(model_.jobs[j].need);
      if (!one.colony || one.clock != facts::Clock::opening) continue;
      const auto& options = model_.jobs[j].options;
      for (std::size_t o = 0; o < options.size(); ++o)
        openings[{*one.colony, model_.shifts[static_cast<std::size_t>(options[o].shift)].day}]
            .options.emplace_back(static_cast<int>(j), static_cast<int>(o));
    }
    for (auto& [colony_and_day, opening] : openings) {
      opening.cost = input_.price_of_opening;
      model_.openings.push_back(std::move(opening));
    }
  }

  void add_rounds(int shift) {
    unsigned ordinary = 0, closing = 0;
    for (const Job& job : model_.jobs)
      for (const JobOption& option : job.options)
        if (option.shift == shift) (job.last ? closing : ordinary) |= 1U << static_cast<unsigned>(job.site);
    const unsigned all = ordinary | closing;
    for (unsigned sites = 1; sites <= all; ++sites) {
      if ((sites & all) != sites) continue;
      if ((sites & ordinary) == sites) add_round(shift, sites, -1);
      for (int site = 0; site < static_cast<int>(input_.sites.size()); ++site) {
        const unsigned bit = 1U << static_cast<unsigned>(site);
        if ((sites & closing & bit) && ((sites & ~bit) & ordinary) == (sites & ~bit))
          add_round(shift, sites, site);
      }
    }
  }

  void add_round(int shift, unsigned sites, int last) {
    const Round round = roads_.shortest_round(sites, last);
    const double settling = input_.settle_minutes * static_cast<double>(round.order.size());
    if (round.minutes + settling > model_.shifts[static_cast<std::size_t>(shift)].minutes()) return;
    model_.rounds.push_back({shift, sites, last, round.minutes + settling,
                             input_.price_per_travel_minute * round.minutes + hours_price(input_, settling)});
  }

  const PlanInput& input_;
  const Roads& roads_;
  const Sifted& sifted_;
  Model model_;
};

}  // namespace

double mean_over(const std::array<double, 24>& hourly, double start_hour, double end_hour) {
  double sum = 0, span = 0;
  for (std::size_t hour = 0; hour < hourly.size(); ++hour) {
    const double from = std::max(start_hour, static_cast<double>(hour));
    const double to = std::min(end_hour, static_cast<double>(hour + 1));
    if (to <= from) continue;
    sum += hourly[hour] * (to - from);
    span += to - from;
  }
  return span > 0 ? sum / span : 0;
}

double dusk_hour(const SiteDay& day) {
  for (std::size_t hour = day.daylight.size(); hour > 0; --hour)
    if (day.daylight[hour - 1] >= 0.5) return static_cast<double>(hour);
  return 24;
}

double job_odds(const facts::Need& need, const SiteDay& day, double start_hour, double end_hour,
                bool hours_reach_dusk) {
  const double warm = odds_of_warmth(need.temperature_min_C, day.temperature_max_C);
  switch (need.clock) {
    case facts::Clock::opening: {
      const double open = mean_over(day.opening, start_hour, end_hour);
      return need.temperature_min_C == warmth_of_an_opening_C ? open : std::min(open, warm);
    }
    case facts::Clock::daylight:
      return std::min(warm, mean_over(day.daylight, start_hour, end_hour));
    case facts::Clock::dusk:
      if (hours_reach_dusk && end_hour < dusk_hour(day) - dusk_span_hours) return 0;
      return warm;
    case facts::Clock::dry_day:
      return std::min(warm, day.dry);
    case facts::Clock::any:
      return warm;
  }
  return 0;
}

double loss_on(const facts::LossCurve& loss, Date date) {
  if (loss.by_day.empty()) return 0;
  const int day = std::clamp(date - loss.from, 0, static_cast<int>(loss.by_day.size()) - 1);
  return loss.by_day[static_cast<std::size_t>(day)];
}

double loss_after_rain(const PlanInput& input, const Roads& roads, const facts::Need& need, int site,
                       int day) {
  const double effort = hours_price(input, need.minutes + input.settle_minutes) +
                        input.price_per_travel_minute * (roads.from_home(site) + roads.to_home(site));
  double best = need.loss.never;
  for (int later = day + 1; later < input.days; ++later) {
    const Date date = input.from + later;
    const Availability& hours = input.hours[static_cast<std::size_t>(later)];
    if (date < need.earliest || date > need.latest || hours.end_hour <= hours.start_hour) continue;
    const SiteDay& weather = input.weather[static_cast<std::size_t>(site)][static_cast<std::size_t>(later)];
    const double odds = job_odds(need, weather, hours.start_hour, hours.end_hour, false);
    if (odds < input.least_odds) continue;
    best = std::min(best, odds * loss_on(need.loss, date) + (1 - odds) * need.loss.never + effort);
  }
  return best;
}

Model build_model(const PlanInput& input, const Roads& roads, const Sifted& sifted) {
  return Builder(input, roads, sifted).build();
}

}  // namespace beegarth::work
