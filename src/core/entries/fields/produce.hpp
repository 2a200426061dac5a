// The fields of the kinds in kinds/produce.hpp: harvest, lots, buying and selling. See fields.hpp.
#pragma once

#include "entries/fields/limits.hpp"
#include "entries/fields/words.hpp"
#include "entries/kinds/produce.hpp"

namespace beegarth::entries {

// clang-format off
BEEGARTH_WORDS(HoneyKind, "blossom", "heather", "honeydew", "bakers");
BEEGARTH_WORDS(Goods, "bees", "queen", "medicine", "feed", "kit", "honey", "plants", "other");

template <class V, class P> void fields(V& v, P& p, const Harvest*) {
  v.id("colony", p.colony, true); v.number("kg", p.kg, limits::whole_kg); v.count("combs", p.combs, limits::combs); v.id("lot", p.lot);
  v.ids("from", p.from); v.flag("for_people", p.for_people); v.text("cleared", p.cleared); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Extraction*) {
  v.id("lot", p.lot, true); v.text("where", p.where); v.flag("clean", p.clean); v.flag("wet_combs_back", p.wet_combs_back);
  v.number("kg", p.kg, limits::lot_kg); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Lot*) {
  v.id("lot", p.lot, true); v.text("name", p.name, true); v.choice("kind", p.kind); v.number("moisture_pct", p.moisture_pct, limits::moisture);
  v.number("refractive_index", p.refractive_index, limits::index); v.number("temperature_C", p.temperature_C, limits::hot);
  v.date("best_before", p.best_before); v.text("label_name", p.label_name); v.number("plant_share_pct", p.plant_share_pct, limits::pct);
  v.text("store", p.store); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Jars*) {
  v.id("lot", p.lot, true); v.count("jars", p.jars, limits::jars); v.number("net_g", p.net_g, limits::net_g); v.date("best_before", p.best_before); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Purchase*) {
  v.choice("what", p.what); v.text("description", p.description, true); v.text("supplier", p.supplier); v.text("supplier_address", p.supplier_address);
  v.text("amount", p.amount); v.text("batch", p.batch); v.date("expires", p.expires); v.number("price", p.price, limits::money); v.text("currency", p.currency);
}
template <class V, class P> void fields(V& v, P& p, const Sale*) {
  v.choice("what", p.what); v.text("description", p.description, true); v.id("lot", p.lot); v.id("colony", p.colony); v.count("jars", p.jars, limits::jars);
  v.number("kg", p.kg, limits::lot_kg); v.text("buyer", p.buyer); v.number("price", p.price, limits::money); v.text("currency", p.currency);
}
template <class V, class P> void fields(V& v, P& p, const MedicineDisposed*) {
  v.text("product", p.product, true); v.text("batch", p.batch); v.text("amount", p.amount); v.text("how", p.how, true);
}
// clang-format on

}  // namespace beegarth::entries
