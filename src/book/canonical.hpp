// Canonical JSON (RFC 8785): one text for one value, so that a hash over it means something.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "base/expected.hpp"

namespace beegarth::book {

std::string canonical(const nlohmann::json& value);
std::string canonical_number(double value);  // finite

// JSON of one value. Refuses a name said twice in one object, nesting deeper than any entry has, and text
// that is not UTF-8, none of which an ordinary reader reports.
Expected<nlohmann::json> parse_strict(std::string_view text, const std::string& where);

}  // namespace beegarth::book
