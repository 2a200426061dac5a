// What is to be said about entries just told: they are kept, because they happened, but a gate may speak
// against them, and a dead hive has its steps.
#pragma once

#include <nlohmann/json.hpp>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "entries/entry.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

struct Remark {
  std::string about;  // "Alder, treatment of 2026-06-03"; empty where it is of no colony
  std::string words;
  std::string source;

  std::string text() const;  // all three in one line
};

inline constexpr std::string_view rule_on_days = "house rule on days";  // the source of: it lies ahead

// `told`: kept or only understood; the session may have been read again since or not.
Expected<std::vector<Remark>> remarks_on(const Session& session, std::span<const entries::Entry> told);

nlohmann::json remarks_json(const std::vector<Remark>& remarks);  // a list of lines

}  // namespace beegarth::garth
