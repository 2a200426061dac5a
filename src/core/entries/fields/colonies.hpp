// The fields of the kinds in kinds/colonies.hpp: colonies and queens. See fields.hpp.
#pragma once

#include "entries/fields/limits.hpp"
#include "entries/fields/words.hpp"
#include "entries/kinds/colonies.hpp"

namespace beegarth::entries {

// clang-format off
BEEGARTH_WORDS(Beginning, "overwintered", "swarm", "split", "bought", "unknown");
BEEGARTH_WORDS(Ending, "died", "sold", "united", "given_away", "absconded");
BEEGARTH_WORDS(QueenEvent, "marked", "clipped", "introduced", "cell_given", "virgin_emerged", "laying", "lost", "removed", "caged", "released", "seen", "superseded", "died");
BEEGARTH_WORDS(QueenColour, "white", "yellow", "red", "green", "blue", "none");
BEEGARTH_WORDS(QueenOrigin, "reared", "swarm", "supersedure", "emergency", "bought", "given", "unknown");
BEEGARTH_WORDS(MatingKind, "open", "mating_site", "inseminated");

template <class V, class P> void fields(V& v, P& p, const ColonyBegan*) {
  v.id("colony", p.colony, true); v.text("name", p.name, true); v.id("hive", p.hive, true); v.choice("how", p.how);
  v.number("bees", p.bees, limits::bees); v.number("stores_kg", p.stores_kg, limits::stores);
  v.count("queen_year", p.queen_year, limits::year); v.flag("queen_clipped", p.queen_clipped); v.text("remark", p.remark);
  v.id("swarm_of", p.swarm_of);
  v.text("from_whom", p.from_whom);
}
template <class V, class P> void fields(V& v, P& p, const ColonyMoved*) { v.id("colony", p.colony, true); v.id("hive", p.hive, true); }
template <class V, class P> void fields(V& v, P& p, const ColonyEnded*) { v.id("colony", p.colony, true); v.choice("how", p.how); v.text("cause", p.cause); }
template <class V, class P> void fields(V& v, P& p, const Queen*) {
  v.id("colony", p.colony, true); v.choice("event", p.event); v.id("which", p.which); v.count("year", p.year, limits::year);
  v.choice("colour", p.colour); v.text("number", p.number); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const QueenBegan*) {
  v.id("queen", p.queen, true); v.text("name", p.name, true); v.id("mother", p.mother); v.choice("origin", p.origin);
  v.count("year", p.year, limits::year); v.text("line", p.line); v.text("breeder", p.breeder); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const QueenMated*) {
  v.id("queen", p.queen, true); v.choice("how", p.how); v.ids("drone_mothers", p.drone_mothers); v.count("drones", p.drones, limits::drones);
  v.text("place", p.place); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Score*) {
  v.id("colony", p.colony, true); v.id("queen", p.queen); v.text("trait", p.trait, true); v.number("score", p.score, limits::any); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Quarantine*) {
  v.id("colony", p.colony, true); v.date("until", p.until); v.flag("lifted", p.lifted); v.text("reason", p.reason);
}
template <class V, class P> void fields(V& v, P& p, const StockAim*) {
  v.id("site", p.site, true); v.count("month", p.month, limits::month); v.count("colonies", p.colonies, limits::kit); v.text("remark", p.remark);
}
// clang-format on

}  // namespace beegarth::entries
