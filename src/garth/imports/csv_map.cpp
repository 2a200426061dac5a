#include "garth/imports/csv_map.hpp"

#include <algorithm>
#include <initializer_list>
#include <utility>

#include "garth/field_shapes.hpp"
#include "garth/imports/map_keys.hpp"
#include "garth/imports/unit_names.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most_rules = 200;

std::optional<Constant> constant_of(const toml::node& node) {
  if (const auto text = node.value_exact<std::string>()) return *text;
  if (const auto flag = node.value_exact<bool>()) return *flag;
  if (node.is_number()) return node.value_or(0.0);
  const toml::array* list = node.as_array();
  if (!list) return std::nullopt;
  std::vector<std::string> words;
  for (const toml::node& each : *list) {
    const auto text = each.value_exact<std::string>();
    if (!text) return std::nullopt;
    words.push_back(*text);
  }
  return words;
}

FieldValue as_value(const Constant& constant) {
  return std::visit([](const auto& held) { return FieldValue(held); }, constant);
}

// The first problem of several steps.
Outcome all_of(std::initializer_list<Outcome> steps) {
  for (const Outcome& step : steps) {
    if (!step) return step;
  }
  return Done{};
}

Expected<DateRule> read_date(const Place& place, const toml::node& node) {
  DateRule rule;
  rule.line = node.source().begin.line;
  rule.formats = {"%Y-%m-%d"};
  if (const auto iso = node.value_exact<std::string>()) {
    const auto date = Date::parse(*iso);
    if (!date) return bad_input(date.problem().what, place.at(node), date.problem().remedy);
    rule.constant = *date;
    return rule;
  }
  const toml::table* table = node.as_table();
  if (!table)
    return place.refuse(node, "a date rule must be a table or a date as text", "write { column = \"date\" }");
  std::vector<std::string> column;
  std::vector<std::string> parts;
  int year = 0;
  if (auto read = all_of(
          {only_these(place, *table, {"column", "columns", "format", "year", "first_month", "plus_days"}),
           take_texts(place, *table, "column", column), take_texts(place, *table, "columns", parts),
           take_texts(place, *table, "format", rule.formats),
           take_whole(place, *table, "year", 1600, 2999, year),
           take_whole(place, *table, "first_month", 1, 12, rule.first_month),
           take_whole(place, *table, "plus_days", -1000, 1000, rule.plus_days)});
      !read) {
    return read.problem();
  }
  const bool one = column.size() == 1 && parts.empty();
  const bool three = column.empty() && parts.size() == 3;
  if (!one && !three) {
    return place.refuse(node, "a date comes from one column or from three",
                        "give column = \"...\", or columns = [year, month, day]");
  }
  rule.columns = one ? column : parts;
  if (year != 0) rule.year = year;
  for (const std::string& format : rule.formats) {
    const auto has = [&](const char* mark) { return format.find(mark) != std::string::npos; };
    const bool has_year = has("%Y") || has("%y") || rule.year;
    if (!has_year || !has("%d") || !(has("%m") || has("%b") || has("%B"))) {
      return place.refuse(node,
                          "the date format " + in_quotes(format) + " leaves the day, month or year open",
                          "use %Y or %y, %m, %b or %B, and %d, or name the year");
    }
  }
  return rule;
}

Expected<std::vector<RowTest>> read_tests(const Place& place, const toml::table& table,
                                          std::string_view key) {
  std::vector<RowTest> tests;
  const toml::node* node = table.get(key);
  if (!node) return tests;
  const toml::array* list = node->as_array();
  if (!list)
    return place.refuse(*node, in_quotes(key) + " must be a list",
                        "write [{ column = \"...\", missing = true }]");
  for (const toml::node& each : *list) {
    const toml::table* test = each.as_table();
    if (!test)
      return place.refuse(each, "a test must be a table", "write { column = \"...\", equals = \"...\" }");
    RowTest read;
    if (auto ok = all_of({only_these(place, *test, {"column", "missing", "equals"}),
                          take(place, *test, "column", read.column, "a text"),
                          take(place, *test, "missing", read.when_missing, "true")});
        !ok) {
      return ok.problem();
    }
    if (const toml::node* equals = test->get("equals")) {
      auto value = constant_of(*equals);
      if (!value)
        return place.refuse(*equals, "'equals' must be a text, a number or a list of texts", "mend it");
      if (const auto* words = std::get_if<std::vector<std::string>>(&*value)) {
        read.equals.assign(words->begin(), words->end());
      } else {
        read.equals.push_back(*std::move(value));
      }
    }
    if (read.column.empty() || read.when_missing == !read.equals.empty()) {
      return place.refuse(each, "a test needs a column and either missing = true or equals", "mend it");
    }
    tests.push_back(std::move(read));
  }
  return tests;
}

const FieldShape* shape_named(const std::vector<FieldShape>& shapes, std::string_view name) {
  const auto at =
      std::find_if(shapes.begin(), shapes.end(), [&](const FieldShape& s) { return s.name == name; });
  return at == shapes.end() ? nullptr : &*at;
}

Outcome fits(const Place& place, const toml::node& node, entries::Payload empty, const FieldShape& shape,
             const Constant& constant) {
  FieldValue value = as_value(constant);
  if (shape.type == FieldType::date && std::holds_alternative<std::string>(value)) {
    const auto date = Date::parse(std::get<std::string>(value));
    if (!date) return bad_input(date.problem().what, place.at(node), date.problem().remedy);
    value = *date;
  }
  auto filled = fill_field(empty, shape.name, value);
  if (!filled) return bad_input(filled.problem().what, place.at(node), filled.problem().remedy);
  return Done{};
}

// What only makes sense for some types of field.
Outcome options_fit(const Place& place, const toml::table& table, const FieldShape& shape,
                    const FieldRule& rule) {
  const bool is_number = shape.type == FieldType::number || shape.type == FieldType::count;
  const bool is_text = shape.type == FieldType::text || shape.type == FieldType::id;
  for (const char* option : {"sum", "difference", "scale", "unit"}) {
    if (!is_number && table.contains(option)) {
      return place.refuse(
          table, in_quotes(option) + " is for numbers, " + std::string(shape.name) + " is none", "remove it");
    }
  }
  for (const char* option : {"prefix", "suffix", "as_key"}) {
    if (!is_text && table.contains(option)) {
      return place.refuse(table, in_quotes(option) + " is for texts, " + std::string(shape.name) + " is none",
                          "remove it");
    }
  }
  if (shape.type != FieldType::count && rule.round) {
    return place.refuse(table, "'round' is for counts, " + std::string(shape.name) + " is none", "remove it");
  }
  if (!rule.unit.empty() && !unit_change(rule.unit, shape.limits)) {
    const std::string possible = units_for(shape.limits);
    return place.refuse(table, std::string(shape.name) + " cannot be given in " + in_quotes(rule.unit),
                        possible.empty() ? "remove the unit" : "use one of " + possible);
  }
  return Done{};
}

Outcome read_columns(const Place& place, const toml::table& table, FieldRule& rule) {
  std::vector<std::string> column;
  std::vector<std::string> sum;
  std::vector<std::string> difference;
  if (auto read = all_of({take_texts(place, table, "column", column), take_texts(place, table, "sum", sum),
                          take_texts(place, table, "difference", difference)});
      !read) {
    return read;
  }
  const int ways = static_cast<int>(!column.empty()) + static_cast<int>(!sum.empty()) +
                   static_cast<int>(!difference.empty());
  if (ways != 1 || column.size() > 1 || (!difference.empty() && difference.size() != 2)) {
    return place.refuse(table, rule.field + " needs one of column, sum, difference",
                        "write column = \"a\", sum = [\"a\", \"b\"] or difference = [\"a\", \"b\"]");
  }
  rule.add = !column.empty() ? column : sum;
  if (!difference.empty()) {
    rule.add = {difference[0]};
    rule.subtract = {difference[1]};
  }
  return Done{};
}

Outcome read_translation(const Place& place, const toml::table& table, const entries::Payload& empty,
                         const FieldShape& shape, FieldRule& rule) {
  const toml::node* node = table.get("map");
  if (!node) return Done{};
  const toml::table* pairs = node->as_table();
  if (!pairs || rule.add.size() != 1 || !rule.subtract.empty()) {
    return place.refuse(*node, "'map' must be a table and goes with one column",
                        "write map = { yes = true, no = false }");
  }
  for (const auto& [key, value] : *pairs) {
    auto constant = constant_of(value);
    if (!constant)
      return place.refuse(value, "a translation must be a text, a number, true, false or a list of texts",
                          "mend it");
    if (auto ok = fits(place, value, empty, shape, *constant); !ok) return ok;
    rule.translate.emplace(std::string(key.str()), *std::move(constant));
  }
  return Done{};
}

Expected<FieldRule> read_field(const Place& place, std::string_view name, const toml::node& node,
                               const entries::Payload& empty, const std::vector<FieldShape>& shapes) {
  FieldRule rule;
  rule.field = name;
  rule.line = node.source().begin.line;
  const FieldShape* shape = shape_named(shapes, name);
  if (!shape) {
    std::string list;
    for (const FieldShape& each : shapes) list += (list.empty() ? "" : ", ") + std::string(each.name);
    return place.refuse(node, std::string(entries::kind_name(empty)) + " has no field " + in_quotes(name),
                        "use one of " + list);
  }
  const toml::table* table = node.as_table();
  if (!table) {
    rule.constant = constant_of(node);
    if (!rule.constant) return place.refuse(node, rule.field + " must be a value or a table", "mend it");
    if (auto ok = fits(place, node, empty, *shape, *rule.constant); !ok) return ok.problem();
    return rule;
  }
  if (auto read = all_of({only_these(place, *table,
                                     {"column", "sum", "difference", "map", "others_missing", "prefix",
                                      "suffix", "as_key", "round", "scale", "unit"}),
                          read_columns(place, *table, rule),
                          take(place, *table, "others_missing", rule.others_missing, "true or false"),
                          take(place, *table, "prefix", rule.prefix, "a text"),
                          take(place, *table, "suffix", rule.suffix, "a text"),
                          take(place, *table, "as_key", rule.as_key, "true or false"),
                          take(place, *table, "round", rule.round, "true or false"),
                          take_number(place, *table, "scale", rule.scale),
                          take(place, *table, "unit", rule.unit, "a text")});
      !read) {
    return read.problem();
  }
  if (auto read = read_translation(place, *table, empty, *shape, rule); !read) return read.problem();
  if (auto ok = options_fit(place, *table, *shape, rule); !ok) return ok.problem();
  return rule;
}

Outcome read_fields(const Place& place, const toml::table& table, const entries::Payload& empty,
                    EntryRule& rule) {
  const toml::table* fields = table["fields"].as_table();
  if (!fields) return place.refuse(table, "the entry has no fields", "add a table fields");
  const std::vector<FieldShape> shapes = field_shapes(empty);
  for (const auto& [key, value] : *fields) {
    auto field = read_field(place, key.str(), value, empty, shapes);
    if (!field) return field.problem();
    rule.fields.push_back(*std::move(field));
  }
  for (const FieldShape& shape : shapes) {
    const bool given = std::any_of(rule.fields.begin(), rule.fields.end(),
                                   [&](const FieldRule& f) { return f.field == shape.name; });
    if (shape.needed && !given) {
      return place.refuse(table, "the " + rule.kind + " has no " + std::string(shape.name),
                          "say where it comes from, or give it as a value");
    }
  }
  return Done{};
}

Expected<EntryRule> read_entry(const Place& place, const toml::node& node) {
  const toml::table* table = node.as_table();
  if (!table) return place.refuse(node, "an entry must be a table", "write [[entry]]");
  EntryRule rule;
  rule.line = node.source().begin.line;
  std::string per;
  if (auto read = all_of({only_these(place, *table,
                                     {"kind", "about", "date", "once_per", "once", "skip_when", "only_when",
                                      "leave_out_refused", "bare_too", "fields"}),
                          take(place, *table, "kind", rule.kind, "a text"),
                          take(place, *table, "once_per", per, "a text"),
                          take(place, *table, "once", rule.once, "true or false"),
                          take(place, *table, "leave_out_refused", rule.leave_out_refused, "true or false"),
                          take(place, *table, "bare_too", rule.bare_too, "true or false")});
      !read) {
    return read.problem();
  }
  if (!per.empty()) rule.once_per = per;
  const auto empty = entries::empty_payload(rule.kind);
  if (!empty)
    return place.refuse(node, "there is no kind of entry " + in_quotes(rule.kind),
                        "beegarth enter BOOK --list names the kinds");
  if (const toml::node* date = table->get("date")) {
    auto read = read_date(place, *date);
    if (!read) return read.problem();
    rule.date = *std::move(read);
  }
  auto skip = read_tests(place, *table, "skip_when");
  if (!skip) return skip.problem();
  rule.skip_when = *std::move(skip);
  auto only = read_tests(place, *table, "only_when");
  if (!only) return only.problem();
  rule.only_when = *std::move(only);
  if (auto read = read_fields(place, *table, *empty, rule); !read) return read.problem();
  return rule;
}

Outcome read_file_rules(const Place& place, const toml::table& document, CsvMap& map) {
  std::string separator = ",";
  std::string decimal = ".";
  if (auto read =
          all_of({only_these(place, document, {"about", "separator", "decimal", "missing", "date", "entry"}),
                  take(place, document, "separator", separator, "a text"),
                  take(place, document, "decimal", decimal, "a text"),
                  take_texts(place, document, "missing", map.missing)});
      !read) {
    return read;
  }
  if (separator != "," && separator != ";" && separator != "\t") {
    return place.refuse(*document.get("separator"), "the separator must be a comma, a semicolon or a tab",
                        "mend it");
  }
  if (decimal != "." && decimal != ",")
    return place.refuse(*document.get("decimal"), "the decimal mark must be . or ,", "mend it");
  map.separator = separator[0];
  map.decimal = decimal[0];
  if (const toml::node* date = document.get("date")) {
    auto read = read_date(place, *date);
    if (!read) return read.problem();
    map.date = *std::move(read);
  }
  return Done{};
}

}  // namespace

Expected<CsvMap> read_csv_map(std::string_view toml_text, const std::string& name) {
  const Place place(name);
  const auto document = parse_toml(toml_text, name);
  if (!document) return document.problem();
  CsvMap map;
  map.name = name;
  if (auto read = read_file_rules(place, *document, map); !read) return read.problem();
  const toml::array* list = (*document)["entry"].as_array();
  if (!list || list->empty()) return bad_input("the map makes no entries", name, "add an [[entry]]");
  if (list->size() > most_rules)
    return bad_input("the map has over " + std::to_string(most_rules) + " entries", name, "split it");
  for (const toml::node& node : *list) {
    auto rule = read_entry(place, node);
    if (!rule) return rule.problem();
    if (!rule->date && !map.date)
      return place.refuse(node, "the entry has no date", "give [date] for the file or date for the entry");
    map.entries.push_back(*std::move(rule));
  }
  return map;
}

}  // namespace beegarth::garth
