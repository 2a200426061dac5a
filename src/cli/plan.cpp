// plan: where to go in the next days, in the form that is wanted, or a week of the keeper's own beside it.
#include <iostream>
#include <iterator>

#include "cli/call.hpp"
#include "garth/files.hpp"
#include "garth/plan/own_week.hpp"
#include "garth/plan/plan_forms.hpp"
#include "garth/plan/plan_json.hpp"
#include "garth/plan/plan_text.hpp"

namespace beegarth::cli {
namespace {

std::string in_form(const Call& call, const garth::PlanAnswer& answer, const garth::Session& session) {
  if (call.form == "lines") return garth::plan_lines(answer.plan, answer.names);
  if (call.form == "packing") return garth::packing_list(answer.plan, answer.names);
  if (call.form == "calendar") return garth::plan_calendar(answer, session.today);
  if (call.form == "gpx") return garth::plan_gpx(answer, session.state);
  if (call.json) return garth::plan_json(answer.plan, answer.names).dump(2) + "\n";
  return garth::plan_text(answer.plan, answer.names);
}

Expected<std::string> beside_the_plan(const Call& call, const garth::PlanAnswer& answer) {
  constexpr std::size_t largest_file = std::size_t{1} << 20;
  const auto lines = call.own == "-"
                         ? Expected<std::string>(std::string(std::istreambuf_iterator<char>(std::cin), {}))
                         : garth::read_file(call.own, largest_file);
  if (!lines) return lines.problem();
  const auto jobs = garth::own_jobs(*lines);
  if (!jobs) return jobs.problem();
  const auto week = garth::own_week(answer, *jobs);
  if (!week) return week.problem();
  return call.json ? garth::own_week_json(*week, answer.names).dump(2) + "\n"
                   : garth::own_week_text(*week, answer.names);
}

}  // namespace

int plan_command(const Call& call) {
  if (!call.own.empty() && !call.form.empty())
    return report(
        {ProblemKind::wrong_use, "--own and --form do not go together", "plan", "give one of them"});
  if (call.json && !call.form.empty())
    return report(
        {ProblemKind::wrong_use, "--json and --form do not go together", "plan", "give one of them"});
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  const auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  const auto answer = garth::plan_next_days(*session, call.days);
  if (!answer) return report(answer.problem());
  const auto text = call.own.empty() ? Expected<std::string>(in_form(call, *answer, *session))
                                     : beside_the_plan(call, *answer);
  if (!text) return report(text.problem());
  if (call.out.empty()) {
    std::cout << *text << std::flush;
    return 0;
  }
  const auto written = garth::write_file(call.out, *text);
  return written ? 0 : report(written.problem());
}

}  // namespace beegarth::cli
