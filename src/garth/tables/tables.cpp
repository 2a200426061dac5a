#include "garth/tables/tables.hpp"

#include <stdexcept>
#include <utility>
#include <vector>

#include "garth/embedded.hpp"
#include "garth/tables/parse_toml.hpp"

namespace beegarth::garth {
namespace {

constexpr std::string_view folder = "tables/";
constexpr std::string_view ending = ".toml";

std::string text_of(const toml::table& row, std::string_view field) {
  return row[field].value_or(std::string());
}

Expected<FactRow> read_row(const toml::table& row, const std::string& where) {
  for (const auto& [key, value] : row) {
    const std::string_view field = key.str();
    const bool is_text =
        field == "key" || field == "unit" || field == "source" || field == "note" || field == "text";
    const bool is_number = field == "value" || field == "low" || field == "high";
    if (!is_text && !is_number) {
      return bad_input("there is no field '" + std::string(field) + "'", where,
                       "use key, value or text, low, high, unit, source, note");
    }
    if ((is_text && !value.is_string()) || (is_number && !value.is_number())) {
      return bad_input("the field '" + std::string(field) + "' has the wrong type", where,
                       "texts in quotes, numbers without");
    }
  }
  const auto value = row["value"].value<double>();
  const bool is_words = row.contains("text");
  if (!value && !is_words)
    return bad_input("the row has no value", where, "give a number, or text where the fact is words");
  if (value && is_words) return bad_input("the row has a value and a text", where, "keep one");
  return FactRow{.key = text_of(row, "key"),
                 .value = value.value_or(0),
                 .low = row["low"].value<double>(),
                 .high = row["high"].value<double>(),
                 .unit = text_of(row, "unit"),
                 .source = text_of(row, "source"),
                 .note = text_of(row, "note"),
                 .text = text_of(row, "text")};
}

}  // namespace

Expected<FactTable> read_table(std::string name, std::string_view toml_text) {
  const auto document = parse_toml(toml_text, name);
  if (!document) return document.problem();
  const toml::array* list = (*document)["row"].as_array();
  if (!list || document->size() != 1)
    return bad_input("the file is not a list of [[row]]", name, "write [[row]] tables only");
  std::vector<FactRow> rows;
  for (const toml::node& node : *list) {
    const toml::table* table = node.as_table();
    const std::string where = name + ":" + std::to_string(node.source().begin.line);
    if (!table) return bad_input("not a table", where, "write [[row]]");
    auto row = read_row(*table, where);
    if (!row) return row.problem();
    rows.push_back(*std::move(row));
  }
  return FactTable::check(std::move(name), std::move(rows));
}

Expected<Tables> Tables::built_in() {
  Tables tables;
  for (const EmbeddedFile& file : embedded_files()) {
    if (file.path.substr(0, folder.size()) != folder) continue;
    const std::string name(file.path.substr(folder.size()));
    auto table = read_table(name, file.bytes);
    if (!table) return table.problem();
    tables.tables_.emplace(name.substr(0, name.size() - ending.size()), *std::move(table));
  }
  return tables;
}

Expected<Tables> Tables::with(std::span<const entries::TableOverride> overrides) const {
  Tables changed = *this;
  for (const entries::TableOverride& own : overrides) {
    const auto at = changed.tables_.find(own.table);
    if (at == changed.tables_.end()) {
      return bad_input("there is no table '" + own.table + "'", "table_override",
                       "name a table of the program");
    }
    const FactRow* ours = at->second.find(own.row);
    if (ours == nullptr)
      return bad_input("there is no row '" + own.row + "' in the table '" + own.table + "'", "table_override",
                       "name a row of it, see tables/" + own.table + ".toml");
    const bool words = ours->unit == "text";
    if (words != own.text.has_value())
      return bad_input("the row '" + own.row + "' is " + (words ? "words" : "a number"), "table_override",
                       words ? "give its text, and 0 as the value" : "leave the text out");
    if (own.unit != ours->unit)
      return bad_input("the unit of " + own.row + " is '" + ours->unit + "', not '" + own.unit + "'",
                       "table_override", "give it in that unit");
    const bool share = (ours->unit == "1" || ours->unit == "1/day") && ours->high && *ours->high <= 1;
    if (share && own.value > 1)
      return bad_input(own.row + " is a share and cannot be above 1", "table_override", "mend the value");
    if (own.value < 0 && ours->value >= 0)
      return bad_input(own.row + " cannot be below 0", "table_override", "mend the value");
    const FactRow row{own.row,
                      own.value,
                      own.low,
                      own.high,
                      own.unit,
                      own.source,
                      "the keeper's own",
                      own.text.value_or("")};
    auto table = at->second.with(std::span(&row, 1));
    if (!table) return table.problem();
    at->second = *std::move(table);
  }
  return changed;
}

const FactTable& Tables::operator[](std::string_view name) const {
  const auto at = tables_.find(name);
  if (at == tables_.end()) throw std::logic_error("no table named " + std::string(name));
  return at->second;
}

}  // namespace beegarth::garth
