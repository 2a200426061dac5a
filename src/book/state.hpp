// The state of everything at a date, worked out from the journal: a projection that can be thrown away.
#pragma once

#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "entries/entry.hpp"

namespace beegarth::book {

// The entries that count on `as_of`: superseded and removed ones left out, each correction standing in place
// of what it corrects; nothing that happened after `as_of`. `known_at` leaves out what was written after that
// instant.
std::vector<entries::Entry> standing_entries(std::span<const entries::Entry> all, Date as_of,
                                             std::optional<entries::Written> known_at = std::nullopt);

// What became of one entry.
struct Fate {
  bool counts = true;                 // false: corrected, or taken back
  std::vector<EntryId> corrected_by;  // usually none or one; two where two devices corrected the same
  std::optional<EntryId> removed_by;  // the removal that took it away
};
// Of each of `all`, in the order of `all`, by the same rules.
std::vector<Fate> fates_of(std::span<const entries::Entry> all);

struct ColonyState {
  entries::ColonyBegan began;
  Date began_on;
  EntryId began_entry;
  HiveId hive;  // where it lives now
  std::optional<entries::ColonyEnded> ended;
  std::optional<Date> ended_on;
  std::vector<entries::Entry> history;  // everything about it, oldest first
};

struct State {
  Date as_of;
  std::map<SiteId, entries::Site> sites;     // not the closed ones
  std::map<HiveId, entries::Hive> hives;     // as last said; Room entries stay in the colonies' histories
  std::map<ColonyId, ColonyState> colonies;  // ended ones too
  std::map<std::pair<std::string, std::string>, entries::Travel> travel;  // under both ways
  std::vector<entries::Entry> weather;  // Weather entries in date order, forecasts included
  std::vector<entries::Normals> normals;
  std::vector<entries::Forage> forage;
  std::vector<entries::WorkingHours> hours;
  std::map<std::string, entries::Kit> kit;
  std::map<std::string, std::string> settings;
  std::vector<entries::Entry> answers;  // NeedAnswered
  std::vector<entries::TableOverride> overrides;
  std::optional<Date> first_date;  // of any entry; nullopt in an empty book
};

State state_of(std::span<const entries::Entry> standing, Date as_of);

// What there is, without what was seen of it: the kinds of entries that say it (for Book::entries_of), and
// the state told from them alone. Histories, weather and answers stay empty, and first_date is that of these
// entries.
std::span<const std::string_view> outline_kinds();
State outline_of(std::span<const entries::Entry> standing, Date as_of);

// By key, or by shown name, without regard to case; nullopt where nobody has it. Of several colonies with one
// name the one that has not ended; nullopt where that leaves more than one, because a guess could be the
// wrong hive.
std::optional<ColonyId> find_colony(const State& state, std::string_view key_or_name);
std::optional<SiteId> find_site(const State& state, std::string_view key_or_name);

}  // namespace beegarth::book
