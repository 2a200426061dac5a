// The fields of the kinds in kinds/kit.hpp: kit, combs and building. See fields.hpp.
#pragma once

#include "entries/fields/limits.hpp"
#include "entries/fields/words.hpp"
#include "entries/kinds/kit.hpp"

namespace beegarth::entries {

// clang-format off
BEEGARTH_WORDS(PartKind, "floor", "brood_body", "super", "crown_board", "roof", "frames", "bars", "excluder", "feeder", "follower", "stand", "nucleus_box", "bait_box", "whole_hive", "clothing", "tool", "other");
BEEGARTH_WORDS(PartOrigin, "own_build", "bought_new", "bought_used", "inherited", "found", "unknown");
BEEGARTH_WORDS(PartState, "suspect", "kept_out", "scorched", "dipped", "sent_away", "clean", "usable", "worn_out", "burnt");
BEEGARTH_WORDS(CombUse, "brood", "honey");
BEEGARTH_WORDS(CombOrigin, "own", "bought_new", "bought_used", "inherited", "found", "with_bees", "unknown");
BEEGARTH_WORDS(CombsGo, "on_hive", "into_store", "melted", "burnt");

template <class V, class P> void fields(V& v, P& p, const Kit*) { v.text("what", p.what, true); v.count("count", p.count, limits::kit); v.text("where", p.where); }
template <class V, class P> void fields(V& v, P& p, const Part*) {
  v.id("part", p.part, true); v.text("name", p.name, true); v.choice("what", p.what); v.choice("origin", p.origin); v.text("pattern", p.pattern);
  v.count("count", p.count, limits::kit); v.flag("unknown_paint", p.unknown_paint); v.flag("asbestos", p.asbestos); v.flag("old_comb", p.old_comb);
  v.id("site", p.site); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const PartNow*) { v.id("part", p.part, true); v.choice("state", p.state); v.text("remark", p.remark); }
template <class V, class P> void fields(V& v, P& p, const Assembled*) { v.id("hive", p.hive, true); v.ids("parts", p.parts); v.text("remark", p.remark); }
template <class V, class P> void fields(V& v, P& p, const Combs*) {
  v.id("combs", p.combs, true); v.text("name", p.name, true); v.count("count", p.count, limits::combs); v.choice("use", p.use);
  v.count("drawn_year", p.drawn_year, limits::year); v.id("parted_from", p.parted_from); v.id("colony", p.colony); v.flag("for_people", p.for_people); v.text("store", p.store); v.text("remark", p.remark);
  v.choice("origin", p.origin);
}
template <class V, class P> void fields(V& v, P& p, const CombsMoved*) {
  v.id("combs", p.combs, true); v.choice("to", p.to); v.id("colony", p.colony); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Wax*) { v.number("kg", p.kg, limits::wax_kg); v.count("sheets", p.sheets, limits::kit); v.text("remark", p.remark); }
template <class V, class P> void fields(V& v, P& p, const BuildStep*) {
  v.text("build", p.build, true); v.text("step", p.step, true); v.number("hours", p.hours, limits::build_hours); v.flag("finished", p.finished); v.text("remark", p.remark);
}
// clang-format on

}  // namespace beegarth::entries
