#include "garth/calc/calc.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <memory>
#include <utility>

namespace beegarth::garth {
namespace {

constexpr std::size_t most_input_bytes = 32 << 20;

bool all_finite(const Json& value) {
  if (value.is_number_float()) return std::isfinite(value.get<double>());
  if (!value.is_structured()) return true;
  return std::all_of(value.begin(), value.end(), [](const Json& part) { return all_finite(part); });
}

// The last bits of a sum: 99999.99999999999 is 100000. A figure that is short once it is rounded to twelve
// digits was that figure; any other keeps all of its own.
double without_noise(double value) {
  constexpr int digits = 12, short_digits = 9;
  std::array<char, 32> text{};
  const auto rounded = [&](int kept) {
    std::snprintf(text.data(), text.size(), "%.*e", kept - 1, value);
    return std::strtod(text.data(), nullptr);
  };
  const double fine = rounded(digits);
  return fine == rounded(short_digits) ? fine : value;
}
void take_out_noise(Json& value) {
  if (value.is_number_float()) value = without_noise(value.get<double>());
  if (!value.is_structured()) return;
  for (Json& part : value) take_out_noise(part);
}

// "-1", "0.5": without a fraction where there is none.
std::string plain(double value) {
  const bool whole = value == std::floor(value) && std::abs(value) < 1e15;
  return whole ? std::to_string(static_cast<long long>(value)) : Json(value).dump();
}

constexpr std::size_t longest_text = 500;

bool is_one_line(const std::string& text) {
  return std::none_of(text.begin(), text.end(),
                      [](unsigned char byte) { return byte < 0x20 || byte == 0x7f; });
}

std::string list_of(std::span<const std::string_view> choices) {
  std::string text;
  for (const std::string_view choice : choices) {
    if (!text.empty()) text += ", ";
    text += choice;
  }
  return text;
}

// nlohmann's parser keeps the last of two fields with one name; a question with two answers is refused
// instead.
class TwinFinder {
 public:
  bool operator()(int depth, Json::parse_event_t event, const Json& parsed) {
    const auto level = static_cast<std::size_t>(depth);
    if (event == Json::parse_event_t::object_start) {
      if (names_.size() <= level + 1) names_.resize(level + 2);
      names_[level + 1].clear();
    } else if (event == Json::parse_event_t::key) {
      auto& seen = names_[level];
      const std::string name = parsed.get<std::string>();
      if (std::find(seen.begin(), seen.end(), name) != seen.end() && twin.empty()) twin = name;
      seen.push_back(name);
    }
    return true;
  }
  std::string twin;

 private:
  std::vector<std::vector<std::string>> names_{1};
};

}  // namespace

Expected<Json> parse_json(std::string_view text, const std::string& where) {
  if (text.size() > most_input_bytes) return bad_input("the input is larger than 32 MB", where, "send less");
  auto twins = std::make_shared<TwinFinder>();
  try {
    Json parsed = Json::parse(text, [twins](int depth, Json::parse_event_t event, Json& value) {
      return (*twins)(depth, event, value);
    });
    if (!twins->twin.empty())
      return bad_input("the field '" + twins->twin + "' stands twice", where, "keep one");
    return parsed;
  } catch (const Json::parse_error& error) {
    return bad_input("not JSON at byte " + std::to_string(error.byte), where, "send one JSON value in UTF-8");
  } catch (const Json::exception&) {
    return bad_input("a number is larger than any that is counted with", where,
                     "send numbers from -1.8e308 to 1.8e308, and what each field takes, as its schema says");
  }
}

Expected<Json> run_calc(std::string_view name, std::string_view input_text, const Tables& tables) {
  const auto calcs = all_calcs();
  const auto calc = std::find_if(calcs.begin(), calcs.end(), [&](const Calc& c) { return c.name == name; });
  if (calc == calcs.end()) {
    return Problem{ProblemKind::wrong_use,
                   "there is no calc '" + std::string(name) + "'",
                   {},
                   "see beegarth calc --list"};
  }
  const auto input = parse_json(input_text, "$");
  if (!input) return input.problem();
  auto answer = calc->run(*input, tables);
  if (answer && !all_finite(*answer)) {
    return bad_input("the answer is not a finite number for this input", "$",
                     "bring the values into an everyday range");
  }
  if (answer) take_out_noise(*answer);
  return answer;
}

Reader::Reader(const Json& object, std::string path) : object_(object), path_(std::move(path)) {
  if (!object_.is_object()) fail(bad_input("not an object", path_, "give fields in { }"));
}

void Reader::fail(Problem problem) {
  if (!fault_) fault_ = std::move(problem);
}

std::string Reader::path_of(const char* field) const {
  return path_ + "." + field;
}
std::string Reader::path_of(const char* field, std::size_t index) const {
  return path_of(field) + "[" + std::to_string(index) + "]";
}

bool Reader::has(const char* field) const {
  return object_.is_object() && object_.contains(field) && !object_[field].is_null();
}

const Json* Reader::find(const char* field) {
  known_.emplace_back(field);
  if (fault_ || !has(field)) return nullptr;
  return &object_[field];
}

const Json* Reader::need(const char* field) {
  const Json* value = find(field);
  if (!value && !fault_) fail(bad_input("the field is missing", path_of(field), "give it"));
  return value;
}

std::optional<double> Reader::maybe_number(const char* field, double low, double high) {
  const Json* value = find(field);
  if (!value) return std::nullopt;
  if (!value->is_number()) {
    fail(bad_input("not a number", path_of(field), "give a number"));
    return std::nullopt;
  }
  const double number = value->get<double>();
  if (!(number >= low && number <= high)) {
    fail(bad_input(plain(number) + " is out of range", path_of(field),
                   "give " + plain(low) + " to " + plain(high)));
    return std::nullopt;
  }
  return number;
}

double Reader::number(const char* field, double low, double high) {
  if (!has(field)) need(field);
  return maybe_number(field, low, high).value_or(low);
}

double Reader::number_or(const char* field, double low, double high, double otherwise) {
  return maybe_number(field, low, high).value_or(otherwise);
}

std::optional<int> Reader::maybe_whole(const char* field, int low, int high) {
  const auto number = maybe_number(field, low, high);
  if (!number) return std::nullopt;
  if (*number != std::floor(*number)) {
    fail(bad_input(plain(*number) + " is not a whole number", path_of(field), "give a whole number"));
    return std::nullopt;
  }
  return static_cast<int>(*number);
}

int Reader::whole(const char* field, int low, int high) {
  if (!has(field)) need(field);
  return maybe_whole(field, low, high).value_or(low);
}

std::optional<std::string> Reader::maybe_choice_of(const char* field,
                                                   std::span<const std::string_view> choices) {
  const Json* value = find(field);
  if (!value) return std::nullopt;
  if (value->is_string()) {
    const auto& text = value->get_ref<const std::string&>();
    if (std::find(choices.begin(), choices.end(), text) != choices.end()) return text;
  }
  fail(bad_input("not one of the choices", path_of(field), "give one of " + list_of(choices)));
  return std::nullopt;
}

std::string Reader::choice_of(const char* field, std::span<const std::string_view> choices) {
  if (!has(field)) need(field);
  return maybe_choice_of(field, choices).value_or(std::string(choices.front()));
}

std::optional<std::string> Reader::maybe_choice(const char* field,
                                                std::initializer_list<std::string_view> choices) {
  return maybe_choice_of(field, {choices.begin(), choices.size()});
}

std::string Reader::choice(const char* field, std::initializer_list<std::string_view> choices) {
  return choice_of(field, {choices.begin(), choices.size()});
}

std::optional<bool> Reader::maybe_flag(const char* field) {
  const Json* value = find(field);
  if (!value) return std::nullopt;
  if (value->is_boolean()) return value->get<bool>();
  fail(bad_input("neither true nor false", path_of(field), "give true or false"));
  return std::nullopt;
}

std::optional<std::string> Reader::maybe_text(const char* field) {
  const Json* value = find(field);
  if (!value) return std::nullopt;
  if (!value->is_string() || value->get_ref<const std::string&>().size() > longest_text ||
      !is_one_line(value->get_ref<const std::string&>())) {
    fail(bad_input("not one line of text", path_of(field), "give at most 500 bytes in quotes"));
    return std::nullopt;
  }
  const auto& text = value->get_ref<const std::string&>();
  if (text.find_first_not_of(' ') == std::string::npos) return std::nullopt;
  return text;
}

std::string Reader::text(const char* field) {
  if (!has(field)) need(field);
  auto said = maybe_text(field);
  if (!said && has(field)) fail(bad_input("no text", path_of(field), "give some words in quotes"));
  return said.value_or("");
}

std::optional<Date> Reader::maybe_date(const char* field) {
  const Json* value = find(field);
  if (!value) return std::nullopt;
  if (!value->is_string()) {
    fail(bad_input("not a date", path_of(field), "write it like \"2026-06-05\""));
    return std::nullopt;
  }
  const auto date = Date::parse(value->get_ref<const std::string&>());
  if (date) return *date;
  fail(bad_input(date.problem().what, path_of(field), date.problem().remedy));
  return std::nullopt;
}

Date Reader::date(const char* field) {
  if (!has(field)) need(field);
  return maybe_date(field).value_or(Date{});
}

Instant Reader::instant(const char* field) {
  const Json* value = need(field);
  if (!value) return {};
  if (value->is_string()) {
    if (const auto instant = Instant::parse_rfc3339(value->get_ref<const std::string&>())) return *instant;
  }
  fail(bad_input("not an instant", path_of(field), "write it like \"2026-06-05T14:30:00+01:00\""));
  return {};
}

std::vector<Json> Reader::list(const char* field, std::size_t most) {
  const Json* value = need(field);
  if (!value) return {};
  if (!value->is_array() || value->empty()) {
    fail(bad_input("not a list with something in it", path_of(field), "give [ ... ]"));
    return {};
  }
  if (value->size() > most) {
    fail(bad_input("longer than " + std::to_string(most), path_of(field), "give fewer"));
    return {};
  }
  return {value->begin(), value->end()};
}

Json Reader::part(const char* field) {
  const Json* value = need(field);
  if (value && value->is_object()) return *value;
  if (value) fail(bad_input("not an object", path_of(field), "write it as {...}"));
  return Json::object();
}
std::vector<Json> Reader::maybe_list(const char* field, std::size_t most) {
  const Json* value = find(field);
  if (!value || (value->is_array() && value->empty())) return {};
  return list(field, most);
}

std::vector<std::string> Reader::maybe_texts(const char* field, std::size_t most) {
  std::vector<std::string> texts;
  const std::vector<Json> parts = maybe_list(field, most);
  for (std::size_t i = 0; i < parts.size(); ++i) {
    Reader part(Json{{"text", parts[i]}});
    auto text = part.maybe_text("text");
    if (!text) {
      fail(bad_input("not one line of text", path_of(field, i), "give some words in quotes"));
      return {};
    }
    texts.push_back(*std::move(text));
  }
  return texts;
}

std::optional<Problem> Reader::done() {
  if (fault_) return fault_;
  for (const auto& item : object_.items()) {
    if (std::find(known_.begin(), known_.end(), item.key()) == known_.end()) {
      return bad_input("there is no such field", path_ + "." + item.key(), "see --schema");
    }
  }
  return std::nullopt;
}

Json object_schema(Json properties, std::vector<std::string> required) {
  return {{"type", "object"},
          {"properties", std::move(properties)},
          {"required", std::move(required)},
          {"additionalProperties", false}};
}

Json number_schema(const char* description, double low, double high) {
  return {{"type", "number"}, {"description", description}, {"minimum", low}, {"maximum", high}};
}

Json text_schema(const char* description) {
  return {{"type", "string"}, {"description", description}};
}

Json flag_schema(const char* description) {
  return {{"type", "boolean"}, {"description", description}};
}

Json date_schema(const char* description) {
  return {{"type", "string"}, {"format", "date"}, {"description", description}};
}

Json choice_schema(const char* description, std::span<const std::string_view> choices) {
  return {{"enum", std::vector<std::string>(choices.begin(), choices.end())}, {"description", description}};
}

Json array_schema(Json items, std::size_t most) {
  return {{"type", "array"}, {"items", std::move(items)}, {"minItems", 1}, {"maxItems", most}};
}

}  // namespace beegarth::garth
