#include "garth/plan/crop_waiting.hpp"

#include <map>
#include <set>

namespace beegarth::garth {
namespace {

using entries::Entry;

struct LotsUnderway {
  std::set<LotId> measured;
  std::map<LotId, std::string> names;
  std::map<LotId, std::set<ColonyId>> from;
  std::map<LotId, const Entry*> taken, extracted, unmeasured;

  void take(const Entry& entry) {
    if (const auto* lot = std::get_if<entries::Lot>(&entry.payload)) tell(*lot);
    const auto* harvest = std::get_if<entries::Harvest>(&entry.payload);
    if (harvest != nullptr && harvest->lot && harvest->for_people.value_or(true)) {
      taken.try_emplace(*harvest->lot, &entry);
      from[*harvest->lot].insert(harvest->colony);
      extracted.erase(*harvest->lot);  // more of the same lot came in
    }
    if (const auto* extraction = std::get_if<entries::Extraction>(&entry.payload)) {
      taken.erase(extraction->lot);
      extracted.erase(extraction->lot);
      if (!measured.contains(extraction->lot)) unmeasured[extraction->lot] = &entry;
      if (!extraction->wet_combs_back) extracted[extraction->lot] = &entry;
    }
  }
  void tell(const entries::Lot& lot) {
    names[lot.lot] = lot.name;
    if (!lot.moisture_pct && !lot.refractive_index) return;
    measured.insert(lot.lot);
    unmeasured.erase(lot.lot);
  }
  std::vector<work::LotWaiting> waiting(const std::map<LotId, const Entry*>& lots,
                                        const work::NeedsInput& input) const {
    std::vector<work::LotWaiting> list;
    for (const auto& [id, entry] : lots) {
      const auto name = names.find(id);
      work::LotWaiting lot{
          id, name == names.end() ? id.text() : name->second, {entry->happened, entry->id, 0}, {}};
      if (const auto colonies = from.find(id); colonies != from.end())
        for (const auto& colony : input.colonies)
          if (colonies->second.contains(colony.colony)) lot.sites.insert(colony.site);
      list.push_back(std::move(lot));
    }
    return list;
  }
};

}  // namespace

void take_crop_waiting(std::span<const Entry> standing, work::NeedsInput& input) {
  LotsUnderway lots;
  for (const Entry& entry : standing)
    if (entry.happened <= input.today) lots.take(entry);
  input.to_extract = lots.waiting(lots.taken, input);
  input.to_measure = lots.waiting(lots.unmeasured, input);
  input.wet_combs = lots.waiting(lots.extracted, input);
}

}  // namespace beegarth::garth
