#include "garth/weather.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>
#include <utility>

#include "garth/forcing.hpp"
#include "garth/threads.hpp"

namespace beegarth::garth {
namespace {

constexpr int fewest_days_to_fit = 365;

bool concerns(const SiteId& said, const SiteId& site) {
  return said == site || said.text() == "all";
}

std::vector<facts::WeatherDay> seen_at(const Session& session, const SiteId& site) {
  std::vector<facts::WeatherDay> days;
  for (const auto& entry : session.state.weather) {
    const auto* w = std::get_if<entries::Weather>(&entry.payload);
    if (!w || !concerns(w->site, site)) continue;
    // A forecast for a day that has passed is no longer worth anything where the day was seen; the series
    // keeps the later given, so forecasts go first.
    days.push_back({entry.happened, w->temperature_min_C, w->temperature_max_C, w->rain_mm, w->wind_m_s,
                    w->gust_m_s, w->sun_hours, w->forecast});
  }
  std::stable_sort(days.begin(), days.end(),
                   [](const auto& a, const auto& b) { return a.forecast && !b.forecast; });
  return days;
}

std::optional<facts::MonthlyNormals> normals_at(const Session& session, const SiteId& site) {
  facts::MonthlyNormals normals;
  std::array<bool, 12> said{};
  // The site's own months win over those said for all.
  for (const bool own : {false, true}) {
    for (const entries::Normals& n : session.state.normals) {
      if (own ? n.site != site : n.site.text() != "all") continue;
      const auto m = static_cast<std::size_t>(n.month - 1);
      normals.months[m] = {n.temperature_min_C, n.temperature_max_C, n.rain_mm, n.rain_days,
                           n.wind_m_s.value_or(3)};
      said[m] = true;
    }
  }
  if (!std::all_of(said.begin(), said.end(), [](bool b) { return b; })) return std::nullopt;
  return normals;
}

Expected<almanac::WeatherModel> model_at(const Session& session, const SiteId& site, SiteWeather& weather) {
  almanac::WeatherModel fallback;
  if (const auto normals = normals_at(session, site)) {
    fallback = almanac::weather_from_normals(*normals);
    weather.remarks.emplace_back("weather past the data: drawn from the monthly normals typed in the book");
  } else {
    fallback = almanac::weather_from_normals(
        stand_in_normals(session.tables["climate"], weather.place.latitude_deg));
    weather.remarks.emplace_back(
        "weather past the data: drawn from a stand-in temperate climate, because the book holds neither a "
        "year of daily "
        "weather nor monthly normals; the odds are wide");
  }
  if (static_cast<int>(weather.seen.days.size()) < fewest_days_to_fit) return fallback;
  auto fitted = almanac::fit_weather(weather.seen.days, fallback);
  if (!fitted) return fallback;  // too few days with temperature: the fallback stands and is said above
  weather.remarks.back() = "weather past the data: drawn by a generator fitted to " +
                           std::to_string(fitted->days_fitted) + " days in the book";
  return fitted;
}

ForageYear forage_at(const Session& session, const SiteId& site, double latitude_deg) {
  ForageYear year = usual_forage(session.tables["forage"], latitude_deg);
  for (const bool own : {false, true}) {
    for (const entries::Forage& f : session.state.forage) {
      if (own ? f.site != site : f.site.text() != "all") continue;
      const auto m = static_cast<std::size_t>(f.month - 1);
      year.nectar[m] = f.nectar_kg_per_day;
      year.pollen[m] = static_cast<double>(f.pollen) / 3.0;  // none .. plenty
    }
  }
  return year;
}

double median(std::vector<double> values) {
  if (values.empty()) return 0;
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

// Days that were seen are the same in all members, and so is the light of every day: reckoned once.
std::vector<std::vector<almanac::DayFitness>> fitness_of(const SiteWeather& weather,
                                                         const almanac::HourRules& rules, int threads) {
  std::vector<std::vector<almanac::DayFitness>> fit(weather.members.size());
  if (fit.empty()) return fit;
  const facts::WeatherPath& first = weather.members.front();
  for (const auto& day : first)
    fit.front().push_back(almanac::day_fitness(day, weather.place, weather.utc_offset_h, rules));
  for_each_index(fit.size() - 1, threads, [&](std::size_t before) {
    const std::size_t m = before + 1;
    fit[m] = fit.front();
    for (std::size_t d = 0; d < first.size(); ++d) {
      const auto& day = weather.members[m][d];
      if (day != first[d])
        fit[m][d] =
            almanac::day_fitness(day, weather.place, weather.utc_offset_h, rules, &fit.front()[d].light);
    }
  });
  return fit;
}

}  // namespace

Expected<SiteWeather> weather_at(const Session& session, const SiteId& site, Date first, Date last) {
  const auto at = session.state.sites.find(site);
  if (at == session.state.sites.end())
    return bad_input("there is no site '" + site.text() + "'", {}, "enter it first");
  const entries::Site& s = at->second;
  SiteWeather weather{.place = {s.latitude_deg, s.longitude_deg, s.elevation_m.value_or(0)},
                      .utc_offset_h = s.utc_offset_h.value_or(std::round(s.longitude_deg / 15)),
                      .first = first,
                      .last = last};
  const auto said = seen_at(session, site);
  weather.seen = almanac::put_in_order(said);
  auto model = model_at(session, site, weather);
  if (!model) return model.problem();
  weather.model = *std::move(model);
  // Sites without weather of their own share one stream, so that one sky hangs over all that read the same
  // book rows.
  weather.members = almanac::continue_weather(weather.model, weather.seen.days, first, last, session.today,
                                              session.weather_members, session.seed);
  const auto rules = almanac::HourRules::from(session.tables["hours"]);
  if (!rules) return rules.problem();
  weather.fit = fitness_of(weather, *rules, session.threads);
  return weather;
}

std::vector<facts::ForcingPath> forcing_at(const Session& session, const SiteId& site,
                                           const SiteWeather& weather) {
  const ForageYear year = forage_at(session, site, weather.place.latitude_deg);
  const Neighbours neighbours(session.tables["forage"]);
  std::vector<facts::ForcingPath> paths(weather.members.size());
  for (std::size_t m = 0; m < paths.size(); ++m) {
    paths[m].reserve(weather.members[m].size());
    for (std::size_t d = 0; d < weather.members[m].size(); ++d)
      paths[m].push_back(forcing_on(weather.members[m][d], weather.fit[m][d].flight_hours, year, neighbours,
                                    weather.place.latitude_deg));
  }
  return paths;
}

std::vector<work::SiteDay> site_days(const SiteWeather& weather, Date from, int days) {
  std::vector<work::SiteDay> list(static_cast<std::size_t>(days));
  const double share = 1.0 / static_cast<double>(std::max<std::size_t>(1, weather.members.size()));
  for (int d = 0; d < days; ++d) {
    work::SiteDay& day = list[static_cast<std::size_t>(d)];
    const auto at = static_cast<std::size_t>(from + d - weather.first);
    std::vector<double> maxima;
    std::vector<double> winds;
    std::array<int, 8> limits{};
    int dry = 0;
    int wet = 0;
    for (std::size_t m = 0; m < weather.members.size(); ++m) {
      const auto& fit = weather.fit[m][at];
      for (std::size_t h = 0; h < 24; ++h) {
        day.opening[h] += fit.opening[h] ? share : 0;
        day.daylight[h] += fit.light[h] ? share : 0;
        if (h >= 10 && h < 17 && !fit.opening[h]) ++limits[static_cast<std::size_t>(fit.opening_limit[h])];
      }
      maxima.push_back(weather.members[m][at].temperature_max_C);
      winds.push_back(weather.members[m][at].wind_m_s);
      const bool is_dry = weather.members[m][at].rain_mm < 0.2;
      dry += is_dry ? 1 : 0;
      wet += weather.members[m][at].rain_mm >= 1 ? 1 : 0;
    }
    for (std::size_t h = 0; h < 24; ++h) {
      day.opening[h] = std::min(1.0, day.opening[h]);
      day.daylight[h] = std::min(1.0, day.daylight[h]);
    }
    day.dry = dry * share;
    day.rain_odds = wet * share;
    day.temperature_max_C = median(std::move(maxima));
    day.wind_m_s = median(std::move(winds));
    static constexpr std::array<const char*, 8> words{"", "dark", "cold", "hot", "rain", "wind", "dull", ""};
    const auto most = std::max_element(limits.begin() + 1, limits.end()) - limits.begin();
    if (limits[static_cast<std::size_t>(most)] > 0) day.limit = words[static_cast<std::size_t>(most)];
  }
  return list;
}

}  // namespace beegarth::garth
