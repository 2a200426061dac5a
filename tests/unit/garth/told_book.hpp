// A book in memory, told line by line through the door that every keeper's entry goes through. Everything
// invented.
#pragma once

#include <cstdio>
#include <string>
#include <utility>
#include <vector>

#include "garth/gates/gates.hpp"
#include "garth/keep/keep.hpp"
#include "garth/ledgers/suspects.hpp"

namespace beegarth::garth {

inline Date day_of(int month, int day, int year = 2026) {
  return *Date::from_ymd(year, month, day);
}

class ToldBook {
 public:
  ToldBook() : tables_(*Tables::built_in()) {
    for (const char* site : {"bank", "yard"})
      must(day_of(1, 1),
           entries::Site{.site = SiteId(site), .name = site, .latitude_deg = 51, .longitude_deg = -1});
    for (const char* hive : {"h1", "h2", "h3", "h4"})
      must(day_of(1, 1), entries::Hive{.hive = HiveId(hive),
                                       .name = hive,
                                       .site = SiteId(std::string(hive) == "h4" ? "yard" : "bank"),
                                       .type = "National"});
    must(day_of(1, 2), entries::ColonyBegan{.colony = ColonyId("alder"),
                                            .name = "Alder",
                                            .hive = HiveId("h1"),
                                            .how = entries::Beginning::overwintered});
    must(day_of(1, 2), entries::ColonyBegan{.colony = ColonyId("birch"),
                                            .name = "Birch",
                                            .hive = HiveId("h2"),
                                            .how = entries::Beginning::overwintered});
  }

  // Empty where it was kept; else what stood in the way.
  std::string say(Date happened, entries::Payload payload, std::optional<EntryId> supersedes = std::nullopt) {
    const book::Draft draft{
        .happened = happened, .payload = std::move(payload), .supersedes = std::move(supersedes)};
    if (const Outcome fit = may_be_kept(all_, std::span(&draft, 1), tables_); !fit) return fit.problem().what;
    keep_anyway(draft);
    return {};
  }
  void must(Date happened, entries::Payload payload) {
    if (const std::string why = say(happened, std::move(payload)); !why.empty())
      throw std::runtime_error(why);
  }
  // As an import of another copy of the book would: past the gates.
  void keep_anyway(const book::Draft& draft) {
    const int number = static_cast<int>(all_.size()) + 1;
    char id[40];
    std::snprintf(id, sizeof id, "019e6a2f-0000-7000-8000-%012d", number);
    all_.push_back({EntryId(id),
                    draft.happened,
                    {},
                    {60'000LL * number, 0},
                    "ann",
                    "d-1",
                    draft.supersedes,
                    draft.payload});
  }

  const std::vector<entries::Entry>& all() const { return all_; }
  EntryId last() const { return all_.back().id; }
  std::vector<entries::Entry> standing(Date day) const { return book::standing_entries(all_, day); }
  HoneyLedger honey(Date day) const {
    return honey_on(standing(day), day, *HoneyRules::from(tables_["work"]));
  }

 private:
  Tables tables_;
  std::vector<entries::Entry> all_;
};

// By the tables as they are shipped.
inline const Notifiable& shipped_notifiable() {
  static const Notifiable notifiable = *Notifiable::from(*Tables::built_in());
  return notifiable;
}
inline Suspects suspects_on(std::span<const entries::Entry> standing, Date day) {
  return suspects_on(standing, day, shipped_notifiable());
}
inline std::vector<std::string> suspicious_signs(const entries::Payload& payload) {
  return shipped_notifiable().signs_in(payload);
}

inline const ColonyId alder("alder");
inline const ColonyId birch("birch");
inline const HiveId h3("h3");

inline entries::Sign ropy(const ColonyId& colony) {
  return {.colony = colony, .signs = {"ropy_larva"}, .thread_mm = 25};
}

}  // namespace beegarth::garth
