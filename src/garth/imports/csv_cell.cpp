#include "garth/imports/csv_cell.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <utility>

#include "garth/imports/unit_names.hpp"

namespace beegarth::garth {
namespace {

constexpr auto months =
    std::to_array<std::string_view>({"january", "february", "march", "april", "may", "june", "july", "august",
                                     "september", "october", "november", "december"});

std::string column_name(std::string_view column) {
  return "column '" + std::string(column) + "'";
}
std::string shown(std::string_view text) {
  return "'" + std::string(text.substr(0, 40)) + "'";
}

char lower(char c) {
  return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}
std::string lower(std::string_view text) {
  std::string out(text);
  std::transform(out.begin(), out.end(), out.begin(), [](char c) { return lower(c); });
  return out;
}

bool is_digit(char c) {
  return c >= '0' && c <= '9';
}

// ---- dates ----
struct DateParts {
  std::optional<int> year;
  int month = 0;
  int day = 0;
};

std::optional<int> take_digits(std::string_view text, std::size_t& at, std::size_t fewest, std::size_t most) {
  int value = 0;
  const std::size_t first = at;
  while (at < text.size() && at - first < most && is_digit(text[at])) value = value * 10 + (text[at++] - '0');
  if (at - first < fewest) return std::nullopt;
  return value;
}

std::optional<int> take_month(std::string_view text, std::size_t& at, bool whole_name) {
  const std::string rest = lower(text.substr(at));
  for (std::size_t i = 0; i < months.size(); ++i) {
    const std::string_view name = whole_name ? months[i] : months[i].substr(0, 3);
    if (rest.compare(0, name.size(), name) != 0) continue;
    at += name.size();
    return static_cast<int>(i) + 1;
  }
  return std::nullopt;
}

std::optional<DateParts> match_format(std::string_view text, std::string_view format) {
  DateParts parts;
  std::size_t at = 0;
  for (std::size_t f = 0; f < format.size(); ++f) {
    if (format[f] != '%' || f + 1 == format.size()) {
      if (at == text.size() || text[at] != format[f]) return std::nullopt;
      ++at;
      continue;
    }
    const char mark = format[++f];
    std::optional<int> part;
    if (mark == 'Y') parts.year = part = take_digits(text, at, 4, 4);
    if (mark == 'y') {
      part = take_digits(text, at, 2, 2);
      if (part) parts.year = *part < 69 ? 2000 + *part : 1900 + *part;  // POSIX strptime
    }
    if (mark == 'm') part = take_digits(text, at, 1, 2);
    if (mark == 'b' || mark == 'B') part = take_month(text, at, mark == 'B');
    if (mark == 'm' || mark == 'b' || mark == 'B') parts.month = part.value_or(0);
    if (mark == 'd') {
      part = take_digits(text, at, 1, 2);
      parts.day = part.value_or(0);
    }
    if (!part) return std::nullopt;
  }
  if (at != text.size()) return std::nullopt;
  return parts;
}

std::optional<Date> date_from(const DateParts& parts, const DateRule& rule) {
  if (parts.year) return Date::from_ymd(*parts.year, parts.month, parts.day);
  if (!rule.year) return std::nullopt;
  const int year = *rule.year + (parts.month < rule.first_month ? 1 : 0);
  return Date::from_ymd(year, parts.month, parts.day);
}

Problem not_a_date(std::string_view text, std::string_view column, const DateRule& rule) {
  std::string formats;
  for (const std::string& format : rule.formats) formats += (formats.empty() ? "" : " or ") + format;
  return bad_input(shown(text) + " is no date like " + formats, column_name(column),
                   "mend the cell or the format in the map");
}

Expected<std::optional<Date>> date_of_three(const DateRule& rule, const CellText& cell) {
  std::array<int, 3> parts{};
  for (std::size_t i = 0; i < parts.size(); ++i) {
    const auto text = cell(rule.columns[i]);
    if (!text) return std::optional<Date>();
    std::size_t at = 0;
    const auto number = take_digits(*text, at, 1, 4);
    if (!number || at != text->size()) {
      return bad_input(shown(*text) + " is no part of a date", column_name(rule.columns[i]), "mend the cell");
    }
    parts[i] = *number;
  }
  const auto date = Date::from_ymd(parts[0], parts[1], parts[2]);
  if (!date) {
    return bad_input("there is no day " + std::to_string(parts[0]) + "-" + std::to_string(parts[1]) + "-" +
                         std::to_string(parts[2]),
                     column_name(rule.columns[2]), "mend the cells");
  }
  return std::optional<Date>(*date);
}

// ---- values ----
std::optional<bool> flag_in(std::string_view text) {
  const std::string word = lower(text);
  if (word == "true" || word == "yes" || word == "y" || word == "1") return true;
  if (word == "false" || word == "no" || word == "n" || word == "0") return false;
  return std::nullopt;
}

std::vector<std::string> words_in(std::string_view text) {
  std::vector<std::string> words;
  for (std::size_t at = 0; at < text.size();) {
    const std::size_t end = std::min(text.find(' ', at), text.size());
    if (end > at) words.emplace_back(text.substr(at, end - at));
    at = end + 1;
  }
  return words;
}

// nullopt where one of the columns is missing.
Expected<std::optional<double>> total_of(const FieldRule& rule, const CellText& cell, char decimal) {
  double total = 0;
  for (const auto* columns : {&rule.add, &rule.subtract}) {
    for (const std::string& column : *columns) {
      const auto text = cell(column);
      if (!text) return std::optional<double>();
      const auto number = number_in(*text, decimal);
      if (!number)
        return bad_input(shown(*text) + " is not a number", column_name(column),
                         "mend the cell or name it in missing");
      total += columns == &rule.add ? *number : -*number;
    }
  }
  return std::optional<double>(total);
}

Expected<std::optional<FieldValue>> read_number(const FieldRule& rule, const FieldShape& shape,
                                                const CellText& cell, char decimal) {
  const auto total = total_of(rule, cell, decimal);
  if (!total) return total.problem();
  if (!total->has_value()) return std::optional<FieldValue>();
  double value = **total * rule.scale;
  if (!rule.unit.empty()) {
    if (const auto change = unit_change(rule.unit, shape.limits)) value = change->apply(value);
  }
  if (rule.round) value = std::round(value);
  return std::optional<FieldValue>(value);
}

Expected<std::optional<FieldValue>> read_text(const FieldRule& rule, const FieldShape& shape,
                                              std::string_view text) {
  const auto value = [](auto held) { return std::optional<FieldValue>(std::move(held)); };
  switch (shape.type) {
    case FieldType::flag:
      if (const auto flag = flag_in(text)) return value(*flag);
      return bad_input(shown(text) + " is neither yes nor no", column_name(rule.add.front()),
                       "give the entry a map for it");
    case FieldType::date: {
      const auto date = Date::parse(text);
      if (date) return value(*date);
      return bad_input(date.problem().what, column_name(rule.add.front()), date.problem().remedy);
    }
    case FieldType::words:
      return value(words_in(text));
    default: {
      const std::string whole = rule.prefix + std::string(text) + rule.suffix;
      return value(rule.as_key ? key_from(whole) : whole);
    }
  }
}

FieldValue value_of(const Constant& constant, FieldType type) {
  if (type == FieldType::date && std::holds_alternative<std::string>(constant)) {
    if (const auto date = Date::parse(std::get<std::string>(constant))) return *date;
  }
  return std::visit([](const auto& held) { return FieldValue(held); }, constant);
}

}  // namespace

std::string_view without_blanks(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::optional<double> number_in(std::string_view text, char decimal) {
  std::string plain(text);
  if (decimal != '.') {
    if (plain.find('.') != std::string::npos) return std::nullopt;
    std::replace(plain.begin(), plain.end(), decimal, '.');
  }
  if (plain.size() > 1 && plain[0] == '+' && plain[1] != '-') plain.erase(0, 1);
  double value = 0;
  const auto [end, error] = std::from_chars(plain.data(), plain.data() + plain.size(), value);
  if (error != std::errc() || end != plain.data() + plain.size() || !std::isfinite(value))
    return std::nullopt;
  return value;
}

std::string key_from(std::string_view shown_name) {
  std::string key;
  for (const char c : shown_name) {
    const bool kept =
        is_digit(c) || (lower(c) >= 'a' && lower(c) <= 'z') || static_cast<unsigned char>(c) >= 0x80;
    if (kept) {
      key.push_back(lower(c));
    } else if (!key.empty() && key.back() != '-') {
      key.push_back('-');
    }
  }
  while (!key.empty() && key.back() == '-') key.pop_back();
  return key;
}

Expected<std::optional<FieldValue>> read_cells(const FieldRule& rule, const FieldShape& shape,
                                               const CellText& cell, char decimal) {
  if (rule.constant) return std::optional<FieldValue>(value_of(*rule.constant, shape.type));
  if (rule.translate.empty() && (shape.type == FieldType::number || shape.type == FieldType::count)) {
    return read_number(rule, shape, cell, decimal);
  }
  const std::string& column = rule.add.front();
  const auto text = cell(column);
  if (!text) return std::optional<FieldValue>();
  if (rule.translate.empty()) return read_text(rule, shape, *text);
  const auto found = rule.translate.find(std::string(*text));
  if (found != rule.translate.end()) return std::optional<FieldValue>(value_of(found->second, shape.type));
  if (rule.others_missing) return std::optional<FieldValue>();
  return bad_input("the map does not translate " + shown(*text), column_name(column),
                   "add it to the map of " + rule.field + ", or others_missing = true");
}

Expected<std::optional<Date>> read_date_cells(const DateRule& rule, const CellText& cell) {
  if (rule.constant) return rule.constant;
  if (rule.columns.size() == 3) return date_of_three(rule, cell);
  const std::string& column = rule.columns.front();
  const auto text = cell(column);
  if (!text) return std::optional<Date>();
  for (const std::string& format : rule.formats) {
    const auto parts = match_format(*text, format);
    if (!parts) continue;
    const auto date = date_from(*parts, rule);
    if (!date) return bad_input("there is no day " + shown(*text), column_name(column), "mend the cell");
    return std::optional<Date>(*date + rule.plus_days);
  }
  return not_a_date(*text, column, rule);
}

bool holds(const RowTest& test, const CellText& cell, char decimal) {
  const auto text = cell(test.column);
  if (test.when_missing) return !text;
  if (!text) return false;
  return std::any_of(test.equals.begin(), test.equals.end(), [&](const Constant& wanted) {
    if (const auto* word = std::get_if<std::string>(&wanted)) return *word == *text;
    if (const auto* number = std::get_if<double>(&wanted)) {
      const auto value = number_in(*text, decimal);
      return value && *value == *number;
    }
    return false;
  });
}

}  // namespace beegarth::garth
