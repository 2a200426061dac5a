// The fields of the kinds in kinds/weather.hpp: weather, forage and hours. See fields.hpp.
#pragma once

#include "entries/fields/limits.hpp"
#include "entries/fields/words.hpp"
#include "entries/kinds/weather.hpp"

namespace beegarth::entries {

// clang-format off
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
// clang-format on

}  // namespace beegarth::entries
