// What one cell says: numbers, dates, yes or no, as the map reads them.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <string_view>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "garth/field_shapes.hpp"
#include "garth/imports/csv_map.hpp"

namespace beegarth::garth {

// The text of a column in the row at hand, without blanks around it; nullopt where the cell is missing.
using CellText = std::function<std::optional<std::string_view>(std::string_view column)>;

std::string_view without_blanks(std::string_view text);
std::optional<double> number_in(std::string_view text, char decimal);  // finite, the whole text

// nullopt where the row does not say it. A problem's `where` is "column 'x'".
Expected<std::optional<FieldValue>> read_cells(const FieldRule& rule, const FieldShape& shape,
                                               const CellText& cell, char decimal);
Expected<std::optional<Date>> read_date_cells(const DateRule& rule, const CellText& cell);
bool holds(const RowTest& test, const CellText& cell, char decimal);

std::string key_from(std::string_view shown);  // "Town 2" to "town-2"

}  // namespace beegarth::garth
