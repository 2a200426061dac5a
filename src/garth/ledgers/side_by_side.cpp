#include "garth/ledgers/side_by_side.hpp"

#include <vector>

namespace beegarth::garth {

using entries::Entry;

FirstSaid first_said(std::span<const Entry> all) {
  std::map<EntryId, EntryId> corrects;
  for (const Entry& entry : all) {
    if (entry.supersedes) corrects.emplace(entry.id, *entry.supersedes);
  }
  FirstSaid first;
  for (const auto& [id, corrected] : corrects) {
    EntryId at = corrected;
    // A damaged book could go in circles: no line is longer than there are corrections.
    for (std::size_t steps = 0; steps < corrects.size() && corrects.contains(at); ++steps)
      at = corrects.at(at);
    first.emplace(id, at);
  }
  return first;
}

std::map<EntryId, EntryId> outdone_harvests(std::span<const Entry> standing, const FirstSaid& first) {
  std::map<EntryId, std::vector<const Entry*>> sides;
  for (const Entry& entry : standing) {
    const auto line = first.find(entry.id);
    if (line != first.end() && std::holds_alternative<entries::Harvest>(entry.payload))
      sides[line->second].push_back(&entry);
  }
  const auto kg = [](const Entry* entry) { return std::get<entries::Harvest>(entry->payload).kg; };
  std::map<EntryId, EntryId> outdone;
  for (const auto& [line, harvests] : sides) {
    const Entry* smallest = harvests.front();
    for (const Entry* one : harvests) {
      if (kg(one) < kg(smallest)) smallest = one;
    }
    for (const Entry* one : harvests) {
      if (one != smallest) outdone.emplace(one->id, smallest->id);
    }
  }
  return outdone;
}

}  // namespace beegarth::garth
