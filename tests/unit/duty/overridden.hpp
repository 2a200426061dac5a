// A shipped table in which a keeper changed one number.
#pragma once

#include <array>
#include <span>

#include "read_rows.hpp"

namespace beegarth::duty {

inline FactTable overridden(const std::string& table, const std::string& key, double value) {
  const FactTable shipped = testing::rows_of(table);
  FactRow row = *shipped.find(key);
  row.value = value;
  row.low.reset();
  row.high.reset();
  row.source = "the keeper's own";
  return *shipped.with(std::span(&row, 1));
}

inline FactTable without(const std::string& table, const std::string& key) {
  std::vector<FactRow> rows;
  const FactTable shipped = testing::rows_of(table);
  for (const FactRow& row : shipped.rows()) {
    if (row.key != key) rows.push_back(row);
  }
  return *FactTable::check(shipped.name(), std::move(rows));
}

inline constexpr std::array<const char*, 4> country_tables{"duty_england", "duty_wales", "duty_scotland",
                                                           "duty_general"};

}  // namespace beegarth::duty
