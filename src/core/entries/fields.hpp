// The fields of every kind, told once: name, unit, limits. Validation, JSON, CSV mapping, schema and the
// note's read-back all visit this list, so they cannot disagree.
//
// A visitor is any type with the members used below:
//   id(name, Id<T>&, required), text(name, std::string&, required), text(name, Text&),
//   number(name, double&, Limits), number(name, Number&, Limits), count(name, int&, Limits), count(name,
//   Count&, Limits), flag(name, bool&), flag(name, Flag&), choice(name, E&), choice(name, std::optional<E>&),
//   date(name, std::optional<Date>&), id(name, std::optional<Id<T>>&), words(name, std::vector<std::string>&)
// The same functions serve const payloads: `visit_fields(visitor, payload)` deduces constness.
#pragma once

#include <array>
#include <string_view>

#include "entries/payloads.hpp"

namespace beegarth::entries {

struct Limits {
  double low;
  double high;
  const char* unit;
};

// ---- the words for each choice, in the order of the enumerators ----
template <class E>
struct Words;
#define BEEGARTH_WORDS(E, ...)                                                   \
  template <>                                                                    \
  struct Words<E> {                                                              \
    static constexpr auto list = std::to_array<std::string_view>({__VA_ARGS__}); \
  }
BEEGARTH_WORDS(HiveForm, "upright", "horizontal");
BEEGARTH_WORDS(Beginning, "overwintered", "swarm", "split", "bought", "unknown");
BEEGARTH_WORDS(Ending, "died", "sold", "united", "given_away", "absconded");
BEEGARTH_WORDS(QueenEvent, "marked", "clipped", "introduced", "cell_given", "virgin_emerged", "laying",
               "lost", "removed", "caged", "released");
BEEGARTH_WORDS(Look, "full", "quick", "outside");
BEEGARTH_WORDS(Level, "none", "little", "some", "plenty");
BEEGARTH_WORDS(MiteMethod, "board", "sugar_roll", "wash", "brood");
BEEGARTH_WORDS(Weighed, "whole_hive", "stores");
BEEGARTH_WORDS(FeedForm, "syrup", "fondant", "comb", "pollen");
BEEGARTH_WORDS(TreatmentKind, "oxalic_trickle", "oxalic_vapour", "formic", "thymol", "amitraz", "pyrethroid",
               "hop_acids", "drone_comb_removed", "brood_removed", "other");
BEEGARTH_WORDS(NeedAnswered::Answer, "done", "skipped", "put_off", "rained_off");
#undef BEEGARTH_WORDS

template <class E>
constexpr std::string_view word_for(E choice) {
  return Words<E>::list[static_cast<std::size_t>(choice)];
}

inline constexpr auto signs_of_health = std::to_array<std::string_view>(
    {"patchy_brood", "sunken_cappings", "perforated_cappings", "greasy_cappings", "ropy_larva",
     "discoloured_larvae", "chalk_brood", "deformed_wings", "dysentery", "crawling_bees", "hornet",
     "hive_beetle", "mite_on_brood", "other_brood_mite", "wax_moth", "robbing", "foulbrood_suspected"});

namespace limits {
inline constexpr Limits latitude{-90, 90, "deg"}, longitude{-180, 180, "deg"}, elevation{-430, 6000, "m"},
    offset{-12, 14, "h"}, minutes{0, 600, "min"}, km{0, 1000, "km"}, place{1, 500, ""}, combs{0, 60, "combs"},
    comb_change{-60, 60, "combs"}, cells_per_comb{500, 20000, "cells"}, kg_per_comb{0.2, 10, "kg"},
    bees_per_seam{200, 6000, "bees"}, conductance{0.05, 10, "W/K"}, bees{0, 120000, "bees"},
    stores{0, 120, "kg"}, year{1990, 2100, ""}, seams{0, 60, "seams"}, cells{0, 200000, "cells"},
    queen_cells{0, 300, "cells"}, share{0, 1, ""}, mites{0, 100000, "mites"}, days{0, 400, "days"},
    board_days{0.2, 60, "days"}, sample{1, 5000, ""}, whole_kg{0, 300, "kg"}, feed_kg{0.05, 40, "kg"},
    pct{0, 100, "%"}, cold{-60, 45, "C"}, hot{-50, 60, "C"}, rain{0, 500, "mm"}, month_rain{0, 2000, "mm"},
    wind{0, 70, "m/s"}, gust{0, 110, "m/s"}, sun{0, 24, "h"}, month{1, 12, ""}, month_days{0, 31, "days"},
    nectar{0, 15, "kg/day"}, weekday{1, 7, ""}, hour{0, 24, "h"}, kit{0, 10000, ""}, any{-1e9, 1e9, ""};
}  // namespace limits

// clang-format off
template <class V, class P> void fields(V& v, P& p, const Site*) {
  v.id("site", p.site, true); v.text("name", p.name, true);
  v.number("latitude_deg", p.latitude_deg, limits::latitude); v.number("longitude_deg", p.longitude_deg, limits::longitude);
  v.number("elevation_m", p.elevation_m, limits::elevation); v.number("utc_offset_h", p.utc_offset_h, limits::offset);
  v.text("grid_reference", p.grid_reference); v.text("access", p.access); v.flag("neighbours", p.neighbours);
  v.flag("floods", p.floods); v.flag("frost_hollow", p.frost_hollow); v.text("remark", p.remark);
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
  v.flag("two_colonies", p.two_colonies);
}
template <class V, class P> void fields(V& v, P& p, const ColonyBegan*) {
  v.id("colony", p.colony, true); v.text("name", p.name, true); v.id("hive", p.hive, true); v.choice("how", p.how);
  v.number("bees", p.bees, limits::bees); v.number("stores_kg", p.stores_kg, limits::stores);
  v.count("queen_year", p.queen_year, limits::year); v.flag("queen_clipped", p.queen_clipped); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const ColonyMoved*) { v.id("colony", p.colony, true); v.id("hive", p.hive, true); }
template <class V, class P> void fields(V& v, P& p, const ColonyEnded*) { v.id("colony", p.colony, true); v.choice("how", p.how); v.text("cause", p.cause); }
template <class V, class P> void fields(V& v, P& p, const Queen*) {
  v.id("colony", p.colony, true); v.choice("event", p.event); v.count("year", p.year, limits::year); v.text("remark", p.remark);
}
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
}
template <class V, class P> void fields(V& v, P& p, const Weight*) { v.id("colony", p.colony, true); v.number("kg", p.kg, limits::whole_kg); v.choice("what", p.what); }
template <class V, class P> void fields(V& v, P& p, const Feed*) {
  v.id("colony", p.colony, true); v.number("kg", p.kg, limits::feed_kg); v.number("sugar_pct", p.sugar_pct, limits::pct); v.choice("form", p.form);
}
template <class V, class P> void fields(V& v, P& p, const Treatment*) {
  v.id("colony", p.colony, true); v.choice("kind", p.kind); v.number("days", p.days, limits::days); v.text("product", p.product);
  v.text("batch", p.batch); v.text("amount", p.amount); v.number("withdrawal_days", p.withdrawal_days, limits::days); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Room*) {
  v.id("colony", p.colony, true); v.count("brood_combs", p.brood_combs, limits::comb_change);
  v.count("super_combs", p.super_combs, limits::comb_change); v.count("undrawn", p.undrawn, limits::combs);
}
template <class V, class P> void fields(V& v, P& p, const Swarmed*) { v.id("colony", p.colony, true); v.text("remark", p.remark); }
template <class V, class P> void fields(V& v, P& p, const Split*) {
  v.id("colony", p.colony, true); v.id("into", p.into, true); v.text("name", p.name, true); v.id("hive", p.hive, true);
  v.number("bees_share", p.bees_share, limits::share); v.number("brood_share", p.brood_share, limits::share); v.flag("queen_goes", p.queen_goes);
}
template <class V, class P> void fields(V& v, P& p, const Unite*) { v.id("colony", p.colony, true); v.id("from", p.from, true); }
template <class V, class P> void fields(V& v, P& p, const Harvest*) { v.id("colony", p.colony, true); v.number("kg", p.kg, limits::whole_kg); v.count("combs", p.combs, limits::combs); }
template <class V, class P> void fields(V& v, P& p, const NeedAnswered*) {
  v.text("need", p.need, true); v.choice("answer", p.answer); v.date("until", p.until); v.text("remark", p.remark);
}
template <class V, class P> void fields(V& v, P& p, const Weather*) {
  v.id("site", p.site, true); v.number("temperature_min_C", p.temperature_min_C, limits::cold);
  v.number("temperature_max_C", p.temperature_max_C, limits::hot); v.number("rain_mm", p.rain_mm, limits::rain);
  v.number("wind_m_s", p.wind_m_s, limits::wind); v.number("gust_m_s", p.gust_m_s, limits::gust);
  v.number("sun_hours", p.sun_hours, limits::sun); v.flag("forecast", p.forecast); v.flag("invented", p.invented);
}
template <class V, class P> void fields(V& v, P& p, const Normals*) {
  v.id("site", p.site, true); v.count("month", p.month, limits::month); v.number("temperature_min_C", p.temperature_min_C, limits::cold);
  v.number("temperature_max_C", p.temperature_max_C, limits::hot); v.number("rain_mm", p.rain_mm, limits::month_rain);
  v.number("rain_days", p.rain_days, limits::month_days); v.number("wind_m_s", p.wind_m_s, limits::wind);
}
template <class V, class P> void fields(V& v, P& p, const Forage*) {
  v.id("site", p.site, true); v.count("month", p.month, limits::month); v.number("nectar_kg_per_day", p.nectar_kg_per_day, limits::nectar); v.choice("pollen", p.pollen);
}
template <class V, class P> void fields(V& v, P& p, const WorkingHours*) {
  v.count("weekday", p.weekday, limits::weekday); v.date("date", p.date); v.number("start_hour", p.start_hour, limits::hour); v.number("end_hour", p.end_hour, limits::hour);
}
template <class V, class P> void fields(V& v, P& p, const Kit*) { v.text("what", p.what, true); v.count("count", p.count, limits::kit); v.text("where", p.where); }
template <class V, class P> void fields(V& v, P& p, const Setting*) { v.text("name", p.name, true); v.text("value", p.value, true); }
template <class V, class P> void fields(V& v, P& p, const Note*) { v.text("text", p.text, true); v.id("colony", p.colony); v.id("site", p.site); }
template <class V, class P> void fields(V& v, P& p, const TableOverride*) {
  v.text("table", p.table, true); v.text("row", p.row, true); v.number("value", p.value, limits::any); v.number("low", p.low, limits::any);
  v.number("high", p.high, limits::any); v.text("unit", p.unit, true); v.text("source", p.source, true);
}
template <class V, class P> void fields(V& v, P& p, const Removed*) { v.id("entry", p.entry, true); v.text("reason", p.reason); }
template <class V, class P> void fields(V& v, P& p, const Cleared*) { v.id("colony", p.colony, true); v.text("by", p.by, true); v.text("remark", p.remark); }
// clang-format on

template <class V, class P>
void visit_fields(V& visitor, P& payload) {
  fields(visitor, payload, static_cast<const std::remove_const_t<P>*>(nullptr));
}

// The same for whichever kind the variant holds.
template <class V>
void visit_fields_of(V& visitor, Payload& payload) {
  std::visit([&](auto& p) { visit_fields(visitor, p); }, payload);
}
template <class V>
void visit_fields_of(V& visitor, const Payload& payload) {
  std::visit([&](const auto& p) { visit_fields(visitor, p); }, payload);
}

}  // namespace beegarth::entries
