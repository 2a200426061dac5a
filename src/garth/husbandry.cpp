#include "garth/husbandry.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "entries/fields.hpp"

namespace beegarth::garth {
namespace {

using entries::Entry;

struct OfPlants {
  SiteId site;
  std::optional<PatchId> patch;
  work::Planting planting;
};

class Husbandry {
 public:
  void tell(const Entry& entry) {
    std::visit([&](const auto& payload) { take(entry, payload); }, entry.payload);
  }

  void hand_over(work::NeedsInput& input) const {
    for (work::SiteStatus& site : input.sites) {
      site.plantings = plantings_at(site.site);
      site.aims = aims_for(site.site.text());
    }
    input.aims = aims_for("all");
    for (const auto& [id, batch] : combs_) {
      if (batch.gone) continue;
      if (!batch.combs.colony) {
        input.stored_combs.push_back({batch.told->happened, batch.told->id, double(batch.combs.count)});
        continue;
      }
      if (batch.combs.use != entries::CombUse::brood || !batch.combs.drawn_year) continue;
      for (work::ColonyStatus& colony : input.colonies)
        if (colony.colony == *batch.combs.colony)
          colony.brood_combs.push_back(
              {batch.combs.name, batch.combs.count, *batch.combs.drawn_year, batch.told->id});
    }
  }

 private:
  struct Batch {
    entries::Combs combs;
    const Entry* told = nullptr;
    bool gone = false;
  };

  void take(const Entry& entry, const entries::Planted& planted) {
    plants_.push_back(
        {planted.site,
         planted.patch,
         {.plant = planted.plant, .count = planted.count, .planted = entry.happened, .entry = entry.id}});
  }
  void take(const Entry& entry, const entries::PlantCare& care) {
    for (OfPlants& one : plants_) {
      const bool meant = one.site == care.site && one.planting.plant == care.plant &&
                         (!care.patch || care.patch == one.patch);
      if (!meant) continue;
      using entries::PlantDeed;
      if (care.deed == PlantDeed::watered) one.planting.watered = entry.happened;
      if (care.deed == PlantDeed::guarded) one.planting.guarded = entry.happened;
      if (care.deed == PlantDeed::gaps_filled) one.planting.gaps_filled = entry.happened;
      if (care.deed == PlantDeed::mulched || care.deed == PlantDeed::weeded)
        one.planting.weeded = entry.happened;
    }
  }
  void take(const Entry&, const entries::Patch& patch) { names_[patch.patch] = patch.name; }
  void take(const Entry& entry, const entries::Nest& nest) {
    if (!nest.gone.value_or(false)) {
      nests_.push_back(&entry);
      return;
    }
    std::erase_if(nests_, [&](const Entry* found) {
      const auto& one = std::get<entries::Nest>(found->payload);
      return one.site == nest.site && one.patch == nest.patch && one.of == nest.of && one.place == nest.place;
    });
  }
  void take(const Entry& entry, const entries::StockAim& aim) {
    aims_[{aim.site.text(), aim.month}] = &entry;
  }
  void take(const Entry& entry, const entries::Combs& combs) { combs_[combs.combs] = {combs, &entry, false}; }
  void take(const Entry&, const entries::CombsMoved& moved) {
    const auto found = combs_.find(moved.combs);
    if (found == combs_.end()) return;
    found->second.combs.colony = moved.to == entries::CombsGo::on_hive ? moved.colony : std::nullopt;
    found->second.gone = moved.to == entries::CombsGo::melted || moved.to == entries::CombsGo::burnt;
  }
  template <class Other>
  void take(const Entry&, const Other&) {}

  std::vector<work::Planting> plantings_at(const SiteId& site) const {
    std::vector<work::Planting> here;
    for (const OfPlants& one : plants_) {
      if (one.site != site) continue;
      here.push_back(one.planting);
      if (one.patch) {
        const auto name = names_.find(*one.patch);
        here.back().where = name == names_.end() ? one.patch->text() : name->second;
      }
      for (const Entry* entry : nests_) take_nest(*entry, one, here.back());
    }
    return here;
  }
  // A nest that is tied to no patch, or plants that are, may be anywhere at the site: then the site is one.
  static void take_nest(const Entry& entry, const OfPlants& plants, work::Planting& planting) {
    const auto& nest = std::get<entries::Nest>(entry.payload);
    if (nest.site != plants.site || (nest.patch && plants.patch && nest.patch != plants.patch)) return;
    planting.nest = work::Sighting{entry.happened, entry.id, 0};
    std::string of(entries::word_for(nest.of));
    std::replace(of.begin(), of.end(), '_', ' ');
    planting.nest_of = of;
    planting.nest_at = nest.place;
  }
  std::vector<work::StockAim> aims_for(const std::string& site) const {
    std::vector<work::StockAim> aims;
    for (const auto& [key, entry] : aims_)
      if (key.first == site)
        aims.push_back({key.second, std::get<entries::StockAim>(entry->payload).colonies, entry->id});
    return aims;
  }

  std::vector<OfPlants> plants_;
  std::map<PatchId, std::string> names_;
  std::vector<const Entry*> nests_;                           // found and not gone
  std::map<std::pair<std::string, int>, const Entry*> aims_;  // by site and month; the last word counts
  std::map<CombsId, Batch> combs_;
};

int empty_hives_at(const book::State& state, const SiteId& site) {
  std::set<HiveId> lived_in;
  for (const auto& [id, colony] : state.colonies)
    if (!colony.ended) lived_in.insert(colony.hive);
  return static_cast<int>(std::count_if(state.hives.begin(), state.hives.end(), [&](const auto& one) {
    return one.second.site == site && !lived_in.contains(one.first);
  }));
}

}  // namespace

void take_husbandry(std::span<const Entry> standing, const book::State& state, work::NeedsInput& input) {
  Husbandry husbandry;
  for (const Entry& entry : standing) husbandry.tell(entry);
  husbandry.hand_over(input);
  for (work::SiteStatus& site : input.sites) site.empty_hives = empty_hives_at(state, site.site);
}

}  // namespace beegarth::garth
