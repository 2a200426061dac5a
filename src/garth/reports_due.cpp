#include "garth/reports_due.hpp"

#include <algorithm>
#include <map>

#include "garth/ledgers/notifiable.hpp"
#include "garth/tables/countries.hpp"

namespace beegarth::garth {
namespace {

using duty::Subject;
using entries::Entry;

// What was seen at one site, and what of it was told.
struct SeenAt {
  duty::Suspicion suspicion;
  std::vector<std::pair<std::string, EntryId>> signs;  // by the sign; a count of mites is "mites"
};

class SightingsBySite {
 public:
  SightingsBySite(const book::State& state, const Notifiable& notifiable)
      : state_(state), notifiable_(notifiable) {}

  std::map<SiteId, SeenAt> gather(std::span<const Entry> standing) {
    for (const Entry& entry : standing)
      std::visit([&](const auto& said) { take(entry, said); }, entry.payload);
    return std::move(seen_);
  }

 private:
  SeenAt* at(const ColonyId& id) {
    const auto colony = state_.colonies.find(id);
    if (colony == state_.colonies.end()) return nullptr;
    const auto hive = state_.hives.find(colony->second.hive);
    return hive == state_.hives.end() ? nullptr : &seen_[hive->second.site];
  }
  void see(const Entry& entry, const ColonyId& colony, const std::vector<std::string>& signs) {
    SeenAt* where = signs.empty() ? nullptr : at(colony);
    if (where == nullptr) return;
    for (const std::string& sign : signs) {
      where->suspicion.signs.push_back(sign);
      where->signs.emplace_back(sign, entry.id);
    }
    where->suspicion.date = std::max(where->suspicion.date.value_or(entry.happened), entry.happened);
  }
  void take(const Entry& entry, const entries::Inspection& look) { see(entry, look.colony, look.signs); }
  void take(const Entry& entry, const entries::Sign& sign) {
    if (sign.how_much != entries::Level::none) see(entry, sign.colony, sign.signs);
  }
  void take(const Entry& entry, const entries::MiteCount& count) {
    SeenAt* where = count.mites > 0 ? at(count.colony) : nullptr;
    if (where == nullptr) return;
    if (where->suspicion.subjects.empty()) where->suspicion.subjects.push_back(Subject::varroa);
    where->signs.emplace_back("mites", entry.id);
    where->suspicion.date = std::max(where->suspicion.date.value_or(entry.happened), entry.happened);
  }
  void take(const Entry&, const entries::Reported& told) {
    for (const Subject thing : notifiable_.things_named(told.what))
      seen_[told.site].suspicion.reported_earlier.push_back(thing);
  }
  template <class Other>
  void take(const Entry&, const Other&) {}

  const book::State& state_;
  const Notifiable& notifiable_;
  std::map<SiteId, SeenAt> seen_;
};

const FactTable& table_at(const book::State& state, const Tables& tables, const SiteId& site) {
  std::string country = "general";
  if (const auto usual = state.settings.find("country"); usual != state.settings.end())
    country = usual->second;
  const auto place = state.sites.find(site);
  if (place != state.sites.end() && place->second.country) country = *place->second.country;
  return tables[duty_table_of(country)];
}

// The last entry in which it was seen: one is enough to look at.
std::vector<EntryId> seen_in(const SeenAt& seen, const duty::Report& report) {
  std::vector<EntryId> entries;
  for (const auto& [sign, entry] : seen.signs) {
    const bool of_it = std::find(report.signs.begin(), report.signs.end(), sign) != report.signs.end() ||
                       (sign == "mites" && report.subject == Subject::varroa);
    if (of_it) entries = {entry};
  }
  return entries;
}

Outcome fill(work::SiteStatus& site, const SeenAt* seen, const FactTable& country, const FactTable& signs) {
  const auto authority = country.words("authority"), law = country.words("american_foulbrood_law");
  if (!authority) return authority.problem();
  if (!law) return law.problem();
  site.authority = *authority;
  site.law = *law + ": a suspicion is told at once, and nothing leaves";
  if (seen == nullptr) return Done{};
  const auto told = duty::notification_of(seen->suspicion, country, signs);
  if (!told) return told.problem();
  for (const duty::Report& report : told->reports) {
    // What is told at once is the call to the inspector.
    if (report.duty != duty::Duty::report || report.due == 0) continue;
    site.reports.push_back({std::string(duty::subject_names[static_cast<std::size_t>(report.subject)]),
                            report.why, report.law, report.source, seen_in(*seen, report)});
  }
  return Done{};
}

}  // namespace

Outcome take_reports_due(std::span<const Entry> standing, const book::State& state, const Tables& tables,
                         work::NeedsInput& input) {
  const auto notifiable = Notifiable::from(tables);
  if (!notifiable) return notifiable.problem();
  const auto seen = SightingsBySite(state, *notifiable).gather(standing);
  for (work::SiteStatus& site : input.sites) {
    const auto there = seen.find(site.site);
    if (Outcome filled = fill(site, there == seen.end() ? nullptr : &there->second,
                              table_at(state, tables, site.site), tables["duty_signs"]);
        !filled)
      return filled;
  }
  return Done{};
}

}  // namespace beegarth::garth
