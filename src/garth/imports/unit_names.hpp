// Units a keeper's file may use, and what one of them is in the unit of the book.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "entries/fields.hpp"

namespace beegarth::garth {

struct UnitChange {
  double zero = 0;  // of the book's scale, in the file's unit
  double times = 1;
  double over = 1;
  double apply(double value) const { return (value - zero) * times / over; }
};

// nullopt where `unit` cannot become the unit of a field with these limits.
std::optional<UnitChange> unit_change(std::string_view unit, const entries::Limits& book);
// "C, F, K": what a field with these limits can be given in; empty where it has no unit.
std::string units_for(const entries::Limits& book);

}  // namespace beegarth::garth
