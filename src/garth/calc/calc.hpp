// Every pure computation on its own: JSON in, JSON out, with a schema for both.
// One file per calc entry beside this one; all.cpp lists them.
#pragma once

#include <initializer_list>
#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "base/fact_table.hpp"

namespace beegarth::garth {

using Json = nlohmann::json;

// The tables that a computation may look facts up in, by file name without ".toml".
class Tables;

struct Calc {
  std::string_view name;
  std::string_view summary;  // one line
  Json (*input_schema)();
  Json (*output_schema)();
  Json (*example)();  // an input that works, shown by --help and run by the tests
  Expected<Json> (*run)(const Json& input, const Tables& tables);
};

std::span<const Calc> all_calcs();

// Parses, refuses unknown fields, runs, and refuses an answer that holds a number that is not finite (a bug).
// What is an exact figure but for the last bits of a double is that figure.
Expected<Json> run_calc(std::string_view name, std::string_view input_text, const Tables& tables);

// One JSON value; two fields of one name, and numbers that do not fit a double, are refused.
Expected<Json> parse_json(std::string_view text, const std::string& where);

// Reads fields of one JSON object with the JSON path in every problem. Each call names a known field; `done`
// refuses the rest. After the first fault every later read is a no-op, so a run can read all and check once.
class Reader {
 public:
  explicit Reader(const Json& object, std::string path = "$");

  double number(const char* field, double low, double high);
  std::optional<double> maybe_number(const char* field, double low, double high);
  double number_or(const char* field, double low, double high, double otherwise);
  int whole(const char* field, int low, int high);
  std::optional<int> maybe_whole(const char* field, int low, int high);
  std::string choice(const char* field, std::initializer_list<std::string_view> choices);
  std::optional<std::string> maybe_choice(const char* field, std::initializer_list<std::string_view> choices);
  std::string choice_of(const char* field, std::span<const std::string_view> choices);
  std::optional<std::string> maybe_choice_of(const char* field, std::span<const std::string_view> choices);
  bool flag(const char* field) { return maybe_flag(field).value_or(false); }
  std::optional<bool> maybe_flag(const char* field);
  std::optional<std::string> maybe_text(const char* field);  // one line; nothing where it is blank
  std::string text(const char* field);                       // as maybe_text, and there
  bool yes_or(const char* field, bool otherwise) { return maybe_flag(field).value_or(otherwise); }
  Date date(const char* field);
  std::optional<Date> maybe_date(const char* field);
  Instant instant(const char* field);
  bool has(const char* field) const;
  // An array of 1..most elements; empty after a fault.
  std::vector<Json> list(const char* field, std::size_t most);
  std::vector<Json> maybe_list(const char* field, std::size_t most);  // may be absent or empty
  Json part(
      const char* field);  // an object in the object; read it with a Reader of its own and path_of(field)
  std::vector<std::string> maybe_texts(const char* field, std::size_t most);
  std::string path_of(const char* field) const;
  std::string path_of(const char* field, std::size_t index) const;

  void fail(Problem problem);     // keeps the first
  std::optional<Problem> done();  // the first fault, or an unknown field; call last

 private:
  const Json* find(const char* field);  // marks the field as known
  const Json* need(const char* field);
  Json object_;
  std::string path_;
  std::vector<std::string> known_;
  std::optional<Problem> fault_;
};

// Shorthand for schemas.
Json object_schema(Json properties, std::vector<std::string> required);
Json number_schema(const char* description, double low, double high);
Json array_schema(Json items, std::size_t most);
Json text_schema(const char* description);
Json flag_schema(const char* description);
Json date_schema(const char* description);
Json choice_schema(const char* description, std::span<const std::string_view> choices);

}  // namespace beegarth::garth
