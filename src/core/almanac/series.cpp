#include "almanac/series.hpp"

#include <algorithm>
#include <functional>
#include <map>

namespace beegarth::almanac {
namespace {

using facts::WeatherDay;

// One run of dates on which `is_missing`, reported as one gap.
void find_gaps(std::span<const WeatherDay> days, const std::string& quantity,
               const std::function<bool(const WeatherDay&)>& is_missing, std::vector<Gap>& gaps) {
  std::optional<Gap> open;
  for (const WeatherDay& day : days) {
    if (open && (!is_missing(day) || day.date - open->to > 1)) {
      gaps.push_back(*open);
      open.reset();
    }
    if (!is_missing(day)) continue;
    if (open) {
      open->to = day.date;
    } else {
      open = Gap{day.date, day.date, quantity};
    }
  }
  if (open) gaps.push_back(*open);
}

void find_missing_dates(std::span<const WeatherDay> days, std::vector<Gap>& gaps) {
  for (std::size_t i = 1; i < days.size(); ++i) {
    if (days[i].date - days[i - 1].date > 1)
      gaps.push_back({days[i - 1].date + 1, days[i].date - 1, "every value"});
  }
}

double share_above(std::span<const WeatherDay> days, double limit_C) {
  std::size_t seen = 0;
  std::size_t above = 0;
  for (const WeatherDay& day : days) {
    if (!day.temperature_max_C) continue;
    ++seen;
    above += *day.temperature_max_C > limit_C ? 1 : 0;
  }
  return seen == 0 ? 0 : static_cast<double>(above) / static_cast<double>(seen);
}

void find_oddities(std::span<const WeatherDay> days, std::vector<std::string>& oddities) {
  for (const WeatherDay& day : days) {
    const std::string date = day.date.iso();
    if (day.temperature_min_C && day.temperature_max_C && *day.temperature_min_C > *day.temperature_max_C) {
      oddities.push_back(date + ": the minimum is above the maximum");
    }
    if (day.wind_m_s && day.gust_m_s && *day.gust_m_s < *day.wind_m_s) {
      oddities.push_back(date + ": the gust is below the mean wind");
    }
    if (day.rain_mm && *day.rain_mm > 200)
      oddities.push_back(date + ": more than 200 mm of rain; in tenths?");
  }
  // A place where one day in ten is above 45 C is no place for bees: the column is rather in Fahrenheit or
  // tenths.
  if (share_above(days, 45) > 0.1)
    oddities.emplace_back("many maxima above 45: in Fahrenheit or in tenths of a degree?");
}

}  // namespace

SeriesReport put_in_order(std::span<const WeatherDay> days) {
  std::map<Date, WeatherDay> by_date;
  for (const WeatherDay& day : days) by_date[day.date] = day;
  SeriesReport report;
  for (auto& [date, day] : by_date) report.days.push_back(day);
  find_missing_dates(report.days, report.gaps);
  find_gaps(
      report.days, "temperature",
      [](const WeatherDay& d) { return !d.temperature_min_C || !d.temperature_max_C; }, report.gaps);
  find_gaps(
      report.days, "rain", [](const WeatherDay& d) { return !d.rain_mm; }, report.gaps);
  find_gaps(
      report.days, "wind", [](const WeatherDay& d) { return !d.wind_m_s; }, report.gaps);
  std::stable_sort(report.gaps.begin(), report.gaps.end(),
                   [](const Gap& a, const Gap& b) { return a.from < b.from; });
  find_oddities(report.days, report.oddities);
  return report;
}

}  // namespace beegarth::almanac
