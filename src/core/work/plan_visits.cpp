#include <algorithm>
#include <cmath>
#include <map>

#include "work/plan_told.hpp"
#include "work/words.hpp"

namespace beegarth::work {

namespace {

// After the Beaufort scale (World Meteorological Organization): light air and light breeze up to 3.3 m/s,
// gentle and moderate up to 7.9 m/s.
std::string wind_text(double wind_m_s) {
  if (wind_m_s < 1.6) return "hardly any wind";
  if (wind_m_s < 3.4) return "light wind";
  if (wind_m_s < 8) return "breeze";
  return "strong wind";
}

std::string weather_text(const SiteDay& day) {
  std::string text = number_text(day.temperature_max_C, 0) + " \u00b0C, " + wind_text(day.wind_m_s);
  if (day.rain_odds <= 0.1) return text + ", dry";
  return text + ", rain " + percent_text(day.rain_odds);
}

class Layout {
 public:
  Layout(const PlanInput& input, const Roads& roads, const Sifted& sifted, const Model& model,
         const Choice& choice)
      : input_(input), roads_(roads), sifted_(sifted), model_(model) {
    for (std::size_t j = 0; j < model.jobs.size(); ++j)
      if (const auto& option = choice.option_of_job[j])
        jobs_of_shift_[model.jobs[j].options[static_cast<std::size_t>(*option)].shift].push_back(
            static_cast<int>(j));
    for (const auto& colony : input.colonies) place_[colony.colony] = colony.place;
  }

  std::vector<Visit> visits(const Choice& choice) {
    std::vector<Visit> out;
    std::vector<int> rounds = choice.rounds;
    std::sort(rounds.begin(), rounds.end(), [&](int a, int b) { return round(a).shift < round(b).shift; });
    for (const int r : rounds)
      for (Visit& visit : visits_of_round(round(r))) out.push_back(std::move(visit));
    return out;
  }

 private:
  const RoundChoice& round(int r) const { return model_.rounds[static_cast<std::size_t>(r)]; }
  const Job& job(int j) const { return model_.jobs[static_cast<std::size_t>(j)]; }
  const facts::Need& need(int j) const { return input_.needs[static_cast<std::size_t>(job(j).need)]; }
  const SiteDay& weather(int site, int day) const {
    return input_.weather[static_cast<std::size_t>(site)][static_cast<std::size_t>(day)];
  }

  std::vector<Visit> visits_of_round(const RoundChoice& choice) const {
    const auto found = jobs_of_shift_.find(choice.shift);
    if (found == jobs_of_shift_.end()) return {};
    unsigned sites = 0;
    for (const int j : found->second) sites |= 1U << static_cast<unsigned>(job(j).site);
    const Shift& shift = model_.shifts[static_cast<std::size_t>(choice.shift)];
    const Round way =
        better_way_round(shift, roads_.shortest_round(sites, choice.last), choice, found->second);
    std::vector<Visit> out;
    double hour = best_leaving(shift, way, found->second);
    for (std::size_t stop = 0; stop < way.order.size(); ++stop) {
      const int site = way.order[stop];
      hour += way.legs[stop] / 60;
      out.push_back(visit_at(site, shift.day, hour, in_order(found->second, site)));
      out.back().travel_minutes = way.legs[stop];
      hour = out.back().end_hour;
    }
    return out;
  }

  // Where the round is as short the other way about, the one that comes to what wants dusk later; of two
  // alike, the one with the fitter hours.
  Round better_way_round(const Shift& shift, Round way, const RoundChoice& choice,
                         const std::vector<int>& jobs) const {
    constexpr double as_short = 1e-9;
    if (choice.last >= 0 || way.order.size() < 2) return way;
    const Round back = roads_.turned(way);
    if (back.minutes > way.minutes + as_short) return way;
    const auto merit = [&](const Round& one) {
      return std::pair{dusk_stops(one, jobs), fitness(shift.day, best_leaving(shift, one, jobs), one, jobs)};
    };
    return merit(back) > merit(way) ? back : way;
  }

  // The later the stops with something for dusk, the more.
  int dusk_stops(const Round& way, const std::vector<int>& jobs) const {
    int sum = 0;
    for (std::size_t stop = 0; stop < way.order.size(); ++stop)
      for (const int j : jobs)
        if (job(j).site == way.order[stop] && need(j).clock == facts::Clock::dusk)
          sum += static_cast<int>(stop);
    return sum;
  }

  double minutes_at(int site, const std::vector<int>& jobs) const {
    double minutes = input_.settle_minutes;
    for (const int j : jobs)
      if (job(j).site == site) minutes += job(j).minutes;
    return minutes;
  }

  // Within the day's hours, the leaving time at which the hours on site are fittest; the latest where
  // something wants dusk.
  double best_leaving(const Shift& shift, const Round& way, const std::vector<int>& jobs) const {
    const Availability& hours = input_.hours[static_cast<std::size_t>(shift.day)];
    double used = way.minutes;
    for (const int site : way.order) used += minutes_at(site, jobs);
    const double slack = hours.end_hour - hours.start_hour - used / 60;
    if (slack <= 0) return shift.start_hour;
    const bool dusk =
        std::any_of(jobs.begin(), jobs.end(), [&](int j) { return need(j).clock == facts::Clock::dusk; });
    if (dusk) return hours.start_hour + slack;
    double best = -1, leave = shift.start_hour;
    const int quarters = static_cast<int>(slack * 4 + 1e-9);
    for (int late = 0; late <= quarters; ++late) {
      const double candidate = to_arrive_on_five_minutes(hours.start_hour + 0.25 * late, way.legs.front());
      if (candidate > hours.start_hour + slack + 1e-9) continue;
      const double fit = fitness(shift.day, candidate, way, jobs);
      if (fit > best + 1e-9) {
        best = fit;
        leave = candidate;
      }
    }
    return leave;
  }

  static double to_arrive_on_five_minutes(double leave, double leg_minutes) {
    return std::ceil((leave * 60 + leg_minutes) / 5 - 1e-6) * 5 / 60 - leg_minutes / 60;
  }

  double fitness(int day, double leave, const Round& way, const std::vector<int>& jobs) const {
    double hour = leave, sum = 0;
    for (std::size_t stop = 0; stop < way.order.size(); ++stop) {
      hour += way.legs[stop] / 60;
      const double length = minutes_at(way.order[stop], jobs) / 60;
      sum += length * mean_over(weather(way.order[stop], day).opening, hour, hour + length);
      hour += length;
    }
    return sum;
  }

  // By place, the jobs of a colony together; what must come first before what follows; dusk jobs after the
  // others; suspects at the very end.
  std::vector<int> in_order(const std::vector<int>& jobs, int site) const {
    std::vector<int> here;
    for (const int j : jobs)
      if (job(j).site == site) here.push_back(j);
    const auto rank = [&](int j) {
      const auto& one = need(j);
      const auto place = one.colony ? place_.find(*one.colony) : place_.end();
      return std::make_tuple(
          job(j).last, one.clock == facts::Clock::dusk, place == place_.end() ? 0 : place->second,
          one.colony ? one.colony->text() : std::string(), one.clock != facts::Clock::opening, one.key);
    };
    std::sort(here.begin(), here.end(), [&](int a, int b) { return rank(a) < rank(b); });
    std::vector<int> ordered;
    while (!here.empty()) {
      auto next = std::find_if(here.begin(), here.end(), [&](int j) {
        return std::none_of(job(j).after.begin(), job(j).after.end(), [&](const Before& before) {
          return std::find(here.begin(), here.end(), before.job) != here.end();
        });
      });
      if (next == here.end()) next = here.begin();
      ordered.push_back(*next);
      here.erase(next);
    }
    return ordered;
  }

  Visit visit_at(int site, int day, double start, const std::vector<int>& jobs) const {
    Visit visit;
    visit.date = input_.from + day;
    visit.site = input_.sites[static_cast<std::size_t>(site)].site;
    visit.start_hour = start;
    visit.end_hour = start + minutes_at(site, jobs) / 60;
    visit.opening_odds = mean_over(weather(site, day).opening, visit.start_hour, visit.end_hour);
    visit.weather = weather_text(weather(site, day));
    for (const int j : jobs) visit.jobs.push_back({told(j, day, visit.end_hour)});
    for (const int i : sifted_.keep_shut) {
      const auto& shut = input_.needs[static_cast<std::size_t>(i)];
      if (shut.site == visit.site && visit.date >= shut.earliest && visit.date <= shut.latest)
        visit.jobs.push_back({shut});
    }
    name_fallback(visit, site, day, jobs);
    return visit;
  }

  facts::Need told(int j, int day, double end_hour) const {
    facts::Need one = need(j);
    const double dusk = dusk_hour(weather(job(j).site, day));
    if (one.clock == facts::Clock::dusk && end_hour < dusk - 1.5)
      one.cautions.push_back(
          "Your hours end before dusk (about " + number_text(dusk, 0) +
          ":00): narrow the entrance to one bee's width first, spill nothing, do this last.");
    return one;
  }

  // The later day on which moving the whole visit loses least.
  void name_fallback(Visit& visit, int site, int day, const std::vector<int>& jobs) const {
    double never = 0, planned = 0;
    for (const int j : jobs) {
      never += need(j).loss.never;
      planned += loss_on(need(j).loss, visit.date);
    }
    double best = never - 1e-9;
    for (int later = day + 1; later < input_.days; ++later) {
      const double moved = loss_if_moved(site, later, jobs);
      if (moved >= best) continue;
      best = moved;
      visit.fallback = input_.from + later;
    }
    const double cost = std::max(0.0, (visit.fallback ? best : never) - planned);
    std::string text =
        visit.fallback ? day_text(*visit.fallback) + " instead" : "no later day in this plan is as fit";
    if (cost >= 0.05) text += "; the wait costs about " + number_text(cost, 1) + " " + unit_of(jobs);
    visit.if_lost = text + odds_later(visit, jobs);
  }

  double loss_if_moved(int site, int day, const std::vector<int>& jobs) const {
    const Availability& hours = input_.hours[static_cast<std::size_t>(day)];
    const Date date = input_.from + day;
    double sum = 0;
    for (const int j : jobs) {
      const auto& one = need(j);
      const bool open = hours.end_hour > hours.start_hour && date >= one.earliest && date <= one.latest;
      const double odds =
          open ? job_odds(one, weather(site, day), hours.start_hour, hours.end_hour, false) : 0;
      sum += odds * loss_on(one.loss, date) + (1 - odds) * one.loss.never;
    }
    return sum;
  }

  std::string unit_of(const std::vector<int>& jobs) const {
    return jobs.empty() ? "" : need(jobs.front()).loss.unit;
  }

  // The first odds told for a day on or after the fallback, of the job with the most to lose.
  std::string odds_later(const Visit& visit, const std::vector<int>& jobs) const {
    if (!visit.fallback || jobs.empty()) return "";
    const int worst = *std::max_element(jobs.begin(), jobs.end(), [&](int a, int b) {
      return need(a).loss.never - loss_on(need(a).loss, visit.date) <
             need(b).loss.never - loss_on(need(b).loss, visit.date);
    });
    for (const auto& odds : need(worst).odds)
      if (odds.by >= *visit.fallback)
        return "; " + odds.event + " by " + day_text(odds.by) + " " + percent_text(odds.odds.value) +
               (need(worst).colony ? " at " + name_of(*need(worst).colony) : "");
    return "";
  }

  std::string name_of(const ColonyId& colony) const {
    for (const auto& one : input_.colonies)
      if (one.colony == colony && !one.name.empty()) return one.name;
    return colony.text();
  }

  const PlanInput& input_;
  const Roads& roads_;
  const Sifted& sifted_;
  const Model& model_;
  std::map<int, std::vector<int>> jobs_of_shift_;
  std::map<ColonyId, int> place_;
};

}  // namespace

std::vector<Visit> lay_out_visits(const PlanInput& input, const Roads& roads, const Sifted& sifted,
                                  const Model& model, const Choice& choice) {
  return Layout(input, roads, sifted, model, choice).visits(choice);
}

}  // namespace beegarth::work
