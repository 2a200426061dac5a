// The mapping file: how the columns of a keeper's own CSV become entries of the book. Our own format, TOML;
// docs/import.md tells it with examples.
#pragma once

#include <cstddef>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"

namespace beegarth::garth {

// What a map may write down as it is: a text, a number, yes or no, or a list of words.
using Constant = std::variant<std::string, double, bool, std::vector<std::string>>;

struct FieldRule {
  std::string field;
  std::optional<Constant> constant;           // or else
  std::vector<std::string> add;               // columns added up; a single `column` stands here alone
  std::vector<std::string> subtract;          // columns taken away
  std::map<std::string, Constant> translate;  // cell text to value
  bool others_missing = false;                // cells not in `translate` count as missing
  std::string prefix;                         // before a text
  std::string suffix;
  bool as_key = false;  // "Town 2" becomes "town-2"
  bool round = false;   // to the nearest whole number, for counts
  double scale = 1;
  std::string unit;      // of the file; empty where it is already the book's
  std::size_t line = 0;  // of the mapping file
};

struct DateRule {
  std::vector<std::string> columns;  // one; or year, month, day
  std::vector<std::string> formats;  // tried in this order: %Y %y %m %d %b %B and what stands between them
  std::optional<Date> constant;
  std::optional<int> year;  // where the file has none
  int first_month = 1;      // months before it belong to the year after
  int plus_days = 0;
  std::size_t line = 0;
};

struct RowTest {
  std::string column;
  bool when_missing = false;     // holds where the cell is missing, or
  std::vector<Constant> equals;  // where it equals one of these
};

struct EntryRule {
  std::string kind;
  std::optional<DateRule> date;         // else that of the file
  std::optional<std::string> once_per;  // one entry per value of this column, at its first date
  bool once = false;                    // one entry for the file, at its first date
  std::vector<RowTest> skip_when;       // any holds: no entry
  std::vector<RowTest> only_when;       // all hold, or no entry
  bool leave_out_refused = false;  // a row that the book would refuse is told and left out, the others go in
  bool bare_too = false;           // an entry counts even where the row says no more than what it must
  std::vector<FieldRule> fields;
  std::size_t line = 0;
};

struct CsvMap {
  std::string name;  // of the mapping file
  char separator = ',';
  char decimal = '.';
  std::vector<std::string> missing;  // marks for "not known"; an empty cell always is
  std::optional<DateRule> date;
  std::vector<EntryRule> entries;
};

// Every kind, field, unit and constant is checked here, so a slip in the map is found before a row is read.
Expected<CsvMap> read_csv_map(std::string_view toml, const std::string& name);

}  // namespace beegarth::garth
