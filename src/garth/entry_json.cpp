#include "garth/entry_json.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "base/date.hpp"
#include "book/book.hpp"
#include "entries/fields.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

std::string spaced(std::string_view word) {
  std::string text(word);
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

// Visits the fields and says each that was said: "12 seams", "eggs", "no queen", "look full".
class Teller {
 public:
  explicit Teller(const book::State& state) : state_(state) {}
  std::string told;

  template <class T>
  void id(const char*, const Id<T>& value, bool) {
    if (!value.empty()) add(name_of(value));
  }
  template <class T>
  void id(const char*, const std::optional<Id<T>>& value) {
    if (value) add(name_of(*value));
  }
  void text(const char*, const std::string& value, bool) {
    if (!value.empty()) add(value);
  }
  void text(const char*, const entries::Text& value) {
    if (value) add(*value);
  }
  void number(const char* name, double value, entries::Limits limits) {
    const std::string unit = *limits.unit ? std::string(" ") + limits.unit : "";
    const std::string plain = unit_free(name);
    const bool unit_says_it = plain == limits.unit || plain.find(limits.unit) != std::string::npos;
    add(fmt::format("{} {:g}{}", plain, value, *limits.unit && !unit_says_it ? unit : ""));
  }
  void number(const char* name, const entries::Number& value, entries::Limits limits) {
    if (value) number(name, *value, limits);
  }
  void count(const char* name, int value, entries::Limits limits) {
    number(name, static_cast<double>(value), limits);
  }
  void count(const char* name, const entries::Count& value, entries::Limits limits) {
    if (value) count(name, *value, limits);
  }
  void flag(const char* name, bool value) {
    if (std::string_view(name) == "queen")
      return add(value ? "queen seen" : "queen not seen");  // not: no queen
    add((value ? "" : "no ") + spaced(name));
  }
  void flag(const char* name, const entries::Flag& value) {
    if (value) flag(name, *value);
  }
  template <class E>
  void choice(const char* name, const E& value) {
    add(spaced(name) + " " + spaced(entries::word_for(value)));
  }
  template <class E>
  void choice(const char* name, const std::optional<E>& value) {
    if (value) choice(name, *value);
  }
  void date(const char* name, const std::optional<Date>& value) {
    if (value) add(spaced(name) + " " + value->iso());
  }
  template <class T>
  void ids(const char*, const std::vector<Id<T>>& value) {
    for (const Id<T>& one : value) add(one.text());
  }
  void words(const char*, const std::vector<std::string>& value) {
    for (const std::string& word : value) add(spaced(word));
  }

 private:
  template <class T>
  std::string name_of(const Id<T>& key) const {
    return key.text();
  }
  std::string name_of(const ColonyId& key) const {
    const auto at = state_.colonies.find(key);
    return at == state_.colonies.end() ? key.text() : at->second.began.name;
  }
  std::string name_of(const SiteId& key) const {
    const auto at = state_.sites.find(key);
    return at == state_.sites.end() ? key.text() : at->second.name;
  }
  static std::string unit_free(std::string_view name) {
    for (const std::string_view tail : {"_C", "_mm", "_m_s", "_h", "_deg"}) {
      if (name.size() > tail.size() && name.substr(name.size() - tail.size()) == tail) {
        return spaced(name.substr(0, name.size() - tail.size()));
      }
    }
    return spaced(name);
  }
  void add(const std::string& part) { told += (told.empty() ? "" : ", ") + part; }

  const book::State& state_;
};

}  // namespace

std::string read_back(const entries::Payload& payload, const book::State& state) {
  Teller visitor(state);
  entries::visit_fields_of(visitor, payload);
  return spaced(entries::kind_name(payload)) + ": " + visitor.told;
}

json shown_entry(const entries::Entry& entry, const book::State& state) {
  json shown{{"id", entry.id.text()},
             {"happened", entry.happened.iso()},
             {"kind", entries::kind_name(entry.payload)},
             {"text", read_back(entry.payload, state)},
             {"fields", json::parse(book::payload_json(entry.payload))}};
  if (entry.happened_hour) shown["happened_hour"] = *entry.happened_hour;
  if (!entry.who.empty()) shown["who"] = entry.who;
  if (!entry.device.empty()) shown["device"] = entry.device;
  if (entry.written.utc_ms > 0) shown["written"] = Instant{entry.written.utc_ms, 0}.rfc3339();
  if (entry.supersedes) shown["supersedes"] = entry.supersedes->text();
  return shown;
}

}  // namespace beegarth::garth
