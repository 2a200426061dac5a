// Strong types for what crosses a border: a number with its unit, an id with its kind.
#pragma once

#include <compare>
#include <string>
#include <utility>

namespace beegarth {

// A finite number in one fixed SI-based unit. Celsius and Kilograms cannot be mixed up.
template <class Unit>
struct Quantity {
  double value = 0;
  friend auto operator<=>(const Quantity&, const Quantity&) = default;
};

using Celsius = Quantity<struct CelsiusUnit>;
using Degrees = Quantity<struct DegreesUnit>;  // of arc; azimuth and facing clockwise from true north
using Metres = Quantity<struct MetresUnit>;
using Hectopascals = Quantity<struct HectopascalsUnit>;

// A stable key chosen once for a thing; its shown name may change. Never empty for a thing that exists.
template <class Thing>
class Id {
 public:
  Id() = default;
  explicit Id(std::string text) : text_(std::move(text)) {}
  const std::string& text() const { return text_; }
  bool empty() const { return text_.empty(); }
  friend auto operator<=>(const Id&, const Id&) = default;

 private:
  std::string text_;
};

using SiteId = Id<struct SiteThing>;
using HiveId = Id<struct HiveThing>;
using ColonyId = Id<struct ColonyThing>;
using QueenId = Id<struct QueenThing>;
using PartId = Id<struct PartThing>;
using CombsId = Id<struct CombsThing>;  // a batch of combs
using LotId = Id<struct LotThing>;      // of honey
using PatchId = Id<struct PatchThing>;  // of ground
using ObjectId = Id<struct ObjectThing>;
using EntryId = Id<struct EntryThing>;  // UUIDv7 text, time-ordered

}  // namespace beegarth
