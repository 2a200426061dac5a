// A register: what the book says of one subject, as a table that can be shown, printed and handed to an
// inspector.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "garth/session.hpp"
#include "scene/layout.hpp"

namespace beegarth::garth {

struct RegisterColumn {
  std::string key;    // of the CSV heading and the JSON: "keep_until"
  std::string words;  // over the printed column: "keep until"
  double share = 1;   // of the width of the page
};

struct RegisterRow {
  std::optional<Date> date;        // by which a register is cut to a span of days; absent: always shown
  std::vector<std::string> cells;  // one a column; empty where nothing was said
  std::vector<EntryId> entries;    // that the row rests on
};

struct Register {
  std::string name;  // "medicines"
  std::string title;
  std::string says;  // one sentence: what it holds and why it is kept
  std::vector<RegisterColumn> columns;
  std::vector<RegisterRow> rows;     // oldest first
  std::vector<std::string> remarks;  // what is missing, and what to look up elsewhere
};

struct RegisterKind {
  std::string_view name;
  std::string_view title;
  std::string_view says;
  Expected<Register> (*build)(const Session& session);
};
std::span<const RegisterKind> register_kinds();

struct Span {  // of days, both included
  std::optional<Date> from;
  std::optional<Date> to;
};
// A Problem that lists the names where there is no such register.
Expected<Register> register_of(const Session& session, std::string_view name, const Span& span);

nlohmann::json register_json(const Register& one);
std::string register_csv(const Register& one);  // RFC 4180, UTF-8
std::string register_text(const Register& one);
std::string register_pdf(const Register& one, const Span& span, Date dated, scene::Paper paper);

}  // namespace beegarth::garth
