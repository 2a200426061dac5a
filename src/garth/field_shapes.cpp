#include "garth/field_shapes.hpp"

#include <cmath>
#include <limits>
#include <utility>

namespace beegarth::garth {
namespace {

using entries::Limits;

template <class E>
std::vector<std::string_view> words_of() {
  return {entries::Words<E>::list.begin(), entries::Words<E>::list.end()};
}

struct Lister {
  std::vector<FieldShape> found;

  template <class T>
  void id(const char* name, const Id<T>&, bool needed) {
    found.push_back({.name = name, .type = FieldType::id, .needed = needed});
  }
  template <class T>
  void id(const char* name, const std::optional<Id<T>>&) {
    found.push_back({.name = name, .type = FieldType::id});
  }
  void text(const char* name, const std::string&, bool needed) {
    found.push_back({.name = name, .needed = needed});
  }
  void text(const char* name, const entries::Text&) { found.push_back({.name = name}); }
  void number(const char* name, const double&, Limits limits) { add(name, FieldType::number, true, limits); }
  void number(const char* name, const entries::Number&, Limits limits) {
    add(name, FieldType::number, false, limits);
  }
  void count(const char* name, const int&, Limits limits) { add(name, FieldType::count, true, limits); }
  void count(const char* name, const entries::Count&, Limits limits) {
    add(name, FieldType::count, false, limits);
  }
  void flag(const char* name, const bool&) { found.push_back({.name = name, .type = FieldType::flag}); }
  void flag(const char* name, const entries::Flag&) {
    found.push_back({.name = name, .type = FieldType::flag});
  }
  template <class E>
  void choice(const char* name, const E&) {
    found.push_back({.name = name, .type = FieldType::choice, .needed = true, .choices = words_of<E>()});
  }
  template <class E>
  void choice(const char* name, const std::optional<E>&) {
    found.push_back({.name = name, .type = FieldType::choice, .choices = words_of<E>()});
  }
  void date(const char* name, const std::optional<Date>&) {
    found.push_back({.name = name, .type = FieldType::date});
  }
  template <class T>
  void ids(const char* name, const std::vector<Id<T>>&) {
    found.push_back({.name = name, .type = FieldType::words});
  }
  void words(const char* name, const std::vector<std::string>&) {
    found.push_back({.name = name,
                     .type = FieldType::words,
                     .choices = {entries::signs_of_health.begin(), entries::signs_of_health.end()}});
  }

 private:
  void add(const char* name, FieldType type, bool needed, Limits limits) {
    found.push_back({.name = name, .type = type, .needed = needed, .limits = limits});
  }
};

std::string list_of(const std::vector<std::string_view>& words) {
  std::string text;
  for (const std::string_view word : words) text += (text.empty() ? "" : ", ") + std::string(word);
  return text;
}

class Filler {
 public:
  Filler(std::string_view field, const FieldValue& value) : field_(field), value_(value) {}
  std::optional<Problem> fault;

  template <class T>
  void id(const char* name, Id<T>& target, bool) {
    if (const auto* text = wanted<std::string>(name, "a text")) target = Id<T>(*text);
  }
  template <class T>
  void id(const char* name, std::optional<Id<T>>& target) {
    if (const auto* text = wanted<std::string>(name, "a text")) target = Id<T>(*text);
  }
  void text(const char* name, std::string& target, bool) {
    if (const auto* text = wanted<std::string>(name, "a text")) target = *text;
  }
  void text(const char* name, entries::Text& target) {
    if (const auto* text = wanted<std::string>(name, "a text")) target = *text;
  }
  template <class N>  // double or Number
  void number(const char* name, N& target, Limits) {
    if (const auto* number = wanted<double>(name, "a number")) target = *number;
  }
  template <class N>  // int or Count
  void count(const char* name, N& target, Limits) {
    const auto* number = wanted<double>(name, "a whole number");
    if (!number) return;
    if (*number != std::trunc(*number))
      return say("takes a whole number", "add round = true if rounding is meant");
    if (std::abs(*number) > std::numeric_limits<int>::max())
      return say("is far too large", "check the column and its unit");
    target = static_cast<int>(*number);
  }
  template <class F>  // bool or Flag
  void flag(const char* name, F& target) {
    if (const auto* flag = wanted<bool>(name, "true or false")) target = *flag;
  }
  template <class E>
  void choice(const char* name, E& target) {
    if (const auto chosen = word_of<E>(name)) target = *chosen;
  }
  template <class E>
  void choice(const char* name, std::optional<E>& target) {
    if (const auto chosen = word_of<E>(name)) target = chosen;
  }
  void date(const char* name, std::optional<Date>& target) {
    if (const auto* date = wanted<Date>(name, "a date")) target = *date;
  }
  template <class T>
  void ids(const char* name, std::vector<Id<T>>& target) {
    const auto* words = wanted<std::vector<std::string>>(name, "a list of texts");
    if (!words) return;
    target.clear();
    for (const std::string& word : *words) target.emplace_back(word);
  }
  void words(const char* name, std::vector<std::string>& target) {
    if (const auto* words = wanted<std::vector<std::string>>(name, "a list of texts")) target = *words;
  }

 private:
  void say(const std::string& what, const std::string& remedy) {
    fault = bad_input(std::string(field_) + " " + what, {}, remedy);
  }

  template <class T>
  const T* wanted(const char* name, const char* described) {
    if (name != field_) return nullptr;
    const auto* value = std::get_if<T>(&value_);
    if (!value) say(std::string("takes ") + described, "check the value");
    return value;
  }

  template <class E>
  std::optional<E> word_of(const char* name) {
    const auto* text = wanted<std::string>(name, "one of its words");
    if (!text) return std::nullopt;
    const auto& list = entries::Words<E>::list;
    for (std::size_t i = 0; i < list.size(); ++i) {
      if (list[i] == *text) return static_cast<E>(i);
    }
    say("has no choice '" + text->substr(0, 60) + "'", "use one of " + list_of(words_of<E>()));
    return std::nullopt;
  }

  std::string_view field_;
  const FieldValue& value_;
};

}  // namespace

std::vector<FieldShape> field_shapes(const entries::Payload& payload) {
  Lister lister;
  entries::visit_fields_of(lister, payload);
  return std::move(lister.found);
}

Outcome fill_field(entries::Payload& payload, std::string_view field, const FieldValue& value) {
  Filler filler(field, value);
  entries::visit_fields_of(filler, payload);
  if (filler.fault) return *std::move(filler.fault);
  return Done{};
}

}  // namespace beegarth::garth
