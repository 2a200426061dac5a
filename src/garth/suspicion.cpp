#include "garth/suspicion.hpp"

#include <algorithm>
#include <map>

#include "garth/believe.hpp"
#include "garth/status.hpp"

namespace beegarth::garth {
namespace {

using Statuses = std::map<ColonyId, work::ColonyStatus>;

bool cleared_since(const book::ColonyState& colony, Date day) {
  return std::any_of(colony.history.begin(), colony.history.end(), [&](const entries::Entry& entry) {
    return std::holds_alternative<entries::Cleared>(entry.payload) && entry.happened >= day;
  });
}

void infect(const Session& session, Statuses& statuses, const ColonyId& from, const ColonyId& into,
            Date day) {
  const auto source = statuses.find(from);
  const auto target = statuses.find(into);
  if (source == statuses.end() || target == statuses.end() || !source->second.suspect) return;
  if (cleared_since(session.state.colonies.at(into), day)) return;
  target->second.suspect = true;
  auto& signs = target->second.signs;
  for (auto sign : source->second.signs) {
    const std::string name = " in " + source->second.name;
    if (sign.words.find(" in ") == std::string::npos) sign.words += name;
    const bool known = std::any_of(signs.begin(), signs.end(), [&](const auto& one) {
      return one.words == sign.words && one.seen.entry == sign.seen.entry;
    });
    if (!known) signs.push_back(sign);
  }
}

}  // namespace

void pass_on_suspicion(const Session& session, work::NeedsInput& input) {
  Statuses statuses;
  for (const auto& [id, colony] : session.state.colonies)
    statuses.emplace(id, status_of(session, id, colony));
  for (const entries::Entry& entry : session.standing) {
    if (entry.happened > session.today) continue;
    if (const auto* split = std::get_if<entries::Split>(&entry.payload))
      infect(session, statuses, split->colony, split->into, entry.happened);
    if (const auto* unite = std::get_if<entries::Unite>(&entry.payload))
      infect(session, statuses, unite->from, unite->colony, entry.happened);
  }
  for (auto& colony : input.colonies) {
    const auto& status = statuses.at(colony.colony);
    colony.suspect = status.suspect;
    colony.signs = status.signs;
  }
  for (const auto& [id, colony] : session.state.colonies) {
    const bool left_behind = colony.ended && colony.ended->how != entries::Ending::united;
    const auto& status = statuses.at(id);
    if (left_behind && status.suspect && session.state.sites.contains(status.site))
      input.colonies.push_back(status);
  }
}

}  // namespace beegarth::garth
