#include "belief/weather_ahead.hpp"

#include <algorithm>

namespace beegarth::belief {

facts::DayForcing WeatherAhead::on(Date date) const {
  if (!future_.empty() && date >= future_.front().date && date <= future_.back().date)
    return future_[static_cast<std::size_t>(date - future_.front().date)];
  facts::DayForcing day = nearest_like(date);
  day.date = date;
  return day;
}

// The known day closest in the season, counted round the year and, failing that, across the summer.
facts::DayForcing WeatherAhead::nearest_like(Date date) const {
  const facts::DayForcing* best = nullptr;
  int best_distance = 1 << 20;
  const auto look = [&](const facts::ForcingPath& path) {
    for (const facts::DayForcing& day : path) {
      const int apart = ((date - day.date) % 365 + 365) % 365;
      const int distance = std::min(apart, 365 - apart);
      if (distance < best_distance) {
        best_distance = distance;
        best = &day;
      }
    }
  };
  look(future_);
  look(past_);
  return best != nullptr ? *best : facts::DayForcing{};
}

}  // namespace beegarth::belief
