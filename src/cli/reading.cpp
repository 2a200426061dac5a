// The commands that look at a book without changing it.
#include <fmt/format.h>

#include <fstream>
#include <iostream>
#include <iterator>
#include <nlohmann/json.hpp>

#include "cli/call.hpp"
#include "garth/as_it_stood.hpp"
#include "garth/beliefs/outlook_json.hpp"
#include "garth/calc/calc.hpp"
#include "garth/check_book.hpp"
#include "garth/files.hpp"
#include "garth/outline.hpp"
#include "garth/plan/plan.hpp"
#include "garth/plan/plan_json.hpp"
#include "garth/plan/plan_text.hpp"
#include "garth/seen_health.hpp"

namespace beegarth::cli {

using nlohmann::json;

int report(const Problem& problem) {
  std::cerr << "beegarth: " << one_line(problem) << '\n';
  return static_cast<int>(problem.kind);
}

Expected<garth::SessionOptions> session_options(const Call& call, bool read_only) {
  garth::SessionOptions options{.seed = call.seed,
                                .members = call.members,
                                .threads = call.threads,
                                .who = call.who,
                                .read_only = read_only};
  if (!call.known.empty()) {
    const auto known = Date::parse(call.known);
    if (!known) return bad_input(known.problem().what, "--known", known.problem().remedy);
    options.known_on = *known;
  }
  if (call.today.empty()) return options;
  const auto today = Date::parse(call.today);
  if (!today) return bad_input(today.problem().what, "--today", today.problem().remedy);
  options.today = *today;
  return options;
}

Expected<std::optional<Date>> day_of_option(const std::string& text, const char* option) {
  if (text.empty()) return std::optional<Date>();
  const auto date = Date::parse(text);
  if (!date) return bad_input(date.problem().what, option, date.problem().remedy);
  return std::optional(*date);
}

namespace {

// Opens the book and hands the session to `look`; any problem is reported.
template <class Look>
int on_book(const Call& call, const Look& look) {
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  return look(*session);
}

void print(const json& value) {
  std::cout << value.dump(2) << '\n';
}

}  // namespace

int outlook_command(const Call& call) {
  return on_book(call, [&](const garth::Session& session) {
    garth::BelieveOptions options;
    if (!call.subject.empty()) {
      const auto colony = garth::colony_named(session.state, call.subject);
      if (!colony) return report(colony.problem());
      const auto& state = session.state.colonies.at(*colony);
      if (state.ended) {
        return report(bad_input("the colony ended on " + state.ended_on.value_or(session.today).iso(),
                                call.subject, "name one that lives, or give an earlier --today"));
      }
      options.only = *colony;
    }
    const double latitude =
        session.state.sites.empty() ? 52 : session.state.sites.begin()->second.latitude_deg;
    options.horizon = garth::last_followed(session.today, latitude);
    const auto skies = garth::skies_of(session, options.horizon);
    if (!skies) return report(skies.problem());
    const auto outlooks = garth::outlooks_of(session, *skies, options);
    if (!outlooks) return report(outlooks.problem());
    if (call.json) {
      json list = json::array();
      for (const auto& outlook : *outlooks) list.push_back(garth::outlook_json(outlook, session.state));
      print(options.only ? list.at(0) : list);
    } else {
      for (const auto& outlook : *outlooks) std::cout << garth::outlook_text(outlook, session.state) << '\n';
      if (options.only) return 0;
      for (const ColonyId& id : garth::homeless_colonies(session.state)) {
        std::cout << session.state.colonies.at(id).began.name
                  << " is left out: it stands in no hive at an open site"
                  << garth::why_homeless(session, id).because() << '\n';
      }
      if (session.state.colonies.empty())
        std::cout << "no colony is in the book yet\n";
      else if (outlooks->empty() && garth::homeless_colonies(session.state).empty())
        std::cout << "no colony of the book lives on " << session.today.iso() << "; see beegarth see\n";
    }
    return 0;
  });
}

int see_command(const Call& call) {
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  const auto outline = garth::open_outline(call.book, *options);
  if (!outline) return report(outline.problem());
  const auto health = garth::seen_health(*outline);
  if (!health) return report(health.problem());
  if (call.json)
    print(garth::as_it_stood_json(*outline, *health));
  else
    std::cout << garth::as_it_stood_text(*outline, *health);
  return 0;
}

int export_command(const Call& call) {
  const std::string form = export_form(call);
  if (form != "jsonl") return export_as(call, form);
  auto book = book::Book::open(call.book, {.read_only = true}, garth::machine_surroundings());
  if (!book) return report(book.problem());
  const auto lines = book->export_lines();
  if (!lines) return report(lines.problem());
  if (call.out.empty()) {
    std::cout << *lines << std::flush;
    return std::cout
               ? 0
               : report({ProblemKind::storage, "the output could not be written", "standard output", ""});
  }
  const auto written = garth::write_file(call.out, *lines);
  return written ? 0 : report(written.problem());
}

int verify_command(const Call& call) {
  const auto answer = garth::check_book(call.book);
  if (!answer) return report(answer.problem());
  if (call.json) {
    print(garth::check_json(*answer));
  } else {
    for (const auto& fault : answer->faults) std::cout << fault << '\n';
    std::cout << answer->entries << " entries, " << (answer->faults.empty() ? "sound" : "NOT sound")
              << ", head " << answer->head.substr(0, 16) << '\n';
  }
  return answer->faults.empty() ? 0 : static_cast<int>(ProblemKind::answer_is_no);
}

int calc_command(const Call& call) {
  if (call.list) {
    json names = json::array();
    for (const auto& calc : garth::all_calcs()) {
      if (call.json) {
        names.push_back({{"name", calc.name}, {"summary", calc.summary}});
      } else {
        std::cout << fmt::format("{:<16} {}\n", calc.name, calc.summary);
      }
    }
    if (call.json) print(names);
    return 0;
  }
  if (call.subject.empty())
    return report({ProblemKind::wrong_use, "no calc was named", "calc", "see beegarth calc --list"});
  for (const auto& calc : garth::all_calcs()) {
    if (calc.name != call.subject) continue;
    if (call.schema) {
      print({{"input", calc.input_schema()}, {"output", calc.output_schema()}});
      return 0;
    }
    if (call.example) {
      print(calc.example());
      return 0;
    }
  }
  const auto tables = garth::Tables::built_in();
  if (!tables) return report(tables.problem());
  // An unknown name is told before anything is read.
  if (call.schema || call.example) return report(garth::run_calc(call.subject, "{}", *tables).problem());
  const bool known = std::any_of(garth::all_calcs().begin(), garth::all_calcs().end(),
                                 [&](const auto& calc) { return calc.name == call.subject; });
  const std::string input = known ? std::string(std::istreambuf_iterator<char>(std::cin), {}) : "{}";
  const auto answer = garth::run_calc(call.subject, input, *tables);
  if (!answer) return report(answer.problem());
  print(*answer);
  return 0;
}

}  // namespace beegarth::cli
