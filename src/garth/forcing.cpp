#include "garth/forcing.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <string>

#include "almanac/sun.hpp"

namespace beegarth::garth {
namespace {

double monthly(const std::array<double, 12>& values, Date date) {
  // Straight lines between the middles of the months, so that the first of a month is no step.
  const double at = static_cast<double>(date.month() - 1) + (static_cast<double>(date.day()) - 15.5) / 30.5;
  const double floor = std::floor(at);
  const auto low = static_cast<std::size_t>((static_cast<int>(floor) + 12) % 12);
  const std::size_t high = (low + 1) % 12;
  return values[low] + (values[high] - values[low]) * (at - floor);
}

}  // namespace

ForageYear usual_forage(const FactTable& forage, double latitude_deg) {
  ForageYear year;
  for (int m = 0; m < 12; ++m) {
    const auto at = static_cast<std::size_t>(latitude_deg >= 0 ? m : (m + 6) % 12);
    const std::string month = (m < 9 ? "0" : "") + std::to_string(m + 1);
    year.nectar[at] = forage.value("nectar_kg_per_day_" + month).value();
    year.pollen[at] = forage.value("pollen_index_" + month).value();
  }
  return year;
}

Neighbours::Neighbours(const FactTable& forage)
    : in_season(forage.value("mites_in_per_day").value()),
      late(forage.value("mites_in_per_day_late").value()),
      robbing(forage.value("robbing").value()) {}

facts::DayForcing forcing_on(const facts::FullWeatherDay& day, double flight_hours, const ForageYear& forage,
                             const Neighbours& neighbours, double latitude_deg) {
  const int season_month = northern_month(day.date, latitude_deg);
  const bool late = season_month >= 8 && season_month <= 11;
  const bool active = season_month >= 3 && season_month <= 11;
  return {.date = day.date,
          .flight_hours = flight_hours,
          .temperature_min_C = day.temperature_min_C,
          .temperature_max_C = day.temperature_max_C,
          .rain_mm = day.rain_mm,
          .daylength_h = almanac::daylength_h(latitude_deg, day.date.day_of_year()),
          .nectar_kg_per_day = std::max(0.0, monthly(forage.nectar, day.date)),
          .pollen_index = std::clamp(monthly(forage.pollen, day.date), 0.0, 1.0),
          .mites_in_per_day = late ? neighbours.late : (active ? neighbours.in_season : 0),
          .robbing = neighbours.robbing};
}

facts::MonthlyNormals stand_in_normals(const FactTable& table, double latitude_deg) {
  facts::MonthlyNormals normals;
  const auto of = [&](std::string_view key) { return table.value(key).value(); };
  const double mean = of("mean_year_C");
  const double swing = of("summer_swing_C");
  const double half_range = of("day_range_C") / 2;
  const double warmest_month = latitude_deg >= 0 ? of("warmest_month") : of("warmest_month") + 6;
  for (std::size_t m = 0; m < 12; ++m) {
    const double phase = 2 * std::numbers::pi * (static_cast<double>(m + 1) - warmest_month) / 12;
    const double middle = mean + swing * std::cos(phase);
    normals.months[m] = {middle - half_range, middle + half_range, of("rain_month_mm"), of("rain_days_month"),
                         of("wind_m_s")};
  }
  return normals;
}

}  // namespace beegarth::garth
