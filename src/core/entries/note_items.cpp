#include "entries/note_items.hpp"

#include <set>
#include <utility>

#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

bool weather(Said& said, const std::function<bool(Weather&)>& change) {
  Weather changed = said.weather.value_or(Weather{.site = said.site});
  if (!change(changed) || !validate(changed)) return false;
  said.weather = std::move(changed);
  said.touched = Touched::weather;
  return true;
}
Write of_weather(Number Weather::*field) {
  return [=](Said& said, const PatternMatch& m) {
    return weather(said, [&](Weather& w) { return put(w.*field, m.numbers[0]); });
  };
}
bool no_rain(Said& said, const PatternMatch&) {
  return weather(said, [](Weather& w) { return put(w.rain_mm, 0.0); });
}
bool low_and_high(Said& said, const PatternMatch& m) {
  return weather(said, [&](Weather& w) {
    return put(w.temperature_min_C, m.numbers[0]) && put(w.temperature_max_C, m.numbers[1]);
  });
}

}  // namespace

std::span<const Item> colony_items() {
  static const std::vector<Item> items = [] {
    std::vector<Item> all = items_seen();
    for (auto part : {items_counted, items_done}) {
      for (Item& item : part()) all.push_back(std::move(item));
    }
    return all;
  }();
  return items;
}

std::span<const Item> weather_items() {
  using W = Weather;
  static const std::vector<Item> items = [] {
    const auto item = [](const char* pattern, Write write) {
      return Item{Pattern(pattern), std::move(write)};
    };
    return std::vector<Item>{
        item("min #C", of_weather(&W::temperature_min_C)),
        item("max #C", of_weather(&W::temperature_max_C)),
        item("#C / #C", low_and_high),
        item("#C to #C", low_and_high),
        item("min #C max #C", low_and_high),
        item("rain #mm", of_weather(&W::rain_mm)),
        item("#mm! of? rain", of_weather(&W::rain_mm)),
        item("no rain", no_rain),
        item("dry", no_rain),
        item("wind #wind", of_weather(&W::wind_m_s)),
        item("gust #wind", of_weather(&W::gust_m_s)),
        item("sun #h", of_weather(&W::sun_hours)),
        item("#h of? sun", of_weather(&W::sun_hours)),
    };
  }();
  return items;
}

bool is_known_lemma(const std::string& lemma) {
  static const std::set<std::string> known = [] {
    std::set<std::string> words;
    for (const auto items : {colony_items(), weather_items()}) {
      for (const Item& item : items) item.pattern.collect_words(words);
    }
    return words;
  }();
  return known.contains(lemma);
}

}  // namespace beegarth::entries
