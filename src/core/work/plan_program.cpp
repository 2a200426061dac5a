#include "work/plan_program.hpp"

#include <algorithm>
#include <limits>
#include <map>
#include <utility>
#include <vector>

namespace beegarth::work {

namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

// Columns: first one for each round, then one for each option of each job, then, for each shift and site,
// whether the site is seen in that shift and whether it closes the round, and last one for each opening.
struct Columns {
  explicit Columns(const Model& model) {
    int next = static_cast<int>(model.rounds.size());
    for (const auto& job : model.jobs) {
      first_option.push_back(next);
      next += static_cast<int>(job.options.size());
    }
    first_seen = next;
    first_opening = next + 2 * static_cast<int>(model.shifts.size()) * sites;
    count = first_opening + static_cast<int>(model.openings.size());
  }
  int option(int job, int option_index) const {
    return first_option[static_cast<std::size_t>(job)] + option_index;
  }
  int seen(int shift, int site) const { return first_seen + 2 * (shift * sites + site); }
  int closes(int shift, int site) const { return seen(shift, site) + 1; }

  static constexpr int sites = 8;
  std::vector<int> first_option;
  int first_seen = 0;
  int first_opening = 0;
  int count = 0;
};

class Program {
 public:
  explicit Program(const Model& model)
      : model_(model), columns_(model), opens_the_way_(model.jobs.size(), false) {
    for (const Job& job : model.jobs)
      for (const Before& before : job.after) opens_the_way_[static_cast<std::size_t>(before.job)] = true;
    const auto count = static_cast<std::size_t>(columns_.count);
    program_.cost.assign(count, 0.0);
    program_.integer.assign(count, false);
    set_costs();
    one_round_a_day();
    seen_by_a_round();
    each_job_once_where_seen();
    within_the_hours();
    in_their_order();
    clashes_apart();
    opened_once();
  }
  const MipProblem& program() const { return program_; }
  const Columns& columns() const { return columns_; }
  double left_undone() const { return left_undone_; }

 private:
  using Row = MipProblem::Row;

  static void add(Row& row, int column, double coefficient) {
    row.columns.push_back(column);
    row.coefficients.push_back(coefficient);
  }

  void set_costs() {
    for (std::size_t i = 0; i < model_.rounds.size(); ++i) {
      program_.cost[i] = model_.rounds[i].cost;
      program_.integer[i] = true;
    }
    for (std::size_t j = 0; j < model_.jobs.size(); ++j) {
      const Job& job = model_.jobs[j];
      left_undone_ += job.never;
      for (std::size_t o = 0; o < job.options.size(); ++o) {
        const auto column =
            static_cast<std::size_t>(columns_.option(static_cast<int>(j), static_cast<int>(o)));
        program_.cost[column] = job.options[o].cost - job.never;
        program_.integer[column] = true;
      }
    }
  }

  // Doing it then costs no less than leaving it, and nothing waits for it: never chosen, so that it stands in
  // no row.
  bool never_pays(int j, const JobOption& option) const {
    const auto at = static_cast<std::size_t>(j);
    return !opens_the_way_[at] && option.cost >= model_.jobs[at].never;
  }

  void one_round_a_day() {
    for (int day = 0; day < model_.days; ++day) {
      Row row{{}, {}, -infinite, 1};
      for (std::size_t i = 0; i < model_.rounds.size(); ++i)
        if (model_.shifts[static_cast<std::size_t>(model_.rounds[i].shift)].day == day)
          add(row, static_cast<int>(i), 1);
      keep(std::move(row));
    }
  }

  void seen_by_a_round() {
    for (int shift = 0; shift < static_cast<int>(model_.shifts.size()); ++shift)
      for (int site = 0; site < Columns::sites; ++site) {
        Row seen{{columns_.seen(shift, site)}, {-1}, 0, 0};
        Row closes{{columns_.closes(shift, site)}, {-1}, 0, 0};
        for (std::size_t i = 0; i < model_.rounds.size(); ++i) {
          const RoundChoice& round = model_.rounds[i];
          if (round.shift != shift || !((round.sites >> static_cast<unsigned>(site)) & 1U)) continue;
          add(seen, static_cast<int>(i), 1);
          if (round.last == site) add(closes, static_cast<int>(i), 1);
        }
        keep(std::move(seen));
        keep(std::move(closes));
      }
  }

  void each_job_once_where_seen() {
    for (int j = 0; j < static_cast<int>(model_.jobs.size()); ++j) {
      const Job& job = model_.jobs[static_cast<std::size_t>(j)];
      Row once{{}, {}, -infinite, 1};
      for (int o = 0; o < static_cast<int>(job.options.size()); ++o) {
        if (never_pays(j, job.options[static_cast<std::size_t>(o)])) continue;
        const int shift = job.options[static_cast<std::size_t>(o)].shift;
        add(once, columns_.option(j, o), 1);
        const int there = job.last ? columns_.closes(shift, job.site) : columns_.seen(shift, job.site);
        keep({{columns_.option(j, o), there}, {1, -1}, -infinite, 0});
      }
      keep(std::move(once));
    }
  }

  void within_the_hours() {
    for (int shift = 0; shift < static_cast<int>(model_.shifts.size()); ++shift) {
      work_fits(shift, [](int) { return true; });
      // Follows from the row above where rounds are whole; where the relaxation mixes rounds it keeps the
      // work at a site within the hours of those that call there, which brings the bound much closer.
      for (int site = 0; site < Columns::sites; ++site)
        work_fits(shift, [site](int one) { return one == site; });
    }
  }

  // Work at the sites meant fits into the hours that the rounds calling at any of them leave.
  template <class Meant>
  void work_fits(int shift, const Meant& meant) {
    const double minutes = model_.shifts[static_cast<std::size_t>(shift)].minutes();
    Row row{{}, {}, -infinite, 0};
    for (int j = 0; j < static_cast<int>(model_.jobs.size()); ++j) {
      const Job& job = model_.jobs[static_cast<std::size_t>(j)];
      if (!meant(job.site)) continue;
      for (int o = 0; o < static_cast<int>(job.options.size()); ++o) {
        const JobOption& option = job.options[static_cast<std::size_t>(o)];
        if (option.shift == shift && !never_pays(j, option)) add(row, columns_.option(j, o), job.minutes);
      }
    }
    if (row.columns.empty()) return;
    for (std::size_t i = 0; i < model_.rounds.size(); ++i) {
      const RoundChoice& round = model_.rounds[i];
      if (round.shift == shift && calls_at(round, meant))
        add(row, static_cast<int>(i), round.minutes - minutes);
    }
    keep(std::move(row));
  }

  template <class Meant>
  static bool calls_at(const RoundChoice& round, const Meant& meant) {
    for (int site = 0; site < Columns::sites; ++site)
      if (((round.sites >> static_cast<unsigned>(site)) & 1U) && meant(site)) return true;
    return false;
  }

  // Done by the end of day d only if what comes first is done by then (or by the day before).
  void in_their_order() {
    for (int j = 0; j < static_cast<int>(model_.jobs.size()); ++j)
      for (const Before& before : model_.jobs[static_cast<std::size_t>(j)].after)
        for (int day = 0; day < model_.days; ++day) {
          Row row{{}, {}, -infinite, 0};
          add_until(row, j, day, 1);
          if (row.columns.empty()) continue;
          add_until(row, before.job, before.another_day ? day - 1 : day, -1);
          keep(std::move(row));
        }
  }

  void add_until(Row& row, int j, int last_day, double coefficient) {
    const Job& job = model_.jobs[static_cast<std::size_t>(j)];
    for (int o = 0; o < static_cast<int>(job.options.size()); ++o) {
      const JobOption& option = job.options[static_cast<std::size_t>(o)];
      if (model_.shifts[static_cast<std::size_t>(option.shift)].day <= last_day && !never_pays(j, option))
        add(row, columns_.option(j, o), coefficient);
    }
  }

  void clashes_apart() {
    for (int j = 0; j < static_cast<int>(model_.jobs.size()); ++j)
      for (const int other : model_.jobs[static_cast<std::size_t>(j)].clashes) {
        Row row{{}, {}, -infinite, 1};
        add_until(row, j, model_.days, 1);
        add_until(row, other, model_.days, 1);
        keep(std::move(row));
      }
  }

  // Any job of an opening opens the hive; the others of the same day come free.
  void opened_once() {
    for (std::size_t i = 0; i < model_.openings.size(); ++i) {
      const Opening& opening = model_.openings[i];
      std::map<int, std::vector<int>> columns_of_job;
      for (const auto& [job, option] : opening.options) {
        const Job& one = model_.jobs[static_cast<std::size_t>(job)];
        if (never_pays(job, one.options[static_cast<std::size_t>(option)])) continue;
        columns_of_job[job].push_back(columns_.option(job, option));
      }
      if (columns_of_job.empty()) continue;
      if (columns_of_job.size() == 1) {  // nothing to share it with
        for (const int column : columns_of_job.begin()->second)
          program_.cost[static_cast<std::size_t>(column)] += opening.cost;
        continue;
      }
      const int opened = columns_.first_opening + static_cast<int>(i);
      program_.cost[static_cast<std::size_t>(opened)] = opening.cost;
      for (const auto& [job, columns] : columns_of_job) {
        Row row{{}, {}, -infinite, 0};
        for (const int column : columns) add(row, column, 1);
        add(row, opened, -1);
        keep(std::move(row));
      }
    }
  }

  void keep(Row row) {
    if (!row.columns.empty()) program_.rows.push_back(std::move(row));
  }

  const Model& model_;
  Columns columns_;
  std::vector<bool> opens_the_way_;  // by job: another comes after it
  MipProblem program_;
  double left_undone_ = 0;
};

}  // namespace

double value_of(const Model& model, const std::vector<std::optional<int>>& option_of_job,
                const std::vector<int>& rounds) {
  double value = 0;
  for (std::size_t j = 0; j < model.jobs.size(); ++j) {
    const auto& chosen = option_of_job[j];
    value += chosen ? model.jobs[j].options[static_cast<std::size_t>(*chosen)].cost : model.jobs[j].never;
  }
  for (const Opening& opening : model.openings) {
    const bool opened = std::any_of(opening.options.begin(), opening.options.end(), [&](const auto& one) {
      return option_of_job[static_cast<std::size_t>(one.first)] == one.second;
    });
    value += opened ? opening.cost : 0;
  }
  for (const int round : rounds) value += model.rounds[static_cast<std::size_t>(round)].cost;
  return value;
}

Choice choose(const Model& model, const MipSolver& solve) {
  Choice choice;
  choice.option_of_job.assign(model.jobs.size(), std::nullopt);
  if (model.jobs.empty() || model.rounds.empty()) {
    choice.value = choice.bound = value_of(model, choice.option_of_job, {});
    choice.proven = choice.found = true;
    return choice;
  }
  const Program program(model);
  const MipAnswer answer = solve(program.program());
  choice.found = answer.feasible;
  if (!answer.feasible) return choice;
  constexpr double chosen = 0.5;  // columns are whole numbers but for rounding
  for (std::size_t i = 0; i < model.rounds.size(); ++i)
    if (answer.x[i] > chosen) choice.rounds.push_back(static_cast<int>(i));
  for (std::size_t j = 0; j < model.jobs.size(); ++j)
    for (std::size_t o = 0; o < model.jobs[j].options.size(); ++o)
      if (answer.x[static_cast<std::size_t>(
              program.columns().option(static_cast<int>(j), static_cast<int>(o)))] > chosen)
        choice.option_of_job[j] = static_cast<int>(o);
  choice.value = value_of(model, choice.option_of_job, choice.rounds);
  choice.proven = answer.proven;
  choice.bound = answer.proven ? choice.value : std::min(choice.value, answer.bound + program.left_undone());
  return choice;
}

}  // namespace beegarth::work
