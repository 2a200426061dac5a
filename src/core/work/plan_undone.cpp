#include <algorithm>
#include <limits>

#include "work/plan_told.hpp"
#include "work/words.hpp"

namespace beegarth::work {

namespace {

std::string clock_words(facts::Clock clock) {
  switch (clock) {
    case facts::Clock::opening:
      return "fit for opening";
    case facts::Clock::daylight:
      return "with light and warmth enough";
    case facts::Clock::dusk:
      return "with dusk within your hours";
    case facts::Clock::dry_day:
      return "dry";
    case facts::Clock::any:
      return "fit";
  }
  return "fit";
}

class Teller {
 public:
  Teller(const PlanInput& input, const Model& model, const Choice& choice)
      : input_(input), model_(model), choice_(choice) {}

  struct Because {
    std::string words;
    bool not_worth_it = false;
  };
  Because because(int j) const {
    const Job& job = model_.jobs[static_cast<std::size_t>(j)];
    if (job.options.empty()) return {no_option(job)};
    if (all_rounds_too_long(job)) return {"the way there takes more than your hours"};
    for (const Before& before : job.after)
      if (!planned(before.job)) return {told(before.job) + " has to come first and is left undone"};
    for (std::size_t other = 0; other < model_.jobs.size(); ++other)
      if (planned(static_cast<int>(other)) && clash(j, static_cast<int>(other)))
        return {"it clashes with " + told(static_cast<int>(other)) + ", which is worth more"};
    bool there = false, worth_it = false;
    for (std::size_t o = 0; o < job.options.size(); ++o) {
      const JobOption& option = job.options[o];
      const bool seen = seen_in(option.shift, job);
      const double way = seen ? 0 : least_way(option.shift, job);
      there = there || seen;
      worth_it = worth_it || option.cost + opening_cost(j, static_cast<int>(o)) + way < job.never;
    }
    if (worth_it) return {"too little time"};
    return {there ? "you are there, but the time it takes costs more than it saves"
                  : "going costs more than it saves",
            true};
  }

 private:
  bool planned(int j) const { return choice_.option_of_job[static_cast<std::size_t>(j)].has_value(); }
  const facts::Need& need(const Job& job) const { return input_.needs[static_cast<std::size_t>(job.need)]; }
  std::string told(int j) const {
    return told_shortly(input_, need(model_.jobs[static_cast<std::size_t>(j)]));
  }

  bool clash(int a, int b) const {
    const auto& list = model_.jobs[static_cast<std::size_t>(std::min(a, b))].clashes;
    return std::find(list.begin(), list.end(), std::max(a, b)) != list.end();
  }

  bool seen_in(int shift, const Job& job) const {
    return std::any_of(choice_.rounds.begin(), choice_.rounds.end(), [&](int r) {
      const RoundChoice& round = model_.rounds[static_cast<std::size_t>(r)];
      return round.shift == shift && ((round.sites >> static_cast<unsigned>(job.site)) & 1U);
    });
  }

  // What it would cost to open the hive for this job: nothing where another job opens it then.
  double opening_cost(int j, int option) const {
    for (const Opening& opening : model_.openings) {
      const auto& options = opening.options;
      if (std::find(options.begin(), options.end(), std::pair{j, option}) == options.end()) continue;
      const bool open = std::any_of(options.begin(), options.end(), [&](const auto& one) {
        return choice_.option_of_job[static_cast<std::size_t>(one.first)] == one.second;
      });
      return open ? 0 : opening.cost;
    }
    return 0;
  }

  std::string no_option(const Job& job) const {
    const facts::Need& one = need(job);
    const Date first = std::max(one.earliest, input_.from);
    const Date last = std::min(one.latest, input_.from + (input_.days - 1));
    bool hours = false;
    double best = 0;
    for (Date date = first; date <= last; ++date) {
      const auto day = static_cast<std::size_t>(date - input_.from);
      const Availability& open = input_.hours[day];
      if (open.end_hour <= open.start_hour) continue;
      hours = true;
      best = std::max(best, job_odds(one, input_.weather[static_cast<std::size_t>(job.site)][day],
                                     open.start_hour, open.end_hour, false));
    }
    if (!hours) return "no working hours from " + day_text(first) + " to " + day_text(last);
    if (best >= input_.least_odds) return "the colony is to be left shut until after " + day_text(last);
    return "no day " + clock_words(one.clock) + " up to " + day_text(last) + " (best odds " +
           percent_text(best) + ")";
  }

  bool all_rounds_too_long(const Job& job) const {
    return std::none_of(model_.rounds.begin(), model_.rounds.end(), [&](const RoundChoice& round) {
      const bool there = (round.sites >> static_cast<unsigned>(job.site)) & 1U;
      return there && (!job.last || round.last == job.site) && fits(round, job);
    });
  }

  bool fits(const RoundChoice& round, const Job& job) const {
    const double hours = model_.shifts[static_cast<std::size_t>(round.shift)].minutes();
    return round.minutes + job.minutes <= hours + 1e-9 &&
           std::any_of(job.options.begin(), job.options.end(),
                       [&](const JobOption& option) { return option.shift == round.shift; });
  }

  double least_way(int shift, const Job& job) const {
    double least = std::numeric_limits<double>::infinity();
    for (const RoundChoice& round : model_.rounds)
      if (round.shift == shift && ((round.sites >> static_cast<unsigned>(job.site)) & 1U) &&
          fits(round, job) && (!job.last || round.last == job.site))
        least = std::min(least, round.cost);
    return least;
  }

  const PlanInput& input_;
  const Model& model_;
  const Choice& choice_;
};

}  // namespace

Undone undone_of(const facts::Need& need, std::string because, bool costs_nothing) {
  const double least =
      need.loss.by_day.empty() ? 0 : *std::min_element(need.loss.by_day.begin(), need.loss.by_day.end());
  Undone undone{.need = need, .because = std::move(because)};
  undone.cost = costs_nothing ? 0 : std::max(0.0, need.loss.never - least);
  undone.unit = need.loss.unit;
  constexpr double next_to_nothing = 0.05;
  undone.text = undone.cost < next_to_nothing
                    ? "costs next to nothing within this plan"
                    : "costs about " + number_text(undone.cost, 1) + " " + undone.unit;
  return undone;
}

std::string told_shortly(const PlanInput& input, const facts::Need& need) {
  std::string where;
  for (const SiteFacts& site : input.sites)
    if (site.site == need.site) where = site.name;
  for (const ColonyPlace& colony : input.colonies)
    if (need.colony == colony.colony) where = colony.name;
  return '"' + in_short(need.what) + "\" at " + where;
}

std::vector<Undone> tell_undone(const PlanInput& input, const Sifted& sifted, const Model& model,
                                const Choice& choice) {
  const Teller teller(input, model, choice);
  std::vector<Undone> out;
  for (std::size_t j = 0; j < model.jobs.size(); ++j)
    if (!choice.option_of_job[j]) {
      Teller::Because because = teller.because(static_cast<int>(j));
      out.push_back(
          undone_of(input.needs[static_cast<std::size_t>(model.jobs[j].need)], std::move(because.words)));
      out.back().not_worth_it = because.not_worth_it;
    }
  for (const SetAside& aside : sifted.aside)
    out.push_back(
        undone_of(input.needs[static_cast<std::size_t>(aside.need)], aside.because, aside.costs_nothing));
  return out;
}

}  // namespace beegarth::work
