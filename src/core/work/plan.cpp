#include "work/plan.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

#include "work/plan_told.hpp"
#include "work/words.hpp"

namespace beegarth::work {

namespace {

constexpr std::size_t most_sites = 8;  // all their subsets are weighed, every day
constexpr int most_days = 60;

std::optional<Problem> check_sizes(const PlanInput& input) {
  const auto days = static_cast<std::size_t>(std::max(0, input.days));
  const std::size_t sites = input.sites.size();
  if (input.days < 1 || input.days > most_days)
    return bad_input("a plan has 1 to 60 days, not " + std::to_string(input.days), "days");
  if (input.hours.size() != days)
    return bad_input("working hours are wanted for each day of the plan", "hours");
  if (input.weather.size() != sites) return bad_input("weather is wanted for each site", "weather");
  for (const auto& site : input.weather)
    if (site.size() != days) return bad_input("weather is wanted for each day of the plan", "weather");
  if (input.travel.minutes.size() != sites + 1)
    return bad_input("the travel table wants a row for home and each site", "travel");
  for (const auto& row : input.travel.minutes)
    if (row.size() != sites + 1)
      return bad_input("the travel table wants a column for home and each site", "travel");
  return std::nullopt;
}

std::optional<Problem> check_numbers(const PlanInput& input) {
  for (const auto& need : input.needs) {
    const auto& loss = need.loss;
    const bool finite =
        std::isfinite(loss.never) && std::isfinite(need.temperature_min_C) &&
        std::all_of(loss.by_day.begin(), loss.by_day.end(), [](double v) { return std::isfinite(v); });
    if (!finite) return bad_input("a loss or temperature is not a finite number", need.key);
  }
  for (const auto& row : input.travel.minutes)
    for (const auto& minutes : row)
      if (minutes && !(std::isfinite(*minutes) && *minutes >= 0))
        return bad_input("a travel time is not a finite number of minutes from 0 up", "travel");
  for (const auto& hours : input.hours)
    if (!(hours.start_hour >= 0 && hours.end_hour <= 24))
      return bad_input("working hours lie outside 0 to 24", "hours");
  if (!(input.price_per_hour >= 0 && std::isfinite(input.price_per_hour) &&
        input.price_per_travel_minute >= 0 && std::isfinite(input.price_per_travel_minute) &&
        input.price_of_opening >= 0 && std::isfinite(input.price_of_opening)))
    return bad_input("the price of an hour, a minute's travel or an opening is below 0 or not finite",
                     "price");
  return std::nullopt;
}

// Where there are more sites than can be weighed: those with the most to lose, in their given order.
struct Narrowed {
  PlanInput input;
  std::vector<Undone> undone;
  std::vector<std::string> remarks;
};

double at_stake(const PlanInput& input, const SiteId& site) {
  double sum = 0;
  for (const auto& need : input.needs)
    if (need.site == site) sum += undone_of(need, "").cost;
  return sum;
}

Narrowed narrow(const PlanInput& input) {
  Narrowed out{input, {}, {}};
  if (input.sites.size() <= most_sites) return out;
  std::vector<std::size_t> order(input.sites.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return at_stake(input, input.sites[a].site) > at_stake(input, input.sites[b].site);
  });
  std::vector<std::size_t> kept(order.begin(), order.begin() + most_sites);
  std::sort(kept.begin(), kept.end());
  out.input.sites.clear();
  out.input.weather.clear();
  out.input.travel.minutes.assign(kept.size() + 1, std::vector<std::optional<double>>(kept.size() + 1));
  for (std::size_t a = 0; a < kept.size(); ++a) {
    out.input.sites.push_back(input.sites[kept[a]]);
    out.input.weather.push_back(input.weather[kept[a]]);
    out.input.travel.minutes[0][a + 1] = input.travel.minutes[0][kept[a] + 1];
    out.input.travel.minutes[a + 1][0] = input.travel.minutes[kept[a] + 1][0];
    for (std::size_t b = 0; b < kept.size(); ++b)
      out.input.travel.minutes[a + 1][b + 1] = input.travel.minutes[kept[a] + 1][kept[b] + 1];
  }
  std::string left_out;
  for (std::size_t i = most_sites; i < order.size(); ++i) {
    const SiteFacts& site = input.sites[order[i]];
    left_out += (left_out.empty() ? "" : ", ") + site.name;
    auto& needs = out.input.needs;
    for (const auto& need : needs)
      if (need.site == site.site)
        out.undone.push_back(
            undone_of(need, "eight sites are planned at once and " + site.name + " is not among them"));
    needs.erase(
        std::remove_if(needs.begin(), needs.end(), [&](const auto& need) { return need.site == site.site; }),
        needs.end());
  }
  out.remarks.push_back(
      "Eight sites are planned at once, those with the most to lose. Not planned: " + left_out + ".");
  return out;
}

void keep_shut_remarks(const PlanInput& input, const Sifted& sifted, Plan& plan) {
  for (const int i : sifted.keep_shut) {
    const auto& shut = input.needs[static_cast<std::size_t>(i)];
    plan.remarks.push_back(shut.what + ".");
  }
}

void order_undone(std::vector<Undone>& undone) {
  std::stable_sort(undone.begin(), undone.end(), [](const Undone& a, const Undone& b) {
    if (a.cost != b.cost) return a.cost > b.cost;
    return a.need.key < b.need.key;
  });
}

// What a plan is made of, up to the choice.
struct Prepared {
  Narrowed narrowed;
  Roads roads;
  Sifted sifted;
  Model model;
};

Expected<Prepared> prepare(const PlanInput& whole) {
  if (auto problem = check_sizes(whole)) return *problem;
  if (auto problem = check_numbers(whole)) return *problem;
  Narrowed narrowed = narrow(whole);
  const Roads roads(narrowed.input.travel, static_cast<int>(narrowed.input.sites.size()));
  Sifted sifted = sift_needs(narrowed.input, roads);
  Model model = build_model(narrowed.input, roads, sifted);
  return Prepared{std::move(narrowed), roads, std::move(sifted), std::move(model)};
}

Plan tell_plan(const Prepared& prepared, const Choice& choice) {
  const auto& [narrowed, roads, sifted, model] = prepared;
  const PlanInput& input = narrowed.input;
  Plan plan;
  plan.from = input.from;
  plan.to = input.from + (input.days - 1);
  plan.remarks = narrowed.remarks;
  plan.remarks.insert(plan.remarks.end(), sifted.remarks.begin(), sifted.remarks.end());
  keep_shut_remarks(input, sifted, plan);
  if (!choice.found)
    plan.remarks.push_back("No plan was found within the work allowed; nothing is scheduled.");
  for (const int i : sifted.at_home) plan.at_home.push_back({input.needs[static_cast<std::size_t>(i)]});
  // A suspicion before all else, then what is owed to the authority, then what most would be lost by.
  const auto rank = [](const PlannedJob& job) {
    const bool suspicion = job.need.key.rfind("tell-inspector/", 0) == 0;
    const bool owed = job.need.key.rfind("report/", 0) == 0;
    return std::pair{suspicion ? 0 : owed ? 1 : 2, -job.need.loss.never};
  };
  std::stable_sort(plan.at_home.begin(), plan.at_home.end(),
                   [&](const PlannedJob& a, const PlannedJob& b) { return rank(a) < rank(b); });
  plan.visits = lay_out_visits(input, roads, sifted, model, choice);
  plan.undone = tell_undone(input, sifted, model, choice);
  plan.undone.insert(plan.undone.end(), narrowed.undone.begin(), narrowed.undone.end());
  order_undone(plan.undone);

  const Choice nothing{std::vector<std::optional<int>>(model.jobs.size()), {}, 0, 0, false, false};
  plan.expected_loss = choice.found ? choice.value : value_of(model, nothing.option_of_job, {});
  plan.bound = choice.found ? choice.bound : 0;
  plan.proven_optimal = choice.found && choice.proven;
  return plan;
}

// Day of the plan by need.
using OwnDays = std::map<std::string, int>;

Expected<OwnDays> own_days(const PlanInput& input, const std::vector<OwnJob>& own) {
  OwnDays days;
  for (const OwnJob& job : own) {
    const bool there = std::any_of(input.needs.begin(), input.needs.end(),
                                   [&](const facts::Need& need) { return need.key == job.need; });
    if (!there) return bad_input("there is no need '" + job.need + "'", "own", "name the key of a need");
    const int day = job.date - input.from;
    if (day < 0 || day >= input.days)
      return bad_input(job.date.iso() + " lies outside the plan", job.need, "give one of its days");
    if (!days.emplace(job.need, day).second)
      return bad_input("the job is there twice", job.need, "do it once");
  }
  return days;
}

// Only what is meant, and that whatever it is worth: left undone it costs more than everything else together.
Model only_what_is_meant(const PlanInput& input, const Model& model, const OwnDays& days) {
  double at_all_costs = 1;
  for (const Job& job : model.jobs) {
    double dearest = job.never;
    for (const JobOption& option : job.options) dearest = std::max(dearest, option.cost);
    at_all_costs += dearest;
  }
  double farthest = 0;
  for (const RoundChoice& round : model.rounds) farthest = std::max(farthest, round.cost);
  at_all_costs += farthest * model.days;
  for (const Opening& opening : model.openings) at_all_costs += opening.cost;
  // Not even to make way for all the others.
  const double never_at_all = at_all_costs * static_cast<double>(model.jobs.size() + 2);
  Model meant = model;
  for (Job& job : meant.jobs) {
    const auto own = days.find(input.needs[static_cast<std::size_t>(job.need)].key);
    if (own != days.end()) job.never += at_all_costs;
    for (JobOption& option : job.options) {
      const int day = meant.shifts[static_cast<std::size_t>(option.shift)].day;
      if (own == days.end() || day != own->second) option.cost = job.never + never_at_all;
    }
  }
  return meant;
}

}  // namespace

Expected<Plan> plan_days(const PlanInput& whole, const MipSolver& solve) {
  const auto prepared = prepare(whole);
  if (!prepared) return prepared.problem();
  return tell_plan(*prepared, choose(prepared->model, solve));
}

Expected<Plan> plan_own(const PlanInput& whole, const std::vector<OwnJob>& own, const MipSolver& solve) {
  const auto days = own_days(whole, own);
  if (!days) return days.problem();
  PlanInput willing = whole;
  willing.least_odds = 0;
  const auto prepared = prepare(willing);
  if (!prepared) return prepared.problem();
  Choice choice = choose(only_what_is_meant(prepared->narrowed.input, prepared->model, *days), solve);
  choice.value = choice.bound = value_of(prepared->model, choice.option_of_job, choice.rounds);
  Plan plan = tell_plan(*prepared, choice);
  for (Undone& undone : plan.undone) {
    if (!days->contains(undone.need.key))
      undone.because = "it is not in your week";
    else if (undone.not_worth_it)
      undone.because = "it does not fit into that day";
  }
  return plan;
}

}  // namespace beegarth::work
