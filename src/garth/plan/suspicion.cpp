#include "garth/plan/suspicion.hpp"

#include "garth/plan/status.hpp"

namespace beegarth::garth {

void add_suspects_left_behind(const Session& session, work::NeedsInput& input) {
  for (const auto& [id, colony] : session.state.colonies) {
    const bool left_behind = colony.ended && colony.ended->how != entries::Ending::united;
    if (!left_behind || session.suspects.at(id) == nullptr) continue;
    auto status = status_of(session, id, colony);
    if (session.state.sites.contains(status.site)) input.colonies.push_back(std::move(status));
  }
}

}  // namespace beegarth::garth
