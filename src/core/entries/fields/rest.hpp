// The fields of the kinds in kinds/rest.hpp: settings, rules, notes and entries about entries. See
// fields.hpp.
#pragma once

#include "entries/fields/limits.hpp"
#include "entries/fields/words.hpp"
#include "entries/kinds/rest.hpp"

namespace beegarth::entries {

// clang-format off
BEEGARTH_WORDS(Refusal, "no_clipping", "no_cutting_of_cells", "no_sugar", "no_synthetic_strips", "no_organic_acids", "no_artificial_swarms", "no_uniting", "no_queens_bought", "no_drone_comb_cut", "swarms_let_go");

template <class V, class P> void fields(V& v, P& p, const Setting*) { v.text("name", p.name, true); v.text("value", p.value, true); }
template <class V, class P> void fields(V& v, P& p, const Note*) { v.text("text", p.text, true); v.id("colony", p.colony); v.id("site", p.site); }
template <class V, class P> void fields(V& v, P& p, const TableOverride*) {
  v.text("table", p.table, true); v.text("row", p.row, true); v.number("value", p.value, limits::any); v.number("low", p.low, limits::any);
  v.number("high", p.high, limits::any); v.text("unit", p.unit, true); v.text("source", p.source, true);
  v.text("text", p.text);
}
template <class V, class P> void fields(V& v, P& p, const Removed*) { v.id("entry", p.entry, true); v.text("reason", p.reason); }
template <class V, class P> void fields(V& v, P& p, const Cleared*) { v.id("colony", p.colony, true); v.text("by", p.by, true); v.text("remark", p.remark); }
template <class V, class P> void fields(V& v, P& p, const Reported*) {
  v.id("site", p.site, true); v.id("colony", p.colony); v.text("what", p.what, true); v.text("to", p.to); v.text("reference", p.reference);
}
template <class V, class P> void fields(V& v, P& p, const KeeperRule*) { v.choice("rule", p.rule); v.flag("kept", p.kept); v.text("remark", p.remark); }
template <class V, class P> void fields(V& v, P& p, const Comparison*) {
  v.text("name", p.name, true); v.text("question", p.question, true); v.ids("first", p.first); v.ids("second", p.second); v.text("measured", p.measured);
  v.flag("finished", p.finished); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Photo*) {
  v.text("sha256", p.sha256, true); v.text("file_name", p.file_name, true); v.count("bytes", p.bytes, limits::file_bytes); v.id("colony", p.colony);
  v.id("site", p.site); v.id("entry", p.entry); v.text("caption", p.caption);
}
// clang-format on

}  // namespace beegarth::entries
