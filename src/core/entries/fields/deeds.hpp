// The fields of the kinds in kinds/deeds.hpp: what was done. See fields.hpp.
#pragma once

#include "entries/fields/limits.hpp"
#include "entries/fields/words.hpp"
#include "entries/kinds/deeds.hpp"

namespace beegarth::entries {

// clang-format off
BEEGARTH_WORDS(FeedForm, "syrup", "fondant", "comb", "pollen");
BEEGARTH_WORDS(FeedSource, "sugar", "own_honey", "own_combs", "bought_feed", "honey_of_unknown_origin");
BEEGARTH_WORDS(TreatmentKind, "oxalic_trickle", "oxalic_vapour", "formic", "thymol", "amitraz", "pyrethroid", "hop_acids", "drone_comb_removed", "brood_removed", "other");
BEEGARTH_WORDS(TransferWay, "shaken", "cut_and_tied", "grown_down", "grown_across", "bars_among_frames", "combs_lifted_over");
BEEGARTH_WORDS(Urgency, "swarm_call", "blown_over", "robbing", "spraying", "flood", "theft", "stings", "fire", "other");
BEEGARTH_WORDS(NeedAnswered::Answer, "done", "skipped", "put_off", "rained_off");

template <class V, class P> void fields(V& v, P& p, const Feed*) {
  v.id("colony", p.colony, true); v.number("kg", p.kg, limits::feed_kg); v.number("sugar_pct", p.sugar_pct, limits::pct); v.choice("form", p.form);
  v.choice("source", p.source); v.text("product", p.product);
}
template <class V, class P> void fields(V& v, P& p, const Treatment*) {
  v.id("colony", p.colony, true); v.choice("kind", p.kind); v.number("days", p.days, limits::treatment_days); v.text("product", p.product);
  v.text("batch", p.batch); v.text("amount", p.amount); v.number("withdrawal_days", p.withdrawal_days, limits::days); v.text("supplier", p.supplier);
  v.flag("supers_on", p.supers_on); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Room*) {
  v.id("colony", p.colony, true); v.count("brood_combs", p.brood_combs, limits::comb_change);
  v.count("super_combs", p.super_combs, limits::comb_change); v.count("undrawn", p.undrawn, limits::combs); v.id("combs", p.combs);
}
template <class V, class P> void fields(V& v, P& p, const Swarmed*) { v.id("colony", p.colony, true); v.text("remark", p.remark); }
template <class V, class P> void fields(V& v, P& p, const Split*) {
  v.id("colony", p.colony, true); v.id("into", p.into, true); v.text("name", p.name, true); v.id("hive", p.hive, true);
  v.number("bees_share", p.bees_share, limits::share); v.number("brood_share", p.brood_share, limits::share); v.flag("queen_goes", p.queen_goes);
}
template <class V, class P> void fields(V& v, P& p, const Unite*) { v.id("colony", p.colony, true); v.id("from", p.from, true); }
template <class V, class P> void fields(V& v, P& p, const NeedAnswered*) {
  v.text("need", p.need, true); v.choice("answer", p.answer); v.date("until", p.until); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const TreatmentEnded*) { v.id("colony", p.colony, true); v.choice("kind", p.kind); v.text("remark", p.remark); }
template <class V, class P> void fields(V& v, P& p, const Transfer*) {
  v.id("colony", p.colony, true); v.id("hive", p.hive, true); v.choice("how", p.how); v.number("brood_kept", p.brood_kept, limits::share); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Urgent*) {
  v.choice("what", p.what); v.id("site", p.site); v.id("colony", p.colony); v.text("place", p.place); v.text("remark", p.remark);
}
// clang-format on

}  // namespace beegarth::entries
