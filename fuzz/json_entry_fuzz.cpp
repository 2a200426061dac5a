// Any bytes at all as a payload of each kind and as a line of an import: refused with a problem, or read as
// something that is valid and writes back to a text that reads the same.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string>
#include <string_view>

#include "book/book.hpp"
#include "book/json_entry.hpp"
#include "entries/entry.hpp"

namespace {

using namespace beegarth;

void must(bool holds) {
  if (!holds) std::abort();
}

void read_payload(std::string_view kind, std::string_view json) {
  const auto payload = book::payload_from_json(kind, json, "line 1");
  if (!payload) {
    must(!payload.problem().what.empty() && payload.problem().where == "line 1");
    return;
  }
  must(entries::validate(*payload).has_value());
  const std::string text = book::payload_json(*payload);
  const auto again = book::payload_from_json(kind, text, "");
  must(again.has_value() && book::payload_json(*again) == text);
}

void read_line(std::string_view line) {
  const auto link = book::link_from_line(line, "line 1");
  if (!link) return must(!link.problem().what.empty());
  const std::string text = book::line_of(*link);
  const auto again = book::link_from_line(text, "");
  must(again.has_value() && book::line_of(*again) == text);
  must(book::hash_of(*again) == book::hash_of(*link));
}

}  // namespace

// NOLINTNEXTLINE(readability-identifier-naming): libFuzzer's name
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  if (size == 0) return 0;
  const std::string_view text(reinterpret_cast<const char*>(data) + 1, size - 1);
  const std::size_t kind = data[0];
  if (kind < entries::kind_count) {
    read_payload(entries::kind_name_at(kind), text);
  } else {
    read_line(std::string_view(reinterpret_cast<const char*>(data), size));
  }
  return 0;
}
