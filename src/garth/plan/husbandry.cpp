#include "garth/plan/husbandry.hpp"

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
      hand_over_cutting(site);
      site.aims = aims_for(site.site.text());
      if (const auto land = land_.find(site.site); land != land_.end()) hand_over_terms(*land->second, site);
      for (const HappenedAt& one : happenings_)
        if (concerns(one, site.site, input)) site.happenings.push_back(one.happening);
    }
    for (const auto& [name, build] : builds_) input.builds.push_back(build);
    input.aims = aims_for("all");
    for (const Entry* entry : told_)
      for (work::ColonyStatus& colony : input.colonies) take_told(*entry, colony);
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
  struct HappenedAt {
    work::Happening happening;
    std::optional<SiteId> site;
  };
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
  void take(const Entry& entry, const entries::Bloom& bloom) {
    if (bloom.stage == entries::BloomStage::over)
      over_.push_back(&entry);
    else
      std::erase_if(over_, [&](const Entry* one) {
        const auto& before = std::get<entries::Bloom>(one->payload);
        return before.site == bloom.site && before.patch == bloom.patch && before.plant == bloom.plant;
      });
  }
  // Where a patch is said, what flowered there is cut; where none is, the grass.
  void take(const Entry& entry, const entries::Cut& cut) {
    if (!cut.patch) grass_[cut.site] = work::Sighting{entry.happened, entry.id, 0};
    std::erase_if(over_, [&](const Entry* one) {
      const auto& bloom = std::get<entries::Bloom>(one->payload);
      return bloom.site == cut.site && cut.patch && bloom.patch == cut.patch;
    });
  }
  void take(const Entry& entry, const entries::BuildStep& step) {
    if (step.finished.value_or(false)) {
      builds_.erase(step.build);
      return;
    }
    work::BuildBegun& build = builds_[step.build];
    build = {step.build, step.step, {entry.happened, entry.id, 0}, build.hours + step.hours.value_or(0)};
  }
  void take(const Entry&, const entries::Patch& patch) {
    names_[patch.patch] = patch.name;
    if (patch.left_wild.value_or(false))
      left_wild_.insert(patch.patch);
    else
      left_wild_.erase(patch.patch);
  }
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
  void take(const Entry& entry, const entries::Urgent& urgent) {
    happenings_.push_back(
        {{std::string(entries::word_for(urgent.what)), {entry.happened, entry.id, 0}, urgent.colony},
         urgent.site});
  }
  void take(const Entry& entry, const entries::Reported&) { told_.push_back(&entry); }
  void take(const Entry& entry, const entries::Land& land) { land_[land.site] = &entry; }
  void take(const Entry& entry, const entries::Combs& combs) {
    const auto [at, fresh] = combs_.insert_or_assign(combs.combs, Batch{combs, &entry, false});
    if (!fresh || !combs.parted_from) return;
    const auto whole = combs_.find(*combs.parted_from);
    if (whole == combs_.end()) return;
    whole->second.combs.count = std::max(0, whole->second.combs.count - combs.count);
    if (!at->second.combs.drawn_year) at->second.combs.drawn_year = whole->second.combs.drawn_year;
  }
  void take(const Entry&, const entries::CombsMoved& moved) {
    const auto found = combs_.find(moved.combs);
    if (found == combs_.end()) return;
    found->second.combs.colony = moved.to == entries::CombsGo::on_hive ? moved.colony : std::nullopt;
    found->second.gone = moved.to == entries::CombsGo::melted || moved.to == entries::CombsGo::burnt;
  }
  template <class Other>
  void take(const Entry&, const Other&) {}

  // Told of the colony by name, or of its site.
  static void take_told(const Entry& entry, work::ColonyStatus& colony) {
    const auto& told = std::get<entries::Reported>(entry.payload);
    if (told.site != colony.site || (told.colony && *told.colony != colony.colony)) return;
    colony.told_authority = work::ColonyStatus::Told{
        {entry.happened, entry.id, 0}, entry.who, told.to.value_or(""), told.reference.value_or("")};
  }
  static void hand_over_terms(const Entry& entry, work::SiteStatus& site) {
    const auto& land = std::get<entries::Land>(entry.payload);
    if (land.agreed_until)
      site.agreement = work::LandTerm{{*land.agreed_until, entry.id, 0}, land.owner.value_or("")};
    if (land.insured_until)
      site.insurance = work::LandTerm{{*land.insured_until, entry.id, 0}, land.insurance.value_or("")};
  }
  // At the site by name, or where the colony stands now.
  static bool concerns(const HappenedAt& one, const SiteId& site, const work::NeedsInput& input) {
    if (!one.happening.colony) return one.site == site;
    return std::any_of(input.colonies.begin(), input.colonies.end(), [&](const auto& colony) {
      return colony.colony == *one.happening.colony && colony.site == site;
    });
  }

  static work::NestFound nest_found(const Entry& entry) {
    const auto& nest = std::get<entries::Nest>(entry.payload);
    std::string of(entries::word_for(nest.of));
    std::replace(of.begin(), of.end(), '_', ' ');
    return {{entry.happened, entry.id, 0}, of, nest.place};
  }
  void hand_over_cutting(work::SiteStatus& site) const {
    if (const auto cut = grass_.find(site.site); cut != grass_.end()) site.grass_cut = cut->second;
    for (const Entry* found : nests_)
      if (std::get<entries::Nest>(found->payload).site == site.site) site.nests.push_back(nest_found(*found));
    for (const Entry* one : over_) {
      const auto& bloom = std::get<entries::Bloom>(one->payload);
      if (bloom.site != site.site || !bloom.patch || left_wild_.contains(*bloom.patch)) continue;
      const auto name = names_.find(*bloom.patch);
      work::FlowersOver flowers{.plant = bloom.plant,
                                .where = name == names_.end() ? bloom.patch->text() : name->second,
                                .over = {one->happened, one->id, 0},
                                .nest = {}};
      for (const Entry* found : nests_) {
        const auto& nest = std::get<entries::Nest>(found->payload);
        if (nest.site == bloom.site && (!nest.patch || nest.patch == bloom.patch))
          flowers.nest = nest_found(*found);
      }
      site.flowers_over.push_back(std::move(flowers));
    }
  }

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
    const work::NestFound found = nest_found(entry);
    planting.nest = found.seen;
    planting.nest_of = found.of;
    planting.nest_at = found.at;
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
  std::set<PatchId> left_wild_;
  std::vector<const Entry*> over_;          // blooms that are over and not cut
  std::map<SiteId, work::Sighting> grass_;  // the last time that it was cut
  std::map<std::string, work::BuildBegun> builds_;
  std::vector<const Entry*> nests_;                           // found and not gone
  std::map<std::pair<std::string, int>, const Entry*> aims_;  // by site and month; the last word counts
  std::map<CombsId, Batch> combs_;
  std::vector<HappenedAt> happenings_;
  std::vector<const Entry*> told_;       // to the authority
  std::map<SiteId, const Entry*> land_;  // the last word counts
};

// "Long 2 (horizontal)": those in which no stock lives.
std::vector<std::string> empty_hives_at(const book::State& state, const SiteId& site) {
  std::set<HiveId> lived_in;
  for (const auto& [id, colony] : state.colonies)
    if (!colony.ended) lived_in.insert(colony.hive);
  std::vector<std::string> names;
  for (const auto& [id, hive] : state.hives)
    if (hive.site == site && !lived_in.contains(id))
      names.push_back(hive.name + (hive.form == entries::HiveForm::horizontal ? " (horizontal)" : ""));
  return names;
}

}  // namespace

void take_husbandry(std::span<const Entry> standing, const book::State& state, work::NeedsInput& input) {
  Husbandry husbandry;
  for (const Entry& entry : standing) husbandry.tell(entry);
  husbandry.hand_over(input);
  for (work::SiteStatus& site : input.sites) site.empty_hives = empty_hives_at(state, site.site);
}

}  // namespace beegarth::garth
