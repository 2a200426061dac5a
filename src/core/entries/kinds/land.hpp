// Plants, bloom and cutting, and the wild pollinators that share the ground.
#pragma once

#include "entries/kinds/values.hpp"

namespace beegarth::entries {

struct Patch {
  PatchId patch;
  SiteId site;
  std::string name;
  Text what;
  Number area_m2;
  Flag left_wild;
  Text remark;
};
struct Planted {
  SiteId site;
  std::optional<PatchId> patch;
  std::string plant;
  int count = 1;
  Text remark;
};
enum class PlantDeed { watered, guarded, mulched, gaps_filled, weeded, cut_back };
struct PlantCare {
  SiteId site;
  std::optional<PatchId> patch;
  std::string plant;
  PlantDeed deed = PlantDeed::watered;
  Count count;
  Text remark;
};
enum class BloomStage { first, full, over };
struct Bloom {
  SiteId site;
  std::optional<PatchId> patch;
  std::string plant;
  BloomStage stage = BloomStage::first;
};
struct Cut {
  SiteId site;
  std::optional<PatchId> patch;
  std::string what;
  Text how;
};
struct FlowerWatch {  // all visitors to a marked patch of flowers in a measured time
  SiteId site;
  std::optional<PatchId> patch;
  std::string plant;
  double minutes = 10;
  Number area_m2;
  Count honey_bees;
  Count bumblebees;
  Count solitary_bees;
  Count wasps;
  Count hoverflies;
  Count other_flies;
  Count butterflies;
  Count beetles;
  Count others;
};
enum class NestOf { bumblebee, mining_bee, cavity_bee, wasp, hornet, bird, hedgehog, other };
struct Nest {
  SiteId site;
  std::optional<PatchId> patch;
  NestOf of = NestOf::other;
  std::string place;
  Flag gone;  // looked again: empty
  Text remark;
};

}  // namespace beegarth::entries
