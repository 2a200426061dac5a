#include "garth/beliefs/suppose.hpp"
#include "garth/desk/desk.hpp"

namespace beegarth::garth {

Expected<nlohmann::json> Desk::suppose(std::string_view colony, const Supposing& supposing) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  const auto answer =
      suppose_in(session_, {.colony = std::string(colony), .ways = supposing.ways, .until = supposing.until});
  if (answer) return suppose_json(*answer, session_);
  Problem problem = answer.problem();
  if (problem.where == "--until")
    problem.where = "until";
  else if (problem.where == "WAY")
    problem.where = "ways";
  else if (problem.where == colony)
    problem.where.clear();
  return problem;
}

}  // namespace beegarth::garth
