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

using Maker = std::vector<Item> (*)();

std::vector<Item> all_of(std::initializer_list<Maker> makers) {
  std::vector<Item> all;
  for (const Maker maker : makers) {
    for (Item& item : maker()) all.push_back(std::move(item));
  }
  return all;
}

}  // namespace

ItemList::ItemList(std::vector<Item> items) : items_(std::move(items)) {
  std::vector<Pattern::Beginning> beginnings;
  for (const Item& item : items_) {
    beginnings.push_back(item.pattern.beginning());
    for (const std::string& lemma : beginnings.back().lemmas) by_lemma_[lemma];
  }
  for (std::size_t i = 0; i < items_.size(); ++i) {
    const Pattern::Beginning& begins = beginnings[i];
    for (auto& [lemma, list] : by_lemma_) {
      if (begins.any || begins.lemmas.contains(lemma)) list.push_back(&items_[i]);
    }
    if (begins.any || begins.number) by_number_.push_back(&items_[i]);
    if (begins.any) others_.push_back(&items_[i]);
  }
}

const std::vector<const Item*>& ItemList::beginning_with(const NoteWord& word) const {
  if (word.mark == Mark::number) return by_number_;
  const auto at = by_lemma_.find(word.lemma);
  return at == by_lemma_.end() ? others_ : at->second;
}

Item unclear(const char* text, const char* question) {
  Item item(text, [](Said&, const PatternMatch&) { return false; });
  item.question = question;
  item.never = true;
  return item;
}
Item asking(const char* text, Write write, const char* question) {
  Item item(text, std::move(write));
  item.question = question;
  return item;
}

bool add(Said& said, Payload payload) {
  if (!validate(payload)) return false;
  said.others.push_back(std::move(payload));
  said.touched = Touched::other;
  said.other_touched = said.others.size() - 1;
  return true;
}

bool change_look(Said& said, const std::function<bool(Inspection&)>& change, bool inside) {
  Inspection changed = said.look.value_or(Inspection{.colony = said.colony});
  if (!change(changed) || !validate(changed)) return false;
  said.look = std::move(changed);
  said.inside = said.inside || inside;
  said.touched = Touched::look;
  return true;
}

std::vector<Item> items_of_weather() {
  using W = Weather;
  return {
      {"temperature? min #C", of_weather(&W::temperature_min_C)},
      {"temperature? max #C", of_weather(&W::temperature_max_C)},
      {"#C / #C", low_and_high},
      {"#C to #C", low_and_high},
      {"min #C max #C", low_and_high},
      {"rain #mm", of_weather(&W::rain_mm)},
      {"#mm! of? rain", of_weather(&W::rain_mm)},
      {"no rain", no_rain},
      {"dry", no_rain},
      {"wind #wind", of_weather(&W::wind_m_s)},
      {"gust #wind", of_weather(&W::gust_m_s)},
      {"sun #h", of_weather(&W::sun_hours)},
      {"#h of? sun", of_weather(&W::sun_hours)},
  };
}

const ItemList& colony_items() {
  static const ItemList items(all_of({items_seen, items_of_signs, items_counted, items_fed, items_treated,
                                      items_room, items_queens, items_of_trouble, items_of_nobody}));
  return items;
}
const ItemList& dead_colony_items() {
  static const ItemList items(
      all_of({items_found_dead, items_seen, items_of_signs, items_counted, items_fed, items_treated,
              items_room, items_queens, items_of_trouble, items_of_nobody}));
  return items;
}
const ItemList& site_items() {
  static const ItemList items(all_of({items_of_weather, items_of_trouble, items_of_land, items_of_nobody}));
  return items;
}
const ItemList& weather_items() {
  static const ItemList items(items_of_weather());
  return items;
}
const ItemList& nobody_items() {
  static const ItemList items(items_of_nobody());
  return items;
}

const ItemList& no_items() {
  static const ItemList items({});
  return items;
}

bool is_known_lemma(const std::string& lemma) {
  static const std::set<std::string> known = [] {
    std::set<std::string> words;
    for (const ItemList* items : {&dead_colony_items(), &site_items()}) {
      for (const Item& item : items->all()) item.pattern.collect_words(words);
    }
    return words;
  }();
  return known.contains(lemma);
}

}  // namespace beegarth::entries
