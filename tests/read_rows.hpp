// A reference table read line by line, for suites that link a core room alone and so cannot read TOML.
#pragma once

#include <fstream>
#include <stdexcept>
#include <string>
#include <vector>

#include "base/fact_table.hpp"

namespace beegarth::testing {

// tables/<name>.toml
inline FactTable rows_of(const std::string& name) {
  std::ifstream file(std::string(BEEGARTH_SOURCE_DIR) + "/tables/" + name + ".toml");
  std::vector<FactRow> rows;
  std::string line;
  while (std::getline(file, line)) {
    if (line == "[[row]]") rows.emplace_back();
    const auto equals = line.find(" = ");
    if (equals == std::string::npos || rows.empty()) continue;
    const std::string field = line.substr(0, equals);
    std::string value = line.substr(equals + 3);
    if (value.size() >= 2 && value.front() == '"') value = value.substr(1, value.size() - 2);
    FactRow& row = rows.back();
    if (field == "key") row.key = value;
    if (field == "unit") row.unit = value;
    if (field == "source") row.source = value;
    if (field == "note") row.note = value;
    if (field == "text") row.text = value;
    if (field == "value") row.value = std::stod(value);
    if (field == "low") row.low = std::stod(value);
    if (field == "high") row.high = std::stod(value);
  }
  auto table = FactTable::check(name + ".toml", std::move(rows));
  if (!table) throw std::runtime_error(one_line(table.problem()));
  return *table;
}

}  // namespace beegarth::testing
