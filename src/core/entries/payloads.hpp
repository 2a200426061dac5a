// What can be said in the book: one struct per kind of entry, by subject in kinds/. The fields' names, units
// and limits are told once, in fields.hpp, and everything else follows from there.
#pragma once

#include <variant>

#include "entries/kinds/colonies.hpp"
#include "entries/kinds/deeds.hpp"
#include "entries/kinds/kit.hpp"
#include "entries/kinds/land.hpp"
#include "entries/kinds/looks.hpp"
#include "entries/kinds/places.hpp"
#include "entries/kinds/produce.hpp"
#include "entries/kinds/rest.hpp"
#include "entries/kinds/weather.hpp"

namespace beegarth::entries {

using AnyKind =
    std::variant<Site, SiteClosed, Travel, Hive, ColonyBegan, ColonyMoved, ColonyEnded, Queen, Inspection,
                 MiteCount, Weight, Feed, Treatment, Room, Swarmed, Split, Unite, Harvest, NeedAnswered,
                 Weather, Normals, Forage, WorkingHours, Kit, Setting, Note, TableOverride, Removed, Cleared,
                 Land, GroundObject, Stand, QueenBegan, QueenMated, Score, Quarantine, StockAim, Sign, Sample,
                 DeadColony, TreatmentEnded, Transfer, Urgent, Extraction, Lot, Jars, Purchase, Sale,
                 MedicineDisposed, Part, PartNow, Assembled, Combs, CombsMoved, Wax, BuildStep, Patch,
                 Planted, PlantCare, Bloom, Cut, FlowerWatch, Nest, Reported, KeeperRule, Comparison, Photo>;

// Any of them. A type of its own, copied and destroyed in one file: each of these is some seventy functions,
// and every file that holds an entry would compile them again.
class Payload : public AnyKind {
 public:
  using AnyKind::AnyKind;
  Payload();
  Payload(const Payload&);
  Payload(Payload&&) noexcept;
  Payload& operator=(const Payload&);
  Payload& operator=(Payload&&) noexcept;
  ~Payload();
};

}  // namespace beegarth::entries
