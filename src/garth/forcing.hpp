// What one day's weather and the year's forage bring to a colony.
#pragma once

#include <array>

#include "base/fact_table.hpp"
#include "facts/forcing.hpp"
#include "facts/weather.hpp"

namespace beegarth::garth {

struct ForageYear {                 // by month, index 0 = January
  std::array<double, 12> nectar{};  // kg of honey that 10,000 foragers bring home in a day of 8 flight hours
  std::array<double, 12> pollen{};  // 0 none .. 1 plenty
};
// That of tables/forage.toml, turned round south of the equator.
ForageYear usual_forage(const FactTable& forage, double latitude_deg);

// What colonies near by do: mites carried in by drifting and robbing bees, a day; robbing, 0..1.
struct Neighbours {
  double in_season, late, robbing;
  explicit Neighbours(const FactTable& forage);
};

facts::DayForcing forcing_on(const facts::FullWeatherDay& day, double flight_hours, const ForageYear& forage,
                             const Neighbours& neighbours, double latitude_deg);

// Where nothing is known of a place: the temperate yearly course of tables/climate.toml, turned round south
// of the equator.
facts::MonthlyNormals stand_in_normals(const FactTable& climate, double latitude_deg);

}  // namespace beegarth::garth
