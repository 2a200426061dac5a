// Sites, hives and colonies as they stand on a date, as JSON and in words.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "garth/outline.hpp"
#include "garth/seen_health.hpp"

namespace beegarth::garth {

nlohmann::json as_it_stood_json(const Outline& outline, const SeenHealth& health);
// By site, hives by their names.
std::string as_it_stood_text(const Outline& outline, const SeenHealth& health);

}  // namespace beegarth::garth
