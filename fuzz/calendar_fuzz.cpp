// Any bytes at all as a calendar: refused with a problem that names a line, or read as events whose days and
// hours can be.
#include <cstddef>
#include <cstdint>
#include <cstdlib>
#include <string_view>

#include "garth/imports/events.hpp"

namespace {

using namespace beegarth;

void must(bool holds) {
  if (!holds) std::abort();
}

}  // namespace

// NOLINTNEXTLINE(readability-identifier-naming): libFuzzer's name
extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  const std::string_view text(reinterpret_cast<const char*>(data), size);
  const auto events = garth::calendar_events(text, "c.ics", 0);
  if (!events) {
    must(!events.problem().what.empty() && events.problem().where.starts_with("c.ics:"));
    return 0;
  }
  for (const auto& event : *events) {
    must(!event.hour || (*event.hour >= 0 && *event.hour < 24));
    must(event.line > 0 && (!event.last_day || *event.last_day >= event.day));
  }
  const auto rows = garth::event_rows(text, "c.ics", {}, *Date::from_ymd(2026, 6, 5));
  must(rows.has_value());
  return 0;
}
