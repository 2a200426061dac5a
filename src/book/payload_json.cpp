// Payloads to JSON and back, both by a visit to the one list of fields.
#include <algorithm>
#include <cmath>
#include <limits>
#include <stdexcept>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

#include "base/utf8.hpp"
#include "book/book.hpp"
#include "book/canonical.hpp"
#include "book/json_entry.hpp"
#include "entries/fields.hpp"

namespace beegarth::book {
namespace {

using nlohmann::json;

// Fills a JSON object; what was not said is left out.
struct Writer {
  json& out;

  void put(const char* name, const double& value) { out[name] = value; }
  void put(const char* name, const int& value) { out[name] = value; }
  void put(const char* name, const bool& value) { out[name] = value; }
  void put(const char* name, const std::string& value) { out[name] = value; }
  void put(const char* name, const Date& value) { out[name] = value.iso(); }
  template <class T>
  void put(const char* name, const Id<T>& value) {
    out[name] = value.text();
  }
  template <class T>
  void put(const char* name, const std::optional<T>& value) {
    if (value) put(name, *value);
  }

  template <class T>
  void id(const char* name, const T& value, bool = true) {
    put(name, value);
  }
  template <class T>
  void text(const char* name, const T& value, bool = true) {
    put(name, value);
  }
  template <class T>
  void number(const char* name, const T& value, entries::Limits) {
    put(name, value);
  }
  template <class T>
  void count(const char* name, const T& value, entries::Limits) {
    put(name, value);
  }
  template <class T>
  void flag(const char* name, const T& value) {
    put(name, value);
  }
  void date(const char* name, const std::optional<Date>& value) { put(name, value); }
  template <class E>
  void choice(const char* name, const E& value) {
    out[name] = std::string(entries::word_for(value));
  }
  template <class E>
  void choice(const char* name, const std::optional<E>& value) {
    if (value) choice(name, *value);
  }
  void words(const char* name, const std::vector<std::string>& value) {
    if (!value.empty()) out[name] = value;
  }
  template <class T>
  void ids(const char* name, const std::vector<Id<T>>& value) {
    for (const Id<T>& one : value) out[name].push_back(one.text());
  }
};

// Fills a payload from a JSON object and notes the first thing that is wrong.
class Reader {
 public:
  Reader(const json& object, const std::string& where) : object_(object), where_(where) {}

  template <class T>
  void id(const char* name, Id<T>& value, bool required) {
    std::string text;
    take_text(name, text, required);
    value = Id<T>(std::move(text));
  }
  template <class T>
  void id(const char* name, std::optional<Id<T>>& value) {
    if (std::string text; take_text(name, text, false)) value = Id<T>(std::move(text));
  }
  void text(const char* name, std::string& value, bool required) { take_text(name, value, required); }
  void text(const char* name, entries::Text& value) {
    if (std::string said; take_text(name, said, false)) value = std::move(said);
  }
  void number(const char* name, double& value, entries::Limits) {
    if (const json* said = find(name, true)) take_number(name, *said, value);
  }
  void number(const char* name, entries::Number& value, entries::Limits) {
    if (const json* said = find(name, false)) take_number(name, *said, value.emplace());
  }
  void count(const char* name, int& value, entries::Limits limits) {
    if (const json* said = find(name, true)) take_count(name, *said, value, limits);
  }
  void count(const char* name, entries::Count& value, entries::Limits limits) {
    if (const json* said = find(name, false)) take_count(name, *said, value.emplace(), limits);
  }
  void flag(const char* name, bool& value) {  // absent means the usual: no
    if (const json* said = find(name, false)) take_flag(name, *said, value);
  }
  void flag(const char* name, entries::Flag& value) {
    if (const json* said = find(name, false)) take_flag(name, *said, value.emplace());
  }
  template <class E>
  void choice(const char* name, E& value) {
    if (std::string word; take_text(name, word, true)) take_choice(name, word, value);
  }
  template <class E>
  void choice(const char* name, std::optional<E>& value) {
    if (std::string word; take_text(name, word, false)) take_choice(name, word, value.emplace());
  }
  void date(const char* name, std::optional<Date>& value) {
    std::string text;
    if (!take_text(name, text, false)) return;
    const auto date = Date::parse(text);
    if (!date) return say(name, "is no date", "write it as 2026-06-05");
    value = *date;
  }
  template <class T>
  void ids(const char* name, std::vector<Id<T>>& value) {
    std::vector<std::string> keys;
    words(name, keys);
    for (std::string& key : keys) value.emplace_back(std::move(key));
  }
  void words(const char* name, std::vector<std::string>& value) {
    const json* said = find(name, false);
    if (!said) return;
    if (!said->is_array()) return say(name, "is not a list", "write [\"...\"]");
    for (const json& word : *said) {
      if (!word.is_string()) return say(name, "holds something that is not text", "write words in quotes");
      value.push_back(word.get<std::string>());
    }
  }

  std::optional<Problem> fault(std::string_view kind) const {
    if (fault_) return fault_;
    for (auto member = object_.begin(); member != object_.end(); ++member) {
      if (std::find(known_.begin(), known_.end(), member.key()) == known_.end()) {
        return bad_input(std::string(kind) + " has no field '" + member.key() + "'", where_,
                         "see the schema of this kind");
      }
    }
    return std::nullopt;
  }

 private:
  const json* find(const char* name, bool required) {
    known_.emplace_back(name);
    const auto member = object_.find(name);
    if (member != object_.end() && !member->is_null()) return &*member;
    if (required) say(name, "is missing", "give it");
    return nullptr;
  }
  bool take_text(const char* name, std::string& value, bool required) {
    const json* said = find(name, required);
    if (!said) return false;
    if (!said->is_string()) return say(name, "is not text", "write it in quotes"), false;
    value = said->get<std::string>();
    return true;
  }
  void take_number(const char* name, const json& said, double& value) {
    if (!said.is_number()) return say(name, "is not a number", "write a number without quotes");
    value = said.get<double>();
  }
  void take_count(const char* name, const json& said, int& value, const entries::Limits& limits) {
    if (!said.is_number()) return say(name, "is not a whole number", "write a number without quotes");
    const double number = said.get<double>();
    if (number != std::floor(number)) return say(name, "is not a whole number", "give a whole number");
    if (std::fabs(number) > std::numeric_limits<int>::max())
      return say(name, "is out of range",
                 "give " + std::to_string(std::lround(limits.low)) + " to " +
                     std::to_string(std::lround(limits.high)));
    value = static_cast<int>(number);
  }
  void take_flag(const char* name, const json& said, bool& value) {
    if (!said.is_boolean()) return say(name, "is neither true nor false", "write true or false");
    value = said.get<bool>();
  }
  template <class E>
  void take_choice(const char* name, const std::string& word, E& value) {
    const auto& list = entries::Words<E>::list;
    std::string all;
    for (std::size_t i = 0; i < list.size(); ++i) {
      if (list[i] == word) {
        value = static_cast<E>(i);
        return;
      }
      all += (i == 0 ? "" : ", ") + std::string(list[i]);
    }
    say(name, "has no choice '" + word + "'", "use one of: " + all);
  }
  void say(const char* name, const std::string& what, const std::string& remedy) {
    if (!fault_) fault_ = bad_input(std::string(name) + " " + what, where_.empty() ? name : where_, remedy);
  }

  const json& object_;
  const std::string& where_;
  std::vector<std::string_view> known_;
  std::optional<Problem> fault_;
};

}  // namespace

json json_of(const entries::Payload& payload) {
  json out = json::object();
  Writer writer{out};
  entries::visit_fields_of(writer, payload);
  return out;
}

std::string payload_json(const entries::Payload& payload) {
  return canonical(json_of(payload));
}

Expected<entries::Payload> payload_from(std::string_view kind, const json& object, const std::string& where) {
  auto payload = entries::empty_payload(kind);
  if (!payload)
    return bad_input("there is no kind '" + std::string(kind) + "'", where, "see the list of kinds");
  if (!object.is_object()) return bad_input("the payload is not a JSON object", where, "write it as {...}");
  Reader reader(object, where);
  entries::visit_fields_of(reader, *payload);
  if (auto fault = reader.fault(kind)) return *std::move(fault);
  if (const auto valid = entries::validate(*payload); !valid) {
    Problem problem = valid.problem();
    if (!where.empty()) problem.where = where;
    return problem;
  }
  return *std::move(payload);
}

Expected<entries::Payload> payload_from_json(std::string_view kind, std::string_view text,
                                             const std::string& where) {
  const auto object = parse_strict(text, where);
  if (!object) return object.problem();
  return payload_from(kind, *object, where);
}

Outcome check_utf8(const entries::Payload& payload) {
  const json object = json_of(payload);
  for (auto member = object.begin(); member != object.end(); ++member) {
    if (!member->is_string()) continue;
    const auto bad = first_bad_utf8(member->get_ref<const std::string&>());
    if (bad)
      return bad_input(member.key() + " is not UTF-8 at byte " + std::to_string(*bad + 1), member.key(),
                       "write it as UTF-8");
  }
  return Done{};
}

}  // namespace beegarth::book
