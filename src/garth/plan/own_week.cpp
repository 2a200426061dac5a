#include "garth/plan/own_week.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "garth/plan/mip_cbc.hpp"
#include "garth/plan/plan_json.hpp"
#include "garth/plan/plan_text.hpp"
#include "work/words.hpp"

namespace beegarth::garth {
namespace {

std::string_view without_remark(std::string_view line) {
  line = line.substr(0, line.find('#'));
  while (!line.empty() && (line.back() == ' ' || line.back() == '\t' || line.back() == '\r'))
    line.remove_suffix(1);
  while (!line.empty() && (line.front() == ' ' || line.front() == '\t')) line.remove_prefix(1);
  return line;
}

Expected<work::OwnJob> own_job(std::string_view line, int number) {
  const std::string where = "line " + std::to_string(number);
  const char* shape = "write a day and the key of a need: 2026-06-03 look-cells/cobble";
  const std::size_t space = line.find_first_of(" \t");
  if (space == std::string_view::npos) return bad_input("no day and key stand there", where, shape);
  const auto date = Date::parse(std::string(line.substr(0, space)));
  if (!date) return bad_input(date.problem().what, where, shape);
  return work::OwnJob{std::string(without_remark(line.substr(space))), *date};
}

// A colony may be left out of a week for good reason: the keeper is told, not blamed.
std::vector<std::string> what_is_left_out(const work::Plan& ours, const std::vector<work::OwnJob>& own,
                                          const PlanNames& names) {
  std::vector<std::string> words;
  for (const auto& visit : ours.visits)
    for (const auto& job : visit.jobs) {
      const bool meant = std::any_of(own.begin(), own.end(),
                                     [&](const work::OwnJob& one) { return one.need == job.need.key; });
      if (meant || job.need.minutes == 0) continue;
      words.push_back((job.need.colony ? names.of(*job.need.colony) + ": " : "") +
                      work::in_short(job.need.what) + ", on " + work::day_text(visit.date) + " in the plan");
    }
  return words;
}

}  // namespace

Expected<std::vector<work::OwnJob>> own_jobs(std::string_view lines) {
  std::vector<work::OwnJob> jobs;
  int number = 0;
  for (std::size_t at = 0; at <= lines.size();) {
    const std::size_t end = std::min(lines.find('\n', at), lines.size());
    const std::string_view line = without_remark(lines.substr(at, end - at));
    ++number;
    at = end + 1;
    if (line.empty()) continue;
    auto job = own_job(line, number);
    if (!job) return job.problem();
    jobs.push_back(*std::move(job));
  }
  return jobs;
}

Expected<OwnWeek> own_week(const PlanAnswer& answer, const std::vector<work::OwnJob>& own) {
  auto plan = work::plan_own(answer.input, own, cbc_solver());
  if (!plan) return plan.problem();
  OwnWeek week{.plan = *std::move(plan)};
  week.costs_more = week.plan.expected_loss - answer.plan.expected_loss;
  if (answer.plan.proven_optimal) week.costs_more = std::max(0.0, week.costs_more);
  week.left_out = what_is_left_out(answer.plan, own, answer.names);
  return week;
}

nlohmann::json own_week_json(const OwnWeek& week, const PlanNames& names) {
  return {
      {"plan", plan_json(week.plan, names)}, {"costs_more", week.costs_more}, {"left_out", week.left_out}};
}

std::string own_week_text(const OwnWeek& week, const PlanNames& names) {
  std::string out = "Your own week\n" + plan_text(week.plan, names);
  out += fmt::format("\nIt costs {:.1f} kg honey equivalent more than the plan.\n", week.costs_more);
  if (!week.left_out.empty()) {
    out += "The plan does besides:\n";
    for (const std::string& one : week.left_out) out += "  -  " + one + "\n";
  }
  return out;
}

}  // namespace beegarth::garth
