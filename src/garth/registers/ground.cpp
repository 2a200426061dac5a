// The land under the hives, and the wild pollinators that were counted on it.
#include <algorithm>
#include <map>

#include "entries/fields.hpp"
#include "garth/registers/kinds.hpp"

namespace beegarth::garth {

using entries::Entry;

namespace {

// "in 40 days", "ended 12 days ago": an end that is near or past is worth a word.
std::string end_in_words(const std::optional<Date>& end, Date today) {
  if (!end) return {};
  const int days = *end - today;
  if (days < 0) return end->iso() + " (ended " + std::to_string(-days) + " days ago)";
  constexpr int soon_days = 60;
  return end->iso() + (days <= soon_days ? " (in " + std::to_string(days) + " days)" : "");
}

struct Watched {
  int watches = 0;
  double minutes = 0, wild = 0;
  std::string rate() const {
    return short_number(60 * wild / minutes) + " wild visitors an hour in " + std::to_string(watches) +
           (watches == 1 ? " watch" : " watches");
  }
};

int wild_visitors(const entries::FlowerWatch& watch) {
  int wild = 0;
  for (const auto& count : {watch.bumblebees, watch.solitary_bees, watch.wasps, watch.hoverflies,
                            watch.other_flies, watch.butterflies, watch.beetles, watch.others})
    wild += count.value_or(0);
  return wild;
}

}  // namespace

Expected<Register> land_register(const Session& session) {
  Register out;
  out.columns = {{"site", "site", 1.2},
                 {"tenure", "held as", 0.8},
                 {"owner", "owner", 1.2},
                 {"gate", "gate, lock, stock", 1.6},
                 {"rent_per_year", "rent a year", 0.8},
                 {"currency", "currency", 0.7},
                 {"agreed_until", "agreed until", 1.1},
                 {"insurance", "insurance", 1},
                 {"insured_until", "insured until", 1.1},
                 {"remark", "remark", 1.4}};
  std::map<SiteId, const Entry*> last;
  for (const Entry& entry : session.standing)
    if (const auto* land = std::get_if<entries::Land>(&entry.payload)) last[land->site] = &entry;
  for (const auto& [site, entry] : last) {
    const auto& land = std::get<entries::Land>(entry->payload);
    out.rows.push_back(
        {std::nullopt,
         {site_name(session, site), land.tenure ? std::string(entries::word_for(*land.tenure)) : "",
          land.owner.value_or(""), land.gate.value_or(""), short_number(land.rent_per_year, 2),
          land.currency.value_or(""), end_in_words(land.agreed_until, session.today),
          land.insurance.value_or(""), end_in_words(land.insured_until, session.today),
          land.remark.value_or("")},
         {entry->id}});
  }
  return out;
}

Expected<Register> wild_register(const Session& session) {
  Register out;
  out.columns = {{"date", "date"},
                 {"site", "site", 1.3},
                 {"what", "what", 1.5},
                 {"minutes", "minutes", 0.7},
                 {"honey_bees_per_h", "honey bees an hour", 0.9},
                 {"wild_per_h", "wild visitors an hour", 0.9},
                 {"kinds", "kinds of wild visitors", 0.9},
                 {"place", "place", 1.5}};
  std::map<PatchId, entries::Patch> patches;
  for (const Entry& entry : session.standing)
    if (const auto* patch = std::get_if<entries::Patch>(&entry.payload)) patches[patch->patch] = *patch;
  Watched left_wild, elsewhere;
  for (const Entry& entry : session.standing) {
    if (const auto* w = std::get_if<entries::FlowerWatch>(&entry.payload)) {
      const int wild = wild_visitors(*w);
      int kinds = 0;
      for (const auto& count : {w->bumblebees, w->solitary_bees, w->wasps, w->hoverflies, w->other_flies,
                                w->butterflies, w->beetles, w->others}) {
        kinds += count.value_or(0) > 0 ? 1 : 0;
      }
      const auto patch = w->patch ? patches.find(*w->patch) : patches.end();
      const bool is_wild = patch != patches.end() && patch->second.left_wild.value_or(false);
      Watched& where = is_wild ? left_wild : elsewhere;
      ++where.watches;
      where.minutes += w->minutes;
      where.wild += wild;
      const std::string place = patch != patches.end() ? patch->second.name + (is_wild ? ", left wild" : "")
                                : w->patch             ? w->patch->text()
                                                       : "";
      const double per_hour = 60 / w->minutes;
      out.rows.push_back(
          {entry.happened,
           {entry.happened.iso(), site_name(session, w->site), "flower watch: " + w->plant,
            short_number(w->minutes), w->honey_bees ? short_number(*w->honey_bees * per_hour) : "",
            short_number(wild * per_hour), std::to_string(kinds), place},
           {entry.id}});
    } else if (const auto* nest = std::get_if<entries::Nest>(&entry.payload)) {
      out.rows.push_back({entry.happened,
                          {entry.happened.iso(), site_name(session, nest->site),
                           key_in_words(entries::word_for(nest->of)) +
                               (nest->gone.value_or(false) ? " nest: gone" : " nest"),
                           "", "", "", "", nest->place},
                          {entry.id}});
    }
  }
  out.remarks = {"A found nest locks its patch: nothing is cut, dug or burnt there."};
  if (left_wild.watches > 0 && elsewhere.watches > 0)
    out.remarks.push_back("On ground left wild: " + left_wild.rate() + "; elsewhere: " + elsewhere.rate() +
                          ". Compare like plants in like weather before you conclude.");
  return out;
}

}  // namespace beegarth::garth
