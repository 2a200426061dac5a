#include "garth/ledgers/suspects.hpp"

#include <algorithm>
#include <array>
#include <string_view>

namespace beegarth::garth {
namespace {

using entries::Entry;

// Foulbroods, small hive beetle, Tropilaelaps (trade facts 5.4).
constexpr auto suspicious = std::to_array<std::string_view>(
    {"sunken_cappings", "perforated_cappings", "greasy_cappings", "ropy_larva", "discoloured_larvae",
     "hive_beetle", "other_brood_mite", "foulbrood_suspected"});

std::vector<std::string> suspicious_among(const std::vector<std::string>& signs) {
  std::vector<std::string> found;
  for (std::string sign : signs) {
    if (std::find(suspicious.begin(), suspicious.end(), sign) == suspicious.end()) continue;
    std::replace(sign.begin(), sign.end(), '_', ' ');
    found.push_back(std::move(sign));
  }
  return found;
}

class SuspicionFollower {
 public:
  Suspects take_all(std::span<const Entry> standing, Date day) {
    for (const Entry& entry : standing) {
      if (entry.happened > day) break;
      begin_where_seen(entry);
      std::visit([&](const auto& said) { take(entry, said); }, entry.payload);
    }
    return std::move(suspects_);
  }

 private:
  void begin_where_seen(const Entry& entry) {
    const auto signs = suspicious_signs(entry.payload);
    const ColonyId colony = entries::colony_of(entry.payload);
    if (!signs.empty() && !colony.empty()) begin(colony, entry.happened, entry.id, signs);
  }
  void begin(const ColonyId& colony, Date day, const EntryId& seen, const std::vector<std::string>& signs) {
    auto [at, fresh] = suspects_.colonies.try_emplace(colony);
    SuspectColony& suspect = at->second;
    if (fresh || day < suspect.since) suspect.since = day;
    // Known already: two colonies that were each said to be united into the other would go round for ever.
    if (std::find(suspect.seen.begin(), suspect.seen.end(), seen) != suspect.seen.end()) return;
    suspect.seen.push_back(seen);
    for (const std::string& sign : signs) {
      if (std::find(suspect.signs.begin(), suspect.signs.end(), sign) == suspect.signs.end())
        suspect.signs.push_back(sign);
    }
    stands_there(colony);
    // A result that comes after its colony was united with another tells of that one too.
    if (const auto host = united_into_.find(colony); host != united_into_.end()) {
      std::vector<std::string> passed;
      passed.reserve(signs.size());
      for (const std::string& sign : signs)
        passed.push_back(sign.find(" in ") == std::string::npos ? sign + " in " + name_of(colony) : sign);
      begin(host->second, day, seen, passed);
    }
  }
  // What a suspect colony touches is suspect with it.
  void stands_there(const ColonyId& colony) {
    const auto suspect = suspects_.colonies.find(colony);
    const auto hive = hive_of_.find(colony);
    if (suspect == suspects_.colonies.end() || hive == hive_of_.end()) return;
    suspect->second.hives.insert(hive->second);
    if (const auto site = site_of_.find(hive->second); site != site_of_.end())
      suspect->second.sites.insert(site->second);
  }
  void pass_on(const Entry& entry, const ColonyId& from, const ColonyId& into) {
    const auto source = suspects_.colonies.find(from);
    if (source == suspects_.colonies.end()) return;
    std::vector<std::string> signs;
    for (const std::string& sign : source->second.signs) {
      const bool told = sign.find(" in ") != std::string::npos;
      signs.push_back(told ? sign : sign + " in " + name_of(from));
    }
    begin(into, entry.happened, source->second.seen.front(), signs);
  }
  std::string name_of(const ColonyId& colony) const {
    const auto name = names_.find(colony);
    return name == names_.end() ? colony.text() : name->second;
  }
  void settle(const ColonyId& colony, const HiveId& hive) {
    hive_of_[colony] = hive;
    stands_there(colony);
  }

  void take(const Entry&, const entries::Hive& hive) {
    site_of_[hive.hive] = hive.site;
    for (const auto& [colony, home] : hive_of_) {
      if (home == hive.hive) stands_there(colony);
    }
  }
  void take(const Entry&, const entries::ColonyBegan& began) {
    names_[began.colony] = began.name;
    settle(began.colony, began.hive);
  }
  void take(const Entry&, const entries::ColonyMoved& moved) { settle(moved.colony, moved.hive); }
  void take(const Entry&, const entries::Transfer& moved) { settle(moved.colony, moved.hive); }
  void take(const Entry& entry, const entries::Split& split) {
    names_[split.into] = split.name;
    settle(split.into, split.hive);
    pass_on(entry, split.colony, split.into);
  }
  void take(const Entry& entry, const entries::Unite& unite) {
    pass_on(entry, unite.from, unite.colony);
    hive_of_.erase(unite.from);
    if (unite.from != unite.colony) united_into_[unite.from] = unite.colony;
  }
  void take(const Entry&, const entries::Cleared& cleared) { suspects_.colonies.erase(cleared.colony); }
  template <class Other>
  void take(const Entry&, const Other&) {}

  Suspects suspects_;
  std::map<ColonyId, HiveId> hive_of_;
  std::map<HiveId, SiteId> site_of_;
  std::map<ColonyId, std::string> names_;
  std::map<ColonyId, ColonyId> united_into_;
};

template <class Wanted, class Set>
const SuspectColony* first_with(const Suspects& suspects, const Wanted& wanted, Set SuspectColony::*set) {
  for (const auto& [colony, suspect] : suspects.colonies) {
    if ((suspect.*set).contains(wanted)) return &suspect;
  }
  return nullptr;
}

}  // namespace

const SuspectColony* Suspects::at(const ColonyId& colony) const {
  const auto found = colonies.find(colony);
  return found == colonies.end() ? nullptr : &found->second;
}
const SuspectColony* Suspects::at(const HiveId& hive) const {
  return first_with(*this, hive, &SuspectColony::hives);
}
const SuspectColony* Suspects::at(const SiteId& site) const {
  return first_with(*this, site, &SuspectColony::sites);
}

std::vector<std::string> suspicious_signs(const entries::Payload& payload) {
  if (const auto* look = std::get_if<entries::Inspection>(&payload)) return suspicious_among(look->signs);
  if (const auto* dead = std::get_if<entries::DeadColony>(&payload)) return suspicious_among(dead->signs);
  if (const auto* sign = std::get_if<entries::Sign>(&payload)) {
    if (sign->how_much == entries::Level::none) return {};
    auto found = suspicious_among(sign->signs);
    if (sign->thread_mm.value_or(0) > 0) found.emplace_back("a thread drawn from a cell");
    return found;
  }
  return {};
}

Suspects suspects_on(std::span<const entries::Entry> standing, Date day) {
  return SuspicionFollower().take_all(standing, day);
}

}  // namespace beegarth::garth
