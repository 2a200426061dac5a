// Payloads drawn at random through the one list of fields, for laws that must hold of every entry.
#pragma once

#include <rapidcheck.h>

#include <cmath>
#include <string>
#include <string_view>
#include <vector>

#include "entries/entry.hpp"
#include "entries/fields.hpp"

namespace beegarth::book {

inline std::string random_text() {
  static const std::vector<std::string> pieces = {"a",  "B", "7", " ", "\"", "\\", "/", "\n",
                                                  "\t", "é", "€", "😀", "ﬀ",  "{",  ",", "\r"};
  std::string text = "x";  // texts that must be there are not empty
  for (const std::string& piece : *rc::gen::container<std::vector<std::string>>(rc::gen::elementOf(pieces)))
    text += piece;
  return text.substr(0, 1) + (text.size() > 90 ? "" : text.substr(1));
}

struct Filler {
  static bool said() { return *rc::gen::arbitrary<bool>(); }
  static double within(entries::Limits limits) {
    const double share = *rc::gen::inRange(0, 1'000'001) / 1e6;
    return std::min(limits.high, std::max(limits.low, limits.low + share * (limits.high - limits.low)));
  }
  template <class T>
  void id(const char*, Id<T>& value, bool) {
    value = Id<T>(random_text());
  }
  template <class T>
  void id(const char*, std::optional<Id<T>>& value) {
    if (said()) value = Id<T>(random_text());
  }
  void text(const char* name, std::string& value, bool) {
    value = std::string_view(name) == "sha256" ? std::string(64, said() ? 'a' : '7') : random_text();
  }
  void text(const char*, entries::Text& value) {
    if (said()) value = random_text();
  }
  void number(const char*, double& value, entries::Limits limits) { value = within(limits); }
  void number(const char*, entries::Number& value, entries::Limits limits) {
    if (said()) value = within(limits);
  }
  void count(const char*, int& value, entries::Limits limits) {
    value = static_cast<int>(std::ceil(within(limits)));
  }
  void count(const char* name, entries::Count& value, entries::Limits limits) {
    if (said()) count(name, value.emplace(), limits);
  }
  void flag(const char*, bool& value) { value = said(); }
  void flag(const char*, entries::Flag& value) {
    if (said()) value = said();
  }
  template <class E>
  void choice(const char*, E& value) {
    value = static_cast<E>(*rc::gen::inRange(0, static_cast<int>(entries::Words<E>::list.size())));
  }
  template <class E>
  void choice(const char* name, std::optional<E>& value) {
    if (said()) choice(name, value.emplace());
  }
  void date(const char*, std::optional<Date>& value) {
    if (said()) value = Date::from_day_number(*rc::gen::inRange(0, 40000));
  }
  template <class T>
  void ids(const char*, std::vector<Id<T>>& value) {
    while (said()) value.emplace_back(random_text());
  }
  void words(const char*, std::vector<std::string>& value) {
    if (said())
      value = {std::string(entries::signs_of_health[static_cast<std::size_t>(
          *rc::gen::inRange(0, static_cast<int>(entries::signs_of_health.size())))])};
  }
};

// Any payload that keeps the rules between fields; `removed` is left to tests that have something to remove.
inline entries::Payload random_payload() {
  for (;;) {
    const auto kind = static_cast<std::size_t>(*rc::gen::inRange(0, static_cast<int>(entries::kind_count)));
    entries::Payload payload = *entries::empty_payload(entries::kind_name_at(kind));
    if (std::holds_alternative<entries::Removed>(payload)) continue;  // it must name an entry that is there
    Filler filler;
    entries::visit_fields_of(filler, payload);
    if (entries::validate(payload)) return payload;
  }
}

}  // namespace beegarth::book
