// One entry of the book: who said what happened when.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "base/units.hpp"
#include "entries/payloads.hpp"

namespace beegarth::entries {

// Hybrid logical clock: never runs backwards on one device, whatever its wall clock does.
struct Written {
  std::int64_t utc_ms = 0;
  std::uint32_t counter = 0;
  friend auto operator<=>(const Written&, const Written&) = default;
};

struct Entry {
  EntryId id;
  Date happened;                        // civil date at the site
  std::optional<double> happened_hour;  // local hour where it was said
  Written written;
  std::string who;
  std::string device;
  std::optional<EntryId> supersedes;  // the entry that this one corrects
  Payload payload;
};

// "inspection", "mite_count", ...: the name of the payload's kind in files and commands.
std::string_view kind_name(const Payload& payload);
std::optional<Payload> empty_payload(std::string_view kind);
inline constexpr std::size_t kind_count = std::variant_size_v<AnyKind>;
std::string_view kind_name_at(std::size_t index);

// The colony, site or hive that the entry is about; empty where there is none.
ColonyId colony_of(const Payload& payload);
SiteId site_of(const Payload& payload);
HiveId hive_of(const Payload& payload);

// Every field within its limits and every rule between fields kept; the problem's `where` names the field.
Outcome validate(const Payload& payload);

}  // namespace beegarth::entries
