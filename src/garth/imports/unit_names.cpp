#include "garth/imports/unit_names.hpp"

#include <array>

namespace beegarth::garth {
namespace {

struct UnitName {
  std::string_view name;
  std::string_view book;
  UnitChange change;
};

// Exact by definition: the International System of Units (SI Brochure, 9th edition) for metric ones, degrees
// Celsius and the knot (1852 m an hour); the international yard and pound of 1959 (1 yd = 0.9144 m, 1 lb =
// 0.45359237 kg) for the others; a temperature in Fahrenheit is 1.8 times that in Celsius plus 32.
constexpr auto known_units = std::to_array<UnitName>({
    {"C", "C", {}},
    {"F", "C", {32, 1, 1.8}},
    {"K", "C", {273.15, 1, 1}},
    {"kg", "kg", {}},
    {"g", "kg", {0, 1, 1000}},
    {"lb", "kg", {0, 0.45359237, 1}},
    {"oz", "kg", {0, 0.45359237, 16}},
    {"mm", "mm", {}},
    {"cm", "mm", {0, 10, 1}},
    {"in", "mm", {0, 25.4, 1}},
    {"m/s", "m/s", {}},
    {"km/h", "m/s", {0, 1, 3.6}},
    {"mph", "m/s", {0, 0.9144 * 1760, 3600}},
    {"kn", "m/s", {0, 1852, 3600}},
    {"h", "h", {}},
    {"min", "h", {0, 1, 60}},
    {"s", "h", {0, 1, 3600}},
    {"m", "m", {}},
    {"ft", "m", {0, 0.3048, 1}},
    {"km", "km", {}},
    {"mi", "km", {0, 0.9144 * 1760, 1000}},
    {"m", "km", {0, 1, 1000}},
    {"min", "min", {}},
    {"h", "min", {0, 60, 1}},
    {"days", "days", {}},
    {"h", "days", {0, 1, 24}},
    {"weeks", "days", {0, 7, 1}},
    {"%", "%", {}},
    {"share", "%", {0, 100, 1}},
    {"share", "share", {}},
    {"%", "share", {0, 1, 100}},
    {"deg", "deg", {}},
    {"W/K", "W/K", {}},
    {"kg/day", "kg/day", {}},
    {"lb/day", "kg/day", {0, 0.45359237, 1}},
    {"g/day", "kg/day", {0, 1, 1000}},
});

// A share of one has no unit in the field list, only its limits tell.
std::string_view book_unit(const entries::Limits& book) {
  const std::string_view unit = book.unit;
  return unit.empty() && book.low == 0 && book.high == 1 ? "share" : unit;
}

}  // namespace

std::optional<UnitChange> unit_change(std::string_view unit, const entries::Limits& book) {
  const std::string_view wanted = book_unit(book);
  for (const UnitName& known : known_units) {
    if (known.name == unit && known.book == wanted) return known.change;
  }
  if (!unit.empty() && unit == wanted) return UnitChange{};  // "bees", "combs", ...
  return std::nullopt;
}

std::string units_for(const entries::Limits& book) {
  const std::string_view wanted = book_unit(book);
  std::string list;
  for (const UnitName& known : known_units) {
    if (known.book == wanted) list += (list.empty() ? "" : ", ") + std::string(known.name);
  }
  return list.empty() ? std::string(wanted) : list;
}

}  // namespace beegarth::garth
