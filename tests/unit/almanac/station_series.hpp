// Thirty years of days at one station (Royal Netherlands Meteorological Institute, open data), where the
// folder is present.
#pragma once

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "facts/weather.hpp"

namespace beegarth::almanac {

inline std::optional<double> cell_number(const std::string& cell) {
  if (cell.empty()) return std::nullopt;
  return std::stod(cell);
}

// Empty where the file is not there.
inline std::vector<facts::WeatherDay> station_series() {
  std::ifstream file(std::string(BEEGARTH_SOURCE_DIR) + "/../shared/data/daily_st_J_1991_2020.csv");
  if (!file) file.open(std::string(BEEGARTH_SOURCE_DIR) + "/../../shared/data/daily_st_J_1991_2020.csv");
  std::vector<facts::WeatherDay> days;
  std::string line;
  std::getline(file, line);
  while (std::getline(file, line)) {
    std::istringstream cells(line);
    std::vector<std::string> cell;
    for (std::string one; std::getline(cells, one, ',');) cell.push_back(one);
    cell.resize(10);
    facts::WeatherDay day{.date = *Date::parse(cell[0])};
    day.temperature_min_C = cell_number(cell[1]);
    day.temperature_max_C = cell_number(cell[2]);
    day.rain_mm = cell_number(cell[4]);
    day.wind_m_s = cell_number(cell[7]);
    days.push_back(day);
  }
  return days;
}

}  // namespace beegarth::almanac
