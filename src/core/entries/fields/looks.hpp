// The fields of the kinds in kinds/looks.hpp: what was seen. See fields.hpp.
#pragma once

#include "entries/fields/limits.hpp"
#include "entries/fields/words.hpp"
#include "entries/kinds/looks.hpp"

namespace beegarth::entries {

// clang-format off
BEEGARTH_WORDS(Look, "full", "quick", "outside");
BEEGARTH_WORDS(MiteMethod, "board", "sugar_roll", "wash", "brood");
BEEGARTH_WORDS(Weighed, "whole_hive", "stores");
BEEGARTH_WORDS(SampleOf, "bees", "brood", "comb", "honey", "debris", "other");
BEEGARTH_WORDS(Finding, "pending", "nothing_found", "found");

template <class V, class P> void fields(V& v, P& p, const Inspection*) {
  v.id("colony", p.colony, true); v.choice("look", p.look); v.number("seams", p.seams, limits::seams);
  v.number("bees", p.bees, limits::bees); v.number("brood_combs", p.brood_combs, limits::combs);
  v.number("capped_cells", p.capped_cells, limits::cells); v.number("drone_cells", p.drone_cells, limits::cells);
  v.flag("eggs", p.eggs); v.flag("open_brood", p.open_brood); v.flag("capped_brood", p.capped_brood); v.flag("queen", p.queen);
  v.count("cups_with_egg", p.cups_with_egg, limits::queen_cells); v.count("charged_cells", p.charged_cells, limits::queen_cells);
  v.count("sealed_cells", p.sealed_cells, limits::queen_cells); v.number("store_combs", p.store_combs, limits::combs);
  v.number("stores_kg", p.stores_kg, limits::stores); v.choice("pollen", p.pollen); v.number("super_share", p.super_share, limits::share);
  v.flag("drones", p.drones); v.flag("calm", p.calm); v.flag("looked_because_wrong", p.looked_because_wrong);
  v.words("signs", p.signs); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const MiteCount*) {
  v.id("colony", p.colony, true); v.choice("method", p.method); v.count("mites", p.mites, limits::mites);
  v.number("days", p.days, limits::board_days); v.number("board_share", p.board_share, limits::share);
  v.count("bees", p.bees, limits::sample); v.count("cells", p.cells, limits::sample);
  v.flag("at_least", p.at_least);
}
template <class V, class P> void fields(V& v, P& p, const Weight*) { v.id("colony", p.colony, true); v.number("kg", p.kg, limits::whole_kg); v.choice("what", p.what); }
template <class V, class P> void fields(V& v, P& p, const Sign*) {
  v.id("colony", p.colony, true); v.words("signs", p.signs); v.choice("how_much", p.how_much); v.count("cells", p.cells, limits::cells);
  v.number("thread_mm", p.thread_mm, limits::thread); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Sample*) {
  v.id("colony", p.colony, true); v.choice("of", p.of); v.choice("finding", p.finding); v.text("reference", p.reference);
  v.text("sent_to", p.sent_to); v.text("result", p.result);
}
template <class V, class P> void fields(V& v, P& p, const DeadColony*) {
  v.id("colony", p.colony, true); v.choice("dead_bees", p.dead_bees); v.flag("cluster", p.cluster); v.flag("heads_in_cells", p.heads_in_cells);
  v.number("stores_kg", p.stores_kg, limits::stores); v.flag("stores_within_reach", p.stores_within_reach); v.flag("brood", p.brood);
  v.flag("queen_found", p.queen_found); v.flag("queen_cells", p.queen_cells); v.flag("dysentery", p.dysentery); v.flag("damp", p.damp);
  v.flag("ragged_cappings", p.ragged_cappings); v.flag("mite_droppings", p.mite_droppings); v.flag("deformed_wings", p.deformed_wings);
  v.flag("mouse_or_woodpecker", p.mouse_or_woodpecker); v.words("signs", p.signs); v.flag("closed", p.closed); v.text("remark", p.remark);
}
// clang-format on

}  // namespace beegarth::entries
