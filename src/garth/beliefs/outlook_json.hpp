// An outlook as JSON (the shape in src/http/openapi.json) and as text for a terminal.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "facts/outlook.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

std::string_view event_words(facts::EventKind kind);  // "swarm preparation"
nlohmann::json fan_json(const facts::Fan& fan);
nlohmann::json outlook_json(const facts::Outlook& outlook, const book::State& state);
std::string outlook_text(const facts::Outlook& outlook, const book::State& state);

}  // namespace beegarth::garth
