#include "garth/seen_health.hpp"

#include <array>
#include <string_view>

namespace beegarth::garth {
namespace {

// The kinds in which a suspicion begins, goes along or ends (ledgers/suspects), and quarantines.
constexpr auto kinds_of_health = std::to_array<std::string_view>(
    {"hive", "colony_began", "colony_moved", "transfer", "split", "unite", "inspection", "sign",
     "dead_colony", "sample", "reported", "cleared", "quarantine"});

}  // namespace

Expected<SeenHealth> seen_health(const Outline& outline) {
  const auto entries = outline.book.entries_of(kinds_of_health);
  if (!entries) return entries.problem();
  const auto standing = book::standing_entries(*entries, outline.today, outline.known_at);
  SeenHealth health{suspects_on(standing, outline.today), {}};
  for (const auto& entry : standing) {
    const auto* said = std::get_if<entries::Quarantine>(&entry.payload);
    if (said == nullptr) continue;
    health.quarantined_until.erase(said->colony);
    if (said->until && *said->until >= outline.today)
      health.quarantined_until.emplace(said->colony, *said->until);
  }
  return health;
}

std::string suspicion_text(const SuspectColony* suspect) {
  if (suspect == nullptr) return "";
  std::string text = "suspect since " + suspect->since.iso();
  for (std::size_t i = 0; i < suspect->signs.size(); ++i)
    text += (i == 0 ? ": " : ", ") + suspect->signs[i].text();
  return text;
}

}  // namespace beegarth::garth
