// Many equally likely continuations of the weather past the data: a two-state rain chain with gamma amounts,
// and temperatures and wind as seasonal means with a first-order autoregression, conditioned on wet or dry
// (after Richardson 1981, Water Resources Research 17:182). Fitted to the keeper's series, or to typed
// monthly normals.
#pragma once

#include <array>
#include <cstdint>
#include <span>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "facts/weather.hpp"

namespace beegarth::almanac {

// A day with at least this much rain is wet.
inline constexpr double wet_day_mm = 0.2;

struct MonthModel {
  double wet_after_dry = 0.3, wet_after_wet = 0.6;  // probabilities
  double rain_shape = 0.7, rain_mean_mm = 4;        // gamma amount on a wet day
  double max_mean_dry_C = 15, max_mean_wet_C = 13, max_sd_C = 3;
  double min_mean_dry_C = 5, min_mean_wet_C = 7, min_sd_C = 3;
  double wind_mean_m_s = 3.5, wind_sd_m_s = 1.2;
};

struct WeatherModel {
  std::array<MonthModel, 12> months;
  double temperature_memory = 0.65;  // lag-1 correlation of the residuals
  double min_max_correlation = 0.5;
  double wind_memory = 0.4;
  int days_fitted = 0;  // 0: from normals
};

// Needs at least 365 days with temperature; problem where there are fewer. Missing rain or wind takes the
// defaults of `fallback` and is said in the series report.
Expected<WeatherModel> fit_weather(std::span<const facts::WeatherDay> ordered, const WeatherModel& fallback);
WeatherModel weather_from_normals(const facts::MonthlyNormals& normals);

// `members` paths over first..last. Days present and complete in `known` (seen or forecast) are taken as they
// are, except that forecast days are jittered by the forecast's usual error, growing with lead; missing
// values are drawn. The same seed gives the same paths; a longer period only adds days.
std::vector<facts::WeatherPath> continue_weather(const WeatherModel& model,
                                                 std::span<const facts::WeatherDay> known, Date first,
                                                 Date last, Date today, int members, std::uint64_t seed);

}  // namespace beegarth::almanac
