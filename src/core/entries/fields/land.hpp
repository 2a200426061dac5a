// The fields of the kinds in kinds/land.hpp: plants and wild pollinators. See fields.hpp.
#pragma once

#include "entries/fields/limits.hpp"
#include "entries/fields/words.hpp"
#include "entries/kinds/land.hpp"

namespace beegarth::entries {

// clang-format off
BEEGARTH_WORDS(PlantDeed, "watered", "guarded", "mulched", "gaps_filled", "weeded", "cut_back");
BEEGARTH_WORDS(BloomStage, "first", "full", "over");
BEEGARTH_WORDS(NestOf, "bumblebee", "mining_bee", "cavity_bee", "wasp", "hornet", "bird", "hedgehog", "other");


template <class V, class P> void fields(V& v, P& p, const Patch*) {
  v.id("patch", p.patch, true); v.id("site", p.site, true); v.text("name", p.name, true); v.text("what", p.what);
  v.number("area_m2", p.area_m2, limits::area); v.flag("left_wild", p.left_wild); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Planted*) {
  v.id("site", p.site, true); v.id("patch", p.patch); v.text("plant", p.plant, true); v.count("count", p.count, limits::plants); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const PlantCare*) {
  v.id("site", p.site, true); v.id("patch", p.patch); v.text("plant", p.plant, true); v.choice("deed", p.deed); v.count("count", p.count, limits::plants);
  v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Bloom*) { v.id("site", p.site, true); v.id("patch", p.patch); v.text("plant", p.plant, true); v.choice("stage", p.stage); }
template <class V, class P> void fields(V& v, P& p, const Cut*) { v.id("site", p.site, true); v.id("patch", p.patch); v.text("what", p.what, true); v.text("how", p.how); }
template <class V, class P> void fields(V& v, P& p, const FlowerWatch*) {
  v.id("site", p.site, true); v.id("patch", p.patch); v.text("plant", p.plant, true); v.number("minutes", p.minutes, limits::watch);
  v.number("area_m2", p.area_m2, limits::area); v.count("honey_bees", p.honey_bees, limits::visitors); v.count("bumblebees", p.bumblebees, limits::visitors);
  v.count("solitary_bees", p.solitary_bees, limits::visitors); v.count("wasps", p.wasps, limits::visitors); v.count("hoverflies", p.hoverflies, limits::visitors);
  v.count("other_flies", p.other_flies, limits::visitors); v.count("butterflies", p.butterflies, limits::visitors); v.count("beetles", p.beetles, limits::visitors);
  v.count("others", p.others, limits::visitors);
}
template <class V, class P> void fields(V& v, P& p, const Nest*) {
  v.id("site", p.site, true); v.id("patch", p.patch); v.choice("of", p.of); v.text("place", p.place, true); v.flag("gone", p.gone); v.text("remark", p.remark);
}
// clang-format on

}  // namespace beegarth::entries
