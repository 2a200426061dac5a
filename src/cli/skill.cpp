// The command that holds forecasts against what was then seen.
#include "garth/beliefs/skill.hpp"

#include <iostream>

#include "cli/call.hpp"

namespace beegarth::cli {

int skill_command(const Call& call) {
  if (call.schema) {
    std::cout << garth::skill_schema().dump(2) << '\n';
    return 0;
  }
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  const auto skill = garth::skill_of(*session);
  if (!skill) return report(skill.problem());
  if (call.json)
    std::cout << garth::skill_json(*skill).dump(2) << '\n';
  else
    std::cout << garth::skill_text(*skill);
  return 0;
}

}  // namespace beegarth::cli
