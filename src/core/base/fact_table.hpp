// Reference values with their sources. A row without a source does not get in.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/expected.hpp"

namespace beegarth {

struct FactRow {
  std::string key;            // unique in its table, snake_case
  double value = 0;           // in `unit`
  std::optional<double> low;  // plausible range (the prior); both or neither
  std::optional<double> high;
  std::string unit;    // "1" where there is none; "yes/no" for 1 or 0; "text" where the fact is words
  std::string source;  // a published source, "common practice", or "from memory: ..."
  std::string note;
  std::string text;  // the fact itself where it is words and not a number: the title of a law
};

// A table whose every row was checked: finite numbers, low <= value <= high, a unit, a source, unique keys;
// words where the unit says so and nowhere else.
class FactTable {
 public:
  // `name` is the file the rows came from, for error messages.
  static Expected<FactTable> check(std::string name, std::vector<FactRow> rows);

  const std::string& name() const { return name_; }
  std::span<const FactRow> rows() const { return rows_; }
  const FactRow* find(std::string_view key) const;
  Expected<double> value(std::string_view key) const;       // of a row that is a number
  Expected<std::string> words(std::string_view key) const;  // of a row that is words
  // A copy in which the rows of `overrides` replace or join those of the same key.
  Expected<FactTable> with(std::span<const FactRow> overrides) const;

 private:
  std::string name_;
  std::vector<FactRow> rows_;  // sorted by key
};

}  // namespace beegarth
