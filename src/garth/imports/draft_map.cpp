#include "garth/imports/draft_map.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <set>

#include "garth/imports/csv.hpp"
#include "garth/imports/csv_cell.hpp"

namespace beegarth::garth {

namespace {

constexpr std::size_t rows_looked_at = 200;
constexpr const char* iso_day = "%Y-%m-%d";  // which a map need not say

struct Sample {
  char separator = ',';
  std::vector<std::string> header;
  std::vector<std::vector<std::string>> rows;

  // The cells of a column that say something.
  std::vector<std::string> cells(std::size_t column) const {
    std::vector<std::string> said;
    for (const auto& row : rows)
      if (!without_blanks(row[column]).empty()) said.emplace_back(without_blanks(row[column]));
    return said;
  }
};

char separator_of(std::string_view csv) {
  const std::string_view header = csv.substr(0, csv.find('\n'));
  const auto times = [&](char c) { return std::count(header.begin(), header.end(), c); };
  char best = ',';
  for (const char c : {';', '\t'})
    if (times(c) > times(best)) best = c;
  return best;
}

Expected<Sample> sample_of(std::string_view csv, const std::string& file) {
  Sample sample{.separator = separator_of(csv), .header = {}, .rows = {}};
  auto reader = CsvReader::open(whole_text(csv), file, sample.separator);
  if (!reader) return reader.problem();
  sample.header = reader->header();
  std::vector<std::string> cells;
  while (sample.rows.size() < rows_looked_at) {
    const auto more = reader->next(cells);
    if (!more) return more.problem();
    if (!*more) break;
    sample.rows.push_back(cells);
  }
  return sample;
}

// ---- what the cells look like ----
std::vector<std::string> marks_for_missing(const Sample& sample) {
  constexpr auto known =
      std::to_array<std::string_view>({"NA", "N/A", "n/a", "NaN", "-", "?", "none", "null"});
  std::set<std::string> found;
  for (std::size_t column = 0; column < sample.header.size(); ++column)
    for (const std::string& cell : sample.cells(column))
      if (std::find(known.begin(), known.end(), cell) != known.end()) found.insert(cell);
  return {found.begin(), found.end()};
}

// "7,5" in some cell, and no cell with a point between figures.
bool has_decimal_comma(const Sample& sample) {
  bool comma = false;
  for (std::size_t column = 0; column < sample.header.size(); ++column)
    for (const std::string& cell : sample.cells(column)) {
      if (cell.find('.') != std::string::npos && number_in(cell, '.')) return false;
      comma = comma || (cell.find(',') != std::string::npos && number_in(cell, ','));
    }
  return comma;
}

struct DateColumn {
  std::size_t column = 0;
  std::string format;
  bool day_and_month_may_be_swapped = false;
};

bool all_read_as(const std::vector<std::string>& cells, const char* format) {
  const DateRule rule{.columns = {"c"}, .formats = {format}, .constant = {}, .year = {}};
  return std::all_of(cells.begin(), cells.end(), [&](const std::string& cell) {
    const auto date =
        read_date_cells(rule, [&](std::string_view) { return std::optional<std::string_view>(cell); });
    return date && *date;
  });
}

std::optional<DateColumn> date_column(const Sample& sample) {
  constexpr auto formats =
      std::to_array<const char*>({iso_day, "%d/%m/%Y", "%m/%d/%Y", "%d.%m.%Y", "%d-%m-%Y", "%d/%m/%y",
                                  "%m/%d/%y", "%d %b %Y", "%d-%b-%Y", "%d %B %Y"});
  for (std::size_t column = 0; column < sample.header.size(); ++column) {
    const auto cells = sample.cells(column);
    if (cells.empty()) continue;
    for (std::size_t i = 0; i < formats.size(); ++i) {
      if (!all_read_as(cells, formats[i])) continue;
      const bool swapped =
          (std::string_view(formats[i]) == "%d/%m/%Y" || std::string_view(formats[i]) == "%d/%m/%y") &&
          all_read_as(cells, formats[i + 1]);
      return DateColumn{column, formats[i], swapped};
    }
  }
  return std::nullopt;
}

// ---- which column is which field ----
std::vector<std::string> words_of(std::string_view name) {
  std::vector<std::string> words(1);
  for (const char c : name) {
    const char small = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    const bool letter = (small >= 'a' && small <= 'z') || static_cast<unsigned char>(c) >= 0x80;
    if (letter)
      words.back() += small;
    else if (!words.back().empty())
      words.emplace_back();
  }
  if (words.back().empty()) words.pop_back();
  return words;
}

// As the trade says it: a frame or a bar holds a comb, and combs that bees cover are seams.
std::vector<std::string> in_our_words(std::string_view name) {
  constexpr auto combs = std::to_array<std::string_view>({"frame", "frames", "bar", "bars", "comb"});
  constexpr auto empty = std::to_array<std::string_view>({"of", "the", "number", "no", "count", "total"});
  std::vector<std::string> words;
  for (std::string& word : words_of(name)) {
    if (std::find(empty.begin(), empty.end(), word) != empty.end()) continue;
    if (std::find(combs.begin(), combs.end(), word) != combs.end()) word = "combs";
    words.push_back(std::move(word));
  }
  std::sort(words.begin(), words.end());
  if (words == std::vector<std::string>{"bees", "combs"}) return {"seams"};
  return words;
}

// 2 where the names say the same; 1 where one says more than the other, if what they share is more than one
// word: "combs of bees" is no number of bees.
int likeness(const std::vector<std::string>& column, const std::vector<std::string>& field) {
  if (column.empty() || field.empty()) return 0;
  if (column == field) return 2;
  const bool more = std::includes(column.begin(), column.end(), field.begin(), field.end()) ||
                    std::includes(field.begin(), field.end(), column.begin(), column.end());
  const std::size_t shared = std::min(column.size(), field.size());
  constexpr auto of_a_name = std::to_array<std::string_view>({"key", "kg", "mm", "name", "date"});
  const auto& longer = column.size() > field.size() ? column : field;
  const bool only_a_unit = shared == 1 && longer.size() == 2 &&
                           std::any_of(longer.begin(), longer.end(), [&](const std::string& word) {
                             return std::find(of_a_name.begin(), of_a_name.end(), word) != of_a_name.end();
                           });
  return more && (shared > 1 || only_a_unit) ? 1 : 0;
}

// A colony is mostly listed by the hive that it lives in; then the key has to be that of the colony.
bool names_the_colony(const FieldShape& field, const std::vector<std::string>& column) {
  return field.name == "colony" && column == std::vector<std::string>{"hive"};
}

bool fits(const FieldShape& field, const std::vector<std::string>& column, int wanted) {
  const int alike = likeness(column, in_our_words(field.name));
  return alike == wanted || (wanted == 1 && alike == 0 && names_the_colony(field, column));
}

// For each field the column that is most like it, each column once; the best likeness first.
std::vector<std::optional<std::size_t>> columns_of(const std::vector<FieldShape>& fields,
                                                   const Sample& sample, std::set<std::size_t>& used) {
  std::vector<std::optional<std::size_t>> chosen(fields.size());
  for (const int wanted : {2, 1})
    for (std::size_t f = 0; f < fields.size(); ++f)
      for (std::size_t c = 0; c < sample.header.size() && !chosen[f]; ++c)
        if (!used.contains(c) && fits(fields[f], in_our_words(sample.header[c]), wanted)) {
          chosen[f] = c;
          used.insert(c);
        }
  return chosen;
}

// ---- the file ----
std::string toml_text(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (c == '"' || c == '\\') out += '\\';
    if (c == '\n' || c == '\r' || c == '\t')
      out += c == '\n' ? "\\n" : c == '\r' ? "\\r" : "\\t";
    else
      out += c;
  }
  return out + "\"";
}

std::string in_words(const FieldShape& field) {
  std::string text(field.name);
  if (field.limits.unit != nullptr && *field.limits.unit != '\0')
    text += std::string(" (") + field.limits.unit + ")";
  for (std::size_t i = 0; i < field.choices.size() && i < 12; ++i)
    text += (i == 0 ? ": " : ", ") + std::string(field.choices[i]);
  return text;
}

void write_field(std::string& out, const FieldShape& field, std::string_view column) {
  out += std::string(field.name) + " = { column = " + toml_text(column);
  if (field.type == FieldType::id) out += ", as_key = true";
  out += " }";
  if (field.type == FieldType::choice)
    out += "  # map = { ... } where the file uses other words than " + in_words(field);
  if (field.type == FieldType::number && *field.limits.unit != '\0')
    out += std::string("  # in ") + field.limits.unit + "; else add unit = ...";
  out += '\n';
}

std::string head_of(const Sample& sample, const std::string& file, std::string_view kind) {
  std::string out =
      "# A first draft from the header of " + file + ": read it, mend it, then try it (import --dry-run).\n";
  std::replace(out.begin(), out.end() - 1, '\n', ' ');
  out += "about = " + toml_text(std::string(kind) + ", one for each row") + "\n";
  if (const auto marks = marks_for_missing(sample); !marks.empty()) {
    out += "missing = [";
    for (std::size_t i = 0; i < marks.size(); ++i) out += (i == 0 ? "" : ", ") + toml_text(marks[i]);
    out += "]\n";
  }
  if (sample.separator != ',') out += "separator = " + toml_text(std::string(1, sample.separator)) + "\n";
  if (has_decimal_comma(sample)) out += "decimal = \",\"\n";
  return out;
}

}  // namespace

Expected<std::string> draft_map(std::string_view csv, const std::string& file, std::string_view kind) {
  const auto payload = entries::empty_payload(kind);
  if (!payload)
    return bad_input("there is no kind '" + std::string(kind.substr(0, 60)) + "'", "--kind",
                     "see beegarth enter BOOK --list");
  const auto sample = sample_of(csv, file);
  if (!sample) return sample.problem();
  std::set<std::size_t> used;
  std::string out = head_of(*sample, file, kind) + "\n[date]\n";
  if (const auto date = date_column(*sample)) {
    used.insert(date->column);
    out += "column = " + toml_text(sample->header[date->column]) + "\n";
    if (date->format != iso_day) out += "format = " + toml_text(date->format) + "\n";
    if (date->day_and_month_may_be_swapped)
      out += "# Day and month could as well be the other way round: check one row by hand.\n";
  } else {
    out += "# No column reads as a date in every row: name it here, with its format.\n# column = ...\n";
  }
  out += "\n[[entry]]\nkind = " + toml_text(kind) + "\n[entry.fields]\n";
  const auto fields = field_shapes(*payload);
  const auto chosen = columns_of(fields, *sample, used);
  std::string must, may;
  for (std::size_t f = 0; f < fields.size(); ++f) {
    if (chosen[f])
      write_field(out, fields[f], sample->header[*chosen[f]]);
    else if (fields[f].needed && fields[f].type == FieldType::choice)
      out += std::string(fields[f].name) + " = " + toml_text(fields[f].choices.front()) +
             "  # a guess for every row; " + in_words(fields[f]) + "\n";
    else
      (fields[f].needed ? must : may) += "#   " + in_words(fields[f]) + "\n";
  }
  if (!must.empty()) out += "# Must be given, as a column or a value:\n" + must;
  if (!may.empty()) out += "# May be given:\n" + may;
  std::string left;
  for (std::size_t c = 0; c < sample->header.size(); ++c)
    if (!used.contains(c)) left += "#   " + toml_text(sample->header[c]) + "\n";
  if (!left.empty()) out += "# Columns that are not used:\n" + left;
  return out;
}

}  // namespace beegarth::garth
