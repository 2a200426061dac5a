// Entries as the faces show them: the fields as JSON, and read back as one plain line.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "book/state.hpp"
#include "entries/entry.hpp"

namespace beegarth::garth {

// "Cobble, 29 May 2026: inspection, full look, 12 seams, ..."
std::string read_back(const entries::Payload& payload, const book::State& state);

// The shape of `Entry` in src/http/openapi.json.
nlohmann::json shown_entry(const entries::Entry& entry, const book::State& state);

}  // namespace beegarth::garth
