// The fields of the kinds in kinds/places.hpp: sites, land, hives and stands. See fields.hpp.
#pragma once

#include "entries/fields/limits.hpp"
#include "entries/fields/words.hpp"
#include "entries/kinds/places.hpp"

namespace beegarth::entries {

// clang-format off
BEEGARTH_WORDS(HiveForm, "upright", "horizontal");
BEEGARTH_WORDS(CombsHang, "frames", "bars", "fixed");
BEEGARTH_WORDS(Tenure, "owned", "rented", "lent", "shared");
BEEGARTH_WORDS(GroundThing, "tree", "hedge", "fence", "wall", "building", "water", "path", "gate", "bank", "wood", "ditch", "other");

template <class V, class P> void fields(V& v, P& p, const Site*) {
  v.id("site", p.site, true); v.text("name", p.name, true);
  v.number("latitude_deg", p.latitude_deg, limits::latitude); v.number("longitude_deg", p.longitude_deg, limits::longitude);
  v.number("elevation_m", p.elevation_m, limits::elevation); v.number("utc_offset_h", p.utc_offset_h, limits::offset);
  v.text("grid_reference", p.grid_reference); v.text("access", p.access); v.flag("neighbours", p.neighbours);
  v.flag("floods", p.floods); v.flag("frost_hollow", p.frost_hollow); v.text("country", p.country); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const SiteClosed*) { v.id("site", p.site, true); v.text("reason", p.reason); }
template <class V, class P> void fields(V& v, P& p, const Travel*) {
  v.text("from", p.from, true); v.text("to", p.to, true); v.number("minutes", p.minutes, limits::minutes); v.number("km", p.km, limits::km);
}
template <class V, class P> void fields(V& v, P& p, const Hive*) {
  v.id("hive", p.hive, true); v.text("name", p.name, true); v.id("site", p.site, true); v.text("stand", p.stand);
  v.count("place", p.place, limits::place); v.choice("form", p.form); v.text("type", p.type, true);
  v.count("brood_combs", p.brood_combs, limits::combs); v.count("super_combs", p.super_combs, limits::combs);
  v.count("undrawn_combs", p.undrawn_combs, limits::combs); v.count("brood_combs_max", p.brood_combs_max, limits::combs);
  v.count("super_combs_max", p.super_combs_max, limits::combs);
  v.number("worker_cells_per_comb", p.worker_cells_per_comb, limits::cells_per_comb);
  v.number("honey_kg_per_comb", p.honey_kg_per_comb, limits::kg_per_comb);
  v.number("bees_per_seam", p.bees_per_seam, limits::bees_per_seam);
  v.number("conductance_W_K", p.conductance_W_K, limits::conductance);
  v.flag("mesh_floor", p.mesh_floor); v.flag("sheltered", p.sheltered); v.flag("can_board", p.can_board);
  v.flag("can_heft", p.can_heft); v.flag("can_super", p.can_super); v.flag("can_see_seams", p.can_see_seams);
  v.flag("two_colonies", p.two_colonies); v.choice("combs_hang", p.combs_hang);
  v.number("comb_length_mm", p.comb_length_mm, limits::comb_mm); v.number("comb_depth_mm", p.comb_depth_mm, limits::comb_mm);
}
template <class V, class P> void fields(V& v, P& p, const Land*) {
  v.id("site", p.site, true); v.choice("tenure", p.tenure); v.text("owner", p.owner); v.text("gate", p.gate);
  v.number("rent_per_year", p.rent_per_year, limits::money); v.text("currency", p.currency); v.date("agreed_until", p.agreed_until);
  v.text("insurance", p.insurance); v.date("insured_until", p.insured_until); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const GroundObject*) {
  v.id("object", p.object, true); v.id("site", p.site, true); v.text("name", p.name, true); v.choice("what", p.what);
  v.number("east_m", p.east_m, limits::metres); v.number("north_m", p.north_m, limits::metres); v.number("length_m", p.length_m, limits::size);
  v.number("width_m", p.width_m, limits::size); v.number("height_m", p.height_m, limits::size); v.count("planted_year", p.planted_year, limits::planted);
  v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Stand*) {
  v.text("stand", p.stand, true); v.id("site", p.site, true); v.count("places", p.places, limits::place);
  v.number("height_cm", p.height_cm, limits::stand_cm); v.number("facing_deg", p.facing_deg, limits::azimuth); v.text("remark", p.remark);
}
// clang-format on

}  // namespace beegarth::entries
