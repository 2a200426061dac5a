#include "entries/read_back.hpp"

#include <algorithm>
#include <cstdlib>
#include <string_view>

#include "entries/fields.hpp"

namespace beegarth::entries {
namespace {

std::string spaced(std::string_view name) {
  std::string text(name);
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

// A field's name without its unit, which follows the number instead: "stores_kg" is "stores 12 kg".
std::string name_without_unit(std::string_view name) {
  for (const std::string_view ending :
       {"_m_s", "_W_K", "_deg", "_kg", "_mm", "_C", "_kg_per_day", "_pct", "_hours", "_days", "_h", "_m"}) {
    if (name.size() > ending.size() && name.substr(name.size() - ending.size()) == ending) {
      return spaced(name.substr(0, name.size() - ending.size()));
    }
  }
  return spaced(name);
}

class Teller {
 public:
  explicit Teller(std::string about) : about_(std::move(about)) {}
  std::string line;

  template <class T>
  void id(const char* name, const Id<T>& value, bool) {
    if (!value.empty() && value.text() != about_) add(spaced(name), value.text());
  }
  template <class T>
  void id(const char* name, const std::optional<Id<T>>& value) {
    if (value) id(name, *value, false);
  }
  void text(const char* name, const std::string& value, bool) { add(spaced(name), "\"" + value + "\""); }
  void text(const char* name, const Text& value) {
    if (value) text(name, *value, false);
  }
  void number(const char* name, const double& value, Limits limits) {
    const std::string unit = *limits.unit == '\0' ? "" : " " + std::string(limits.unit);
    const std::string shown = name_without_unit(name);
    const bool named_so = shown.find(limits.unit) != std::string::npos;  // "bees 300", not "bees 300 bees"
    add(shown, plain_number(value) + (named_so ? "" : unit));
  }
  void number(const char* name, const Number& value, Limits limits) {
    if (value) number(name, *value, limits);
  }
  void count(const char* name, const int& value, Limits limits) {
    const bool is_cells = std::string_view(limits.unit) == "cells";  // "charged cells 2" says it already
    number(name, static_cast<double>(value), is_cells ? Limits{limits.low, limits.high, ""} : limits);
  }
  void count(const char* name, const Count& value, Limits limits) {
    if (value) count(name, *value, limits);
  }
  void flag(const char* name, const bool& value) {
    if (value) add(spaced(name), "yes");
  }
  void flag(const char* name, const Flag& value) {
    if (value) add(spaced(name), *value ? "yes" : "no");
  }
  template <class E>
  void choice(const char* name, const E& value) {
    add(spaced(name), spaced(word_for(value)));
  }
  template <class E>
  void choice(const char* name, const std::optional<E>& value) {
    if (value) choice(name, *value);
  }
  void date(const char* name, const std::optional<Date>& value) {
    if (value) add(spaced(name), value->iso());
  }
  template <class T>
  void ids(const char* name, const std::vector<Id<T>>& value) {
    std::string list;
    for (const Id<T>& one : value) list += (list.empty() ? "" : " and ") + one.text();
    if (!list.empty()) add(spaced(name), list);
  }
  void words(const char* name, const std::vector<std::string>& value) {
    std::string list;
    for (const std::string& word : value) list += (list.empty() ? "" : " and ") + spaced(word);
    if (!list.empty()) add(spaced(name), list);
  }

 private:
  void add(const std::string& name, const std::string& value) {
    line += (line.empty() ? "" : ", ") + name + " " + value;
  }

  std::string about_;
};

std::string about(const Payload& payload) {
  if (const ColonyId colony = colony_of(payload); !colony.empty()) return colony.text();
  if (const HiveId hive = hive_of(payload); !hive.empty()) return hive.text();
  return site_of(payload).text();
}

}  // namespace

std::string plain_number(double value) {
  std::string text = std::to_string(value);
  text.erase(text.find_last_not_of('0') + 1);
  if (!text.empty() && text.back() == '.') text.pop_back();
  return text == "-0" ? "0" : text;
}

std::string read_back_fields(const Payload& payload) {
  Teller teller(about(payload));
  visit_fields_of(teller, payload);
  return teller.line;
}

std::string read_back(const Payload& payload) {
  const std::string whom = about(payload);
  const std::string fields = read_back_fields(payload);
  return spaced(kind_name(payload)) + (whom.empty() ? "" : ", " + whom) +
         (fields.empty() ? "" : ": " + fields);
}

}  // namespace beegarth::entries
