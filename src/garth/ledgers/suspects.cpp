#include "garth/ledgers/suspects.hpp"

#include <algorithm>

namespace beegarth::garth {
namespace {

using entries::Entry;

class SuspicionFollower {
 public:
  explicit SuspicionFollower(const Notifiable& notifiable) : notifiable_(notifiable) {}

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
    std::vector<SuspectSign> signs;
    const ColonyId colony = entries::colony_of(entry.payload);
    const SiteId site = entries::site_of(entry.payload);
    for (std::string& words : notifiable_.signs_in(entry.payload, country_at(colony, site)))
      signs.push_back({std::move(words), entry.happened, entry.id, {}});
    if (signs.empty()) return;
    // A report is of what is suspect already, or else of the colony it names, or of all that stand there.
    const bool report = std::holds_alternative<entries::Reported>(entry.payload);
    const bool told_already =
        report && (colony.empty() ? suspects_.at(site) : suspects_.at(colony)) != nullptr;
    if (told_already) return;
    if (!colony.empty()) return begin(colony, entry.happened, signs);
    const auto homes = hive_of_;
    for (const auto& [there, hive] : homes) {
      const auto at = site_of_.find(hive);
      if (at != site_of_.end() && at->second == site) begin(there, entry.happened, signs);
    }
  }

  std::string country_at(const ColonyId& colony, SiteId site) const {
    if (const auto hive = hive_of_.find(colony); hive != hive_of_.end())
      if (const auto at = site_of_.find(hive->second); at != site_of_.end()) site = at->second;
    const auto country = country_of_.find(site);
    return country == country_of_.end() ? usual_country_ : country->second;
  }

  // `signs` are of one entry, or passed on by one colony.
  void begin(const ColonyId& colony, Date day, const std::vector<SuspectSign>& signs) {
    const auto known = suspects_.colonies.find(colony);
    std::vector<SuspectSign> fresh;
    for (const SuspectSign& sign : signs) {
      // Two colonies that were each said to be united into the other would go round for ever.
      const bool there = known != suspects_.colonies.end() &&
                         std::any_of(known->second.signs.begin(), known->second.signs.end(),
                                     [&](const SuspectSign& one) { return one.entry == sign.entry; });
      if (!there) fresh.push_back(sign);
    }
    if (fresh.empty()) return;
    SuspectColony& suspect = suspects_.colonies[colony];
    if (suspect.signs.empty() || day < suspect.since) suspect.since = day;
    suspect.colony = colony;
    suspect.signs.insert(suspect.signs.end(), fresh.begin(), fresh.end());
    stands_there(colony);
    // What is seen later tells also of the colony that took this one in, and of those split off from it.
    if (const auto host = united_into_.find(colony); host != united_into_.end())
      begin(host->second, day, passed_on(fresh, colony));
    if (const auto daughters = split_off_.find(colony); daughters != split_off_.end()) {
      const auto all = daughters->second;
      for (const ColonyId& daughter : all) begin(daughter, day, passed_on(fresh, colony));
    }
  }
  std::vector<SuspectSign> passed_on(std::vector<SuspectSign> signs, const ColonyId& from) const {
    for (SuspectSign& sign : signs) {
      if (sign.seen_in.empty()) sign.seen_in = name_of(from);
    }
    return signs;
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
    begin(into, entry.happened, passed_on(source->second.signs, from));
  }
  std::string name_of(const ColonyId& colony) const {
    const auto name = names_.find(colony);
    return name == names_.end() ? colony.text() : name->second;
  }
  void settle(const ColonyId& colony, const HiveId& hive) {
    hive_of_[colony] = hive;
    stands_there(colony);
  }

  void take(const Entry&, const entries::Site& site) {
    country_of_.erase(site.site);
    if (site.country) country_of_[site.site] = *site.country;
  }
  void take(const Entry&, const entries::Setting& setting) {
    if (setting.name == "country") usual_country_ = setting.value;
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
    split_off_[split.colony].insert(split.into);
  }
  void take(const Entry& entry, const entries::Unite& unite) {
    pass_on(entry, unite.from, unite.colony);
    hive_of_.erase(unite.from);
    if (unite.from != unite.colony) united_into_[unite.from] = unite.colony;
  }
  void take(const Entry&, const entries::Cleared& cleared) {
    suspects_.colonies.erase(cleared.colony);
    // Whatever it had from its mother colony, the inspector has looked at.
    for (auto& [mother, daughters] : split_off_) daughters.erase(cleared.colony);
  }
  template <class Other>
  void take(const Entry&, const Other&) {}

  const Notifiable& notifiable_;
  Suspects suspects_;
  std::string usual_country_ = "general";
  std::map<SiteId, std::string> country_of_;
  std::map<ColonyId, HiveId> hive_of_;
  std::map<HiveId, SiteId> site_of_;
  std::map<ColonyId, std::string> names_;
  std::map<ColonyId, ColonyId> united_into_;
  std::map<ColonyId, std::set<ColonyId>> split_off_;
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

Suspects suspects_on(std::span<const entries::Entry> standing, Date day, const Notifiable& notifiable) {
  return SuspicionFollower(notifiable).take_all(standing, day);
}

}  // namespace beegarth::garth
