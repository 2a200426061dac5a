#include "base/fact_table.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace beegarth {
namespace {

bool is_blank(const std::string& text) {
  return std::all_of(text.begin(), text.end(), [](unsigned char c) { return c == ' ' || c == '\t'; });
}

bool is_words(const FactRow& row) {
  return row.unit == "text";
}

std::optional<Problem> fault_of_kind(const FactRow& row, const std::string& where) {
  if (!is_words(row) && !row.text.empty())
    return bad_input("the row has words and the unit of a number", where, "make the unit \"text\"");
  if (is_words(row) && is_blank(row.text)) return bad_input("the row has no text", where, "say it in words");
  if (is_words(row) && (row.value != 0 || row.low || row.high))
    return bad_input("the row has words and a number", where, "keep one");
  if (row.unit == "yes/no" && row.value != 0 && row.value != 1)
    return bad_input("the value is neither yes nor no", where, "give 1 for yes or 0 for no");
  return std::nullopt;
}

std::optional<Problem> fault_of(const std::string& name, const FactRow& row) {
  const std::string where = name + ": row '" + row.key + "'";
  if (is_blank(row.key)) return bad_input("a row has no key", name, "name the fact");
  if (is_blank(row.source))
    return bad_input("the row has no source", where, "say where the value comes from");
  if (is_blank(row.unit))
    return bad_input("the row has no unit", where, "give a unit, or \"1\" where there is none");
  if (!std::isfinite(row.value)) return bad_input("the value is not a finite number", where, "give a number");
  if (row.low.has_value() != row.high.has_value()) {
    return bad_input("the range has only one end", where, "give both low and high, or neither");
  }
  if (row.low && !(*row.low <= row.value && row.value <= *row.high)) {
    return bad_input("the value lies outside its range", where, "make low <= value <= high");
  }
  return fault_of_kind(row, where);
}

}  // namespace

Expected<FactTable> FactTable::check(std::string name, std::vector<FactRow> rows) {
  for (const FactRow& row : rows) {
    if (auto fault = fault_of(name, row)) return *std::move(fault);
  }
  std::sort(rows.begin(), rows.end(), [](const FactRow& a, const FactRow& b) { return a.key < b.key; });
  const auto twin = std::adjacent_find(rows.begin(), rows.end(),
                                       [](const FactRow& a, const FactRow& b) { return a.key == b.key; });
  if (twin != rows.end())
    return bad_input("the row stands twice", name + ": row '" + twin->key + "'", "keep one");
  FactTable table;
  table.name_ = std::move(name);
  table.rows_ = std::move(rows);
  return table;
}

const FactRow* FactTable::find(std::string_view key) const {
  const auto at =
      std::lower_bound(rows_.begin(), rows_.end(), key,
                       [](const FactRow& row, std::string_view wanted) { return row.key < wanted; });
  return at != rows_.end() && at->key == key ? &*at : nullptr;
}

Expected<double> FactTable::value(std::string_view key) const {
  const FactRow* row = find(key);
  if (!row) return bad_input("there is no row '" + std::string(key) + "'", name_, "add it with a source");
  if (is_words(*row))
    return bad_input("the row '" + std::string(key) + "' is words and no number", name_, "give a number");
  return row->value;
}

Expected<std::string> FactTable::words(std::string_view key) const {
  const FactRow* row = find(key);
  if (!row) return bad_input("there is no row '" + std::string(key) + "'", name_, "add it with a source");
  if (!is_words(*row))
    return bad_input("the row '" + std::string(key) + "' is a number and no words", name_,
                     "make its unit \"text\"");
  return row->text;
}

Expected<FactTable> FactTable::with(std::span<const FactRow> overrides) const {
  std::vector<FactRow> rows = rows_;
  for (const FactRow& row : overrides) {
    const auto same =
        std::find_if(rows.begin(), rows.end(), [&](const FactRow& r) { return r.key == row.key; });
    if (same != rows.end()) {
      *same = row;
    } else {
      rows.push_back(row);
    }
  }
  return check(name_, std::move(rows));
}

}  // namespace beegarth
