// Moving a colony into a hive of another pattern, as far as the book tells of both hives.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "garth/session.hpp"
#include "work/transfers.hpp"

namespace beegarth::garth {

// Nothing where the hive does not say how its combs hang, how long and how deep they are.
std::optional<work::CombHome> comb_home_of(const entries::Hive& hive);

struct TransferWays {
  std::string colony, from, into;  // names
  std::string lives_there;         // the colony that is in the hive now; empty: none
  std::vector<work::TransferWayTold> ways;
};
// The six ways on the session's today, by what was last seen in the colony. A Problem where a hive does not
// say enough of its combs, or where one of them is suspect.
Expected<TransferWays> transfer_ways_of(const Session& session, std::string_view colony,
                                        std::string_view into);

nlohmann::json transfer_ways_json(const std::vector<work::TransferWayTold>& ways);
nlohmann::json transfer_ways_json(const TransferWays& told);
std::string transfer_ways_text(const TransferWays& told);

}  // namespace beegarth::garth
