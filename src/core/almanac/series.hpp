// A daily series of seen weather: put in order, gaps and oddities reported, never filled silently.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "facts/weather.hpp"

namespace beegarth::almanac {

struct Gap {
  Date from;
  Date to;               // inclusive
  std::string quantity;  // "temperature", "rain", "wind" or "every value"
};

struct SeriesReport {
  std::vector<facts::WeatherDay> days;  // in order, one a date; of two for one date the later given wins
  std::vector<Gap> gaps;
  std::vector<std::string> oddities;  // "2026-03-04: minimum above maximum", "in Fahrenheit?"
};

SeriesReport put_in_order(std::span<const facts::WeatherDay> days);

}  // namespace beegarth::almanac
