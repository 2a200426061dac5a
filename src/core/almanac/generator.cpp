#include "almanac/generator.hpp"

#include <algorithm>
#include <cmath>
#include <map>

#include "base/random.hpp"

namespace beegarth::almanac {
namespace {

using facts::FullWeatherDay;
using facts::WeatherDay;

constexpr int days_in_month = 30;

// The chain starts this long before the first day asked for: it goes on from what was seen just before, and
// where nothing was, its first day is as uncertain as the rest (0.95 to the 30th power is the most that is
// left of the start).
constexpr int run_in_days = 30;

// A month's value between the middles of the months, so that the first of a month is no step.
double seasonal(const WeatherModel& model, Date date, double MonthModel::*value) {
  const double at = static_cast<double>(date.month() - 1) + (static_cast<double>(date.day()) - 15.5) / 30.5;
  const double floor = std::floor(at);
  const auto low = static_cast<std::size_t>((static_cast<int>(floor) + 12) % 12);
  const std::size_t high = (low + 1) % 12;
  const double a = model.months[low].*value;
  return a + (model.months[high].*value - a) * (at - floor);
}

// Yesterday as the chain remembers it: wet or not, and how far off the seasonal course, in standard
// deviations.
struct Memory {
  bool wet = false;
  double max_z = 0;
  double min_z = 0;
  double wind_z = 0;
};

struct Course {
  double max_mean, max_sd, min_mean, min_sd, wind_mean, wind_sd;
};

Course course_on(const WeatherModel& model, Date date, bool wet) {
  return {.max_mean = seasonal(model, date, wet ? &MonthModel::max_mean_wet_C : &MonthModel::max_mean_dry_C),
          .max_sd = std::max(0.1, seasonal(model, date, &MonthModel::max_sd_C)),
          .min_mean = seasonal(model, date, wet ? &MonthModel::min_mean_wet_C : &MonthModel::min_mean_dry_C),
          .min_sd = std::max(0.1, seasonal(model, date, &MonthModel::min_sd_C)),
          .wind_mean = std::max(0.3, seasonal(model, date, &MonthModel::wind_mean_m_s)),
          .wind_sd = std::max(0.05, seasonal(model, date, &MonthModel::wind_sd_m_s))};
}

// Wind is positive and skewed: lognormal with the month's mean and standard deviation.
double wind_from(const Course& c, double z) {
  const double s2 = std::log(1 + (c.wind_sd * c.wind_sd) / (c.wind_mean * c.wind_mean));
  return std::min(40.0, std::exp(std::log(c.wind_mean) - s2 / 2 + std::sqrt(s2) * z));
}
double wind_z_of(const Course& c, double wind_m_s) {
  const double s2 = std::log(1 + (c.wind_sd * c.wind_sd) / (c.wind_mean * c.wind_mean));
  return std::clamp((std::log(std::max(0.1, wind_m_s)) - std::log(c.wind_mean) + s2 / 2) / std::sqrt(s2),
                    -4.0, 4.0);
}

// The day drawn from the chain, and what it leaves behind.
FullWeatherDay draw_day(const WeatherModel& model, Date date, const Memory& before, Stream& stream,
                        Memory& after) {
  const double wet_odds =
      seasonal(model, date, before.wet ? &MonthModel::wet_after_wet : &MonthModel::wet_after_dry);
  after.wet = stream.uniform() < wet_odds;
  const double shape = std::clamp(seasonal(model, date, &MonthModel::rain_shape), 0.2, 5.0);
  const double amount = stream.gamma(shape) / shape * seasonal(model, date, &MonthModel::rain_mean_mm);

  const double memory = model.temperature_memory;
  const double fresh = std::sqrt(1 - memory * memory);
  const double shared = stream.normal();
  const double own = stream.normal();
  const double r = model.min_max_correlation;
  after.max_z = memory * before.max_z + fresh * shared;
  after.min_z = memory * before.min_z + fresh * (r * shared + std::sqrt(1 - r * r) * own);
  after.wind_z = model.wind_memory * before.wind_z +
                 std::sqrt(1 - model.wind_memory * model.wind_memory) * stream.normal();

  const Course c = course_on(model, date, after.wet);
  FullWeatherDay day{.date = date};
  day.temperature_max_C = c.max_mean + c.max_sd * after.max_z;
  day.temperature_min_C = std::min(day.temperature_max_C, c.min_mean + c.min_sd * after.min_z);
  day.rain_mm = after.wet ? std::clamp(amount, wet_day_mm, 300.0) : 0;
  day.wind_m_s = wind_from(c, after.wind_z);
  const double bright = stream.uniform();
  day.sun_share = after.wet ? 0.05 + 0.4 * bright : 0.25 + 0.6 * bright;
  return day;
}

// What was seen takes the place of what was drawn, value by value.
void take_seen(const WeatherModel& model, const WeatherDay& seen, FullWeatherDay& day, Memory& after) {
  if (seen.rain_mm) {
    day.rain_mm = *seen.rain_mm;
    after.wet = day.rain_mm >= wet_day_mm;
  }
  const Course c = course_on(model, day.date, after.wet);
  if (seen.temperature_max_C) day.temperature_max_C = *seen.temperature_max_C;
  if (seen.temperature_min_C) day.temperature_min_C = *seen.temperature_min_C;
  // One of the two was drawn and lands on the wrong side of the other: the seen one stands.
  if (day.temperature_min_C > day.temperature_max_C) {
    (seen.temperature_max_C ? day.temperature_min_C : day.temperature_max_C) =
        seen.temperature_max_C ? day.temperature_max_C : day.temperature_min_C;
  }
  after.max_z = std::clamp((day.temperature_max_C - c.max_mean) / c.max_sd, -4.0, 4.0);
  after.min_z = std::clamp((day.temperature_min_C - c.min_mean) / c.min_sd, -4.0, 4.0);
  if (seen.wind_m_s) {
    day.wind_m_s = *seen.wind_m_s;
    after.wind_z = wind_z_of(c, day.wind_m_s);
  }
}

// How far a typed forecast is usually off, by days ahead (from memory: verification figures of national
// services give about 1 C at one day and 3 C at a week for maxima, and rain or no rain right nine times in
// ten falling to seven).
WeatherDay as_it_may_come(const WeatherDay& forecast, int lead, Stream& stream) {
  WeatherDay day = forecast;
  const double off_C = 1.0 + 0.3 * lead;
  const double shift = off_C * stream.normal();
  const double night = 0.7 * off_C * stream.normal();
  if (day.temperature_max_C) *day.temperature_max_C += shift;
  if (day.temperature_min_C) *day.temperature_min_C += 0.5 * shift + night;
  if (day.temperature_min_C && day.temperature_max_C) {
    day.temperature_min_C = std::min(*day.temperature_min_C, *day.temperature_max_C);
  }
  const double turn = stream.uniform();
  const double amount = stream.gamma(1.2) / 1.2;
  if (day.rain_mm) {
    const double wrong = std::min(0.35, 0.07 + 0.035 * lead);
    const bool comes_as_said = turn >= wrong;
    const bool said_wet = *day.rain_mm >= wet_day_mm;
    if (said_wet) day.rain_mm = comes_as_said ? std::max(wet_day_mm, *day.rain_mm * amount) : 0;
    if (!said_wet) day.rain_mm = comes_as_said ? 0 : std::max(wet_day_mm, 2.0 * amount);
  }
  const double wind = std::exp((0.2 + 0.03 * lead) * stream.normal());
  if (day.wind_m_s) *day.wind_m_s = std::min(40.0, *day.wind_m_s * wind);
  return day;
}

struct Sums {
  double n = 0, sum = 0, squares = 0;
  void add(double x) {
    n += 1;
    sum += x;
    squares += x * x;
  }
  double mean_or(double otherwise) const { return n > 0 ? sum / n : otherwise; }
  double sd_or(double otherwise) const {
    if (n < 3) return otherwise;
    return std::sqrt(std::max(0.0, squares / n - sum * sum / (n * n)));
  }
};

// Everything that one month of the series tells.
struct MonthSums {
  Sums max_any, min_any;  // also of days whose rain is unknown
  Sums max_wet, max_dry, min_wet, min_dry, wind, amount, log_amount;
  double after_dry = 0, wet_after_dry = 0, after_wet = 0, wet_after_wet = 0;
};

double share(double part, double whole, double otherwise, int fewest = 20) {
  return whole >= fewest ? part / whole : otherwise;
}

MonthModel month_from(const MonthSums& s, const MonthModel& fallback) {
  MonthModel m = fallback;
  m.wet_after_dry = std::clamp(share(s.wet_after_dry, s.after_dry, fallback.wet_after_dry), 0.01, 0.95);
  m.wet_after_wet = std::clamp(share(s.wet_after_wet, s.after_wet, fallback.wet_after_wet), 0.01, 0.97);
  if (s.amount.n >= 20) {
    m.rain_mean_mm = s.amount.mean_or(fallback.rain_mean_mm);
    // Thom 1958: gamma shape from the difference of log of mean and mean of log.
    const double a = std::log(m.rain_mean_mm) - s.log_amount.mean_or(0);
    if (a > 1e-6) m.rain_shape = std::clamp((1 + std::sqrt(1 + 4 * a / 3)) / (4 * a), 0.3, 3.0);
  }
  const bool rain_known = s.max_dry.n >= 5 && s.max_wet.n >= 5;
  m.max_mean_dry_C = (rain_known ? s.max_dry : s.max_any).mean_or(fallback.max_mean_dry_C);
  m.max_mean_wet_C = (rain_known ? s.max_wet : s.max_any).mean_or(fallback.max_mean_wet_C);
  m.min_mean_dry_C = (rain_known ? s.min_dry : s.min_any).mean_or(fallback.min_mean_dry_C);
  m.min_mean_wet_C = (rain_known ? s.min_wet : s.min_any).mean_or(fallback.min_mean_wet_C);
  if (s.max_any.n >= 10) {
    const auto pooled = [&](const Sums& dry, const Sums& wet, const Sums& any) {
      if (!rain_known) return any.sd_or(0);
      return std::sqrt((dry.n * std::pow(dry.sd_or(0), 2) + wet.n * std::pow(wet.sd_or(0), 2)) /
                       (dry.n + wet.n));
    };
    m.max_sd_C = std::max(0.5, pooled(s.max_dry, s.max_wet, s.max_any));
    m.min_sd_C = std::max(0.5, pooled(s.min_dry, s.min_wet, s.min_any));
  }
  if (s.wind.n >= 20) {
    m.wind_mean_m_s = std::max(0.3, s.wind.mean_or(fallback.wind_mean_m_s));
    m.wind_sd_m_s = std::max(0.1, s.wind.sd_or(fallback.wind_sd_m_s));
  }
  return m;
}

// How far a day's maximum is off the month's mean over wet and dry days together, in residual standard
// deviations, and how much of that its being wet or dry explains.
struct Departure {
  double whole = 0;
  double of_wetness = 0;
};

Departure departure_of(const WeatherModel& model, const WeatherDay& day) {
  const double after_dry = seasonal(model, day.date, &MonthModel::wet_after_dry);
  const double wet_share =
      after_dry / (1 + after_dry - seasonal(model, day.date, &MonthModel::wet_after_wet));
  const Course dry = course_on(model, day.date, false);
  const Course wet = course_on(model, day.date, true);
  const double mean = wet_share * wet.max_mean + (1 - wet_share) * dry.max_mean;
  const Course& c = day.rain_mm.value_or(0) >= wet_day_mm ? wet : dry;
  return {(*day.temperature_max_C - mean) / c.max_sd, day.rain_mm ? (c.max_mean - mean) / c.max_sd : 0};
}

// From day to day. Not the lag of the residuals alone: rain today also goes with cold tomorrow, which the
// chain and the residuals do not share, so the memory is set such that the departure as a whole keeps its
// lag-1 correlation.
void fit_temperature_memory(std::span<const WeatherDay> days, WeatherModel& model) {
  Sums product, square, wet_product, wet_square;
  std::optional<Date> date_before;
  Departure before;
  for (const WeatherDay& day : days) {
    if (day.forecast || !day.temperature_max_C || !day.temperature_min_C) continue;
    const Departure now = departure_of(model, day);
    square.add(now.whole * now.whole);
    wet_square.add(now.of_wetness * now.of_wetness);
    if (date_before && day.date - *date_before == 1) {
      product.add(now.whole * before.whole);
      wet_product.add(now.of_wetness * before.of_wetness);
    }
    before = now;
    date_before = day.date;
  }
  if (product.n <= 100) return;
  const double lag = product.mean_or(0) / square.mean_or(1);
  model.temperature_memory =
      std::clamp(lag * (1 + wet_square.mean_or(0)) - wet_product.mean_or(0), 0.0, 0.95);
}

void fit_min_max_correlation(std::span<const WeatherDay> days, WeatherModel& model) {
  Sums max_square, min_square, cross;
  for (const WeatherDay& day : days) {
    if (day.forecast || !day.temperature_max_C || !day.temperature_min_C) continue;
    const Course c = course_on(model, day.date, day.rain_mm.value_or(0) >= wet_day_mm);
    const double max_z = (*day.temperature_max_C - c.max_mean) / c.max_sd;
    const double min_z = (*day.temperature_min_C - c.min_mean) / c.min_sd;
    max_square.add(max_z * max_z);
    min_square.add(min_z * min_z);
    cross.add(max_z * min_z);
  }
  const double scale = std::sqrt(max_square.sum * min_square.sum);
  if (cross.n > 100 && scale > 0) model.min_max_correlation = std::clamp(cross.sum / scale, -0.9, 0.95);
}

void fit_wind_memory(std::span<const WeatherDay> days, WeatherModel& model) {
  Sums product, square;
  std::optional<Date> date_before;
  double before = 0;
  for (const WeatherDay& day : days) {
    if (day.forecast || !day.wind_m_s) continue;
    const double z = wind_z_of(course_on(model, day.date, false), *day.wind_m_s);
    square.add(z * z);
    if (date_before && day.date - *date_before == 1) product.add(z * before);
    before = z;
    date_before = day.date;
  }
  if (product.n > 100) model.wind_memory = std::clamp(product.mean_or(0) / square.mean_or(1), 0.0, 0.95);
}

}  // namespace

Expected<WeatherModel> fit_weather(std::span<const WeatherDay> ordered, const WeatherModel& fallback) {
  std::array<MonthSums, 12> sums;
  int with_temperature = 0;
  const WeatherDay* before = nullptr;
  for (const WeatherDay& day : ordered) {
    if (day.forecast) continue;
    MonthSums& m = sums[static_cast<std::size_t>(day.date.month() - 1)];
    const bool wet = day.rain_mm.value_or(0) >= wet_day_mm;
    if (day.temperature_max_C && day.temperature_min_C) {
      ++with_temperature;
      m.max_any.add(*day.temperature_max_C);
      m.min_any.add(*day.temperature_min_C);
      if (day.rain_mm) {
        (wet ? m.max_wet : m.max_dry).add(*day.temperature_max_C);
        (wet ? m.min_wet : m.min_dry).add(*day.temperature_min_C);
      }
    }
    if (day.wind_m_s) m.wind.add(*day.wind_m_s);
    if (day.rain_mm && wet) {
      m.amount.add(*day.rain_mm);
      m.log_amount.add(std::log(*day.rain_mm));
    }
    if (day.rain_mm && before && before->rain_mm && day.date - before->date == 1) {
      const bool wet_before = *before->rain_mm >= wet_day_mm;
      (wet_before ? m.after_wet : m.after_dry) += 1;
      if (wet) (wet_before ? m.wet_after_wet : m.wet_after_dry) += 1;
    }
    before = &day;
  }
  if (with_temperature < 365) {
    return bad_input("only " + std::to_string(with_temperature) + " days have a minimum and a maximum",
                     "weather", "give at least a year of days, or monthly normals");
  }
  WeatherModel model = fallback;
  for (std::size_t m = 0; m < 12; ++m) model.months[m] = month_from(sums[m], fallback.months[m]);
  model.days_fitted = with_temperature;
  fit_temperature_memory(ordered, model);
  fit_min_max_correlation(ordered, model);
  fit_wind_memory(ordered, model);
  return model;
}

WeatherModel weather_from_normals(const facts::MonthlyNormals& normals) {
  WeatherModel model;
  for (std::size_t m = 0; m < 12; ++m) {
    const auto& n = normals.months[m];
    MonthModel& month = model.months[m];
    // Geng, Penning de Vries & Supit 1986 (Agricultural and Forest Meteorology 36:363): the chain from the
    // share of wet days. Normals count days with 1 mm; days with a trace more are about a third more (from
    // memory).
    const double wet = std::clamp(1.3 * n.rain_days / days_in_month, 0.02, 0.9);
    month.wet_after_dry = std::clamp(0.75 * wet, 0.01, 0.9);
    month.wet_after_wet = std::clamp(0.25 + month.wet_after_dry, 0.01, 0.95);
    const double share_wet = month.wet_after_dry / (1 + month.wet_after_dry - month.wet_after_wet);
    month.rain_mean_mm = std::max(0.3, n.rain_mm / (days_in_month * share_wet));
    month.rain_shape = 0.7;  // near what the same paper finds for temperate stations
    // A wet day is cooler by day and milder by night (from memory: about 2 C and 1 C in a temperate climate).
    month.max_mean_dry_C = n.temperature_max_C + 2.0 * share_wet;
    month.max_mean_wet_C = n.temperature_max_C - 2.0 * (1 - share_wet);
    month.min_mean_dry_C = n.temperature_min_C - 1.0 * share_wet;
    month.min_mean_wet_C = n.temperature_min_C + 1.0 * (1 - share_wet);
    month.wind_mean_m_s = std::max(0.5, n.wind_m_s);
    month.wind_sd_m_s = 0.4 * month.wind_mean_m_s;
  }
  return model;
}

std::vector<facts::WeatherPath> continue_weather(const WeatherModel& model, std::span<const WeatherDay> known,
                                                 Date first, Date last, Date today, int members,
                                                 std::uint64_t seed) {
  std::map<Date, WeatherDay> by_date;
  for (const WeatherDay& day : known) by_date[day.date] = day;
  std::vector<facts::WeatherPath> paths(static_cast<std::size_t>(std::max(0, members)));
  for (std::size_t m = 0; m < paths.size(); ++m) {
    Memory memory;
    paths[m].reserve(static_cast<std::size_t>(std::max(0, last - first + 1)));
    for (Date date = first - run_in_days; date <= last; ++date) {
      Stream stream({.seed = seed,
                     .member = static_cast<std::uint32_t>(m),
                     .day = date.day_number(),
                     .purpose = Purpose::weather});
      Memory after;
      FullWeatherDay day = draw_day(model, date, memory, stream, after);
      if (const auto seen = by_date.find(date); seen != by_date.end()) {
        const bool ahead = seen->second.forecast && date >= today;
        take_seen(model, ahead ? as_it_may_come(seen->second, date - today, stream) : seen->second, day,
                  after);
      }
      memory = after;
      if (date >= first) paths[m].push_back(day);
    }
  }
  return paths;
}

}  // namespace beegarth::almanac
