// The command that holds ways of acting side by side.
#include "garth/beliefs/suppose.hpp"

#include <iostream>

#include "cli/call.hpp"

namespace beegarth::cli {

int suppose_command(const Call& call) {
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  const auto until = day_of_option(call.until, "--until");
  if (!until) return report(until.problem());
  const auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  const auto answer =
      garth::suppose_in(*session, {.colony = call.subject, .ways = call.ways, .until = *until});
  if (!answer) return report(answer.problem());
  if (call.json)
    std::cout << garth::suppose_json(*answer, *session).dump(2) << '\n';
  else
    std::cout << garth::suppose_text(*answer, *session);
  return 0;
}

}  // namespace beegarth::cli
