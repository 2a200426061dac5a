#include "garth/ledgers/parts.hpp"

namespace beegarth::garth {
namespace {

using entries::PartState;

bool makes_safe(PartState state) {
  return state == PartState::scorched || state == PartState::dipped || state == PartState::sent_away;
}

void put(PartStanding& part, PartState state, const entries::Entry& entry) {
  if (state == PartState::suspect || state == PartState::kept_out) part.safe = false;
  if (makes_safe(state)) part.safe = true;
  part.state = state;
  part.since = entry.happened;
  part.said = entry.id;
}

}  // namespace

std::vector<std::string> grounds_for_suspicion(const entries::Part& part) {
  using entries::PartOrigin;
  std::vector<std::string> grounds;
  if (part.origin == PartOrigin::inherited) grounds.emplace_back("inherited");
  if (part.origin == PartOrigin::found) grounds.emplace_back("found");
  if (part.origin == PartOrigin::bought_used) grounds.emplace_back("bought used");
  if (part.origin == PartOrigin::unknown) grounds.emplace_back("of unknown origin");
  if (part.unknown_paint.value_or(false)) grounds.emplace_back("of unknown paint or preservative");
  if (part.asbestos.value_or(false)) grounds.emplace_back("of asbestos cement");
  if (part.old_comb.value_or(false)) grounds.emplace_back("with old comb");
  return grounds;
}

std::map<PartId, PartStanding> parts_on(std::span<const entries::Entry> standing, Date day) {
  std::map<PartId, PartStanding> parts;
  for (const auto& entry : standing) {
    if (entry.happened > day) break;
    if (const auto* part = std::get_if<entries::Part>(&entry.payload)) {
      const auto [at, fresh] = parts.try_emplace(part->part);
      at->second.part = *part;
      if (!fresh) {
        // Said again with a past that it did not have: suspect from that day.
        const bool worse = grounds_for_suspicion(*part).size() > at->second.grounds;
        at->second.grounds = grounds_for_suspicion(*part).size();
        if (worse) put(at->second, PartState::suspect, entry);
        continue;
      }
      at->second.grounds = grounds_for_suspicion(*part).size();
      at->second.safe = grounds_for_suspicion(*part).empty();
      put(at->second, at->second.safe ? PartState::usable : PartState::suspect, entry);
    } else if (const auto* now = std::get_if<entries::PartNow>(&entry.payload)) {
      const auto at = parts.find(now->part);
      if (at != parts.end() && why_not_now(at->second, now->state).empty())
        put(at->second, now->state, entry);
    }
  }
  return parts;
}

std::string why_not_now(const PartStanding& part, PartState next) {
  const bool asbestos = part.part.asbestos.value_or(false);
  const auto now = part.state;
  if (now == PartState::burnt) return "it was burnt";
  if (asbestos && next != PartState::kept_out && next != PartState::sent_away && next != PartState::suspect)
    return "asbestos cement is neither heated, cut nor cleaned: keep it out, or have it taken away by those "
           "licensed to";
  const bool back_in_use = next == PartState::clean || next == PartState::usable;
  if (back_in_use && !part.safe) return "suspect kit is scorched, dipped or sent away before it is clean";
  const bool was_in_use = now == PartState::clean || now == PartState::usable || now == PartState::worn_out;
  if (next == PartState::usable && !was_in_use) return "only clean kit becomes usable";
  return {};
}

}  // namespace beegarth::garth
