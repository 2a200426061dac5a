// The ways into a hive of another pattern, for a colony of the book.
#include "garth/plan/transfer_ways.hpp"

#include <iostream>
#include <nlohmann/json.hpp>

#include "cli/call.hpp"

namespace beegarth::cli {

int transfer_ways_command(const Call& call) {
  const auto options = session_options(call, true);
  if (!options) return report(options.problem());
  const auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  const auto told = garth::transfer_ways_of(*session, call.subject, call.into);
  if (!told) return report(told.problem());
  if (call.json)
    std::cout << garth::transfer_ways_json(*told).dump(2) << '\n';
  else
    std::cout << garth::transfer_ways_text(*told);
  return 0;
}

}  // namespace beegarth::cli
