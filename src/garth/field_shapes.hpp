// The fields of a kind as a list, and filling one by its name. Both visit the list in entries/fields.hpp.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "base/expected.hpp"
#include "entries/entry.hpp"
#include "entries/fields.hpp"

namespace beegarth::garth {

enum class FieldType { id, text, number, count, flag, choice, date, words };

struct FieldShape {
  std::string_view name;
  FieldType type = FieldType::text;
  bool needed = false;                    // a kind cannot be said without it
  entries::Limits limits{0, 0, ""};       // numbers and counts
  std::vector<std::string_view> choices;  // choices and words
};

// A value on its way into a field.
using FieldValue = std::variant<std::string, double, bool, Date, std::vector<std::string>>;

std::vector<FieldShape> field_shapes(const entries::Payload& payload);
// The problem says what the field would take; its `where` is empty.
Outcome fill_field(entries::Payload& payload, std::string_view field, const FieldValue& value);

}  // namespace beegarth::garth
