// iCalendar as RFC 5545 writes it down: content lines, unfolded, with their parameters, in nested components.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/expected.hpp"

namespace beegarth::garth {

struct ContentLine {
  struct Parameter {
    std::string name;  // in capitals
    std::vector<std::string> values;
  };
  std::string name;  // in capitals
  std::vector<Parameter> parameters;
  std::string value;     // as it stands; see plain_text
  std::size_t line = 0;  // of the file, 1 for the first

  const std::string* parameter(std::string_view wanted) const;  // its first value
};

struct CalendarComponent {
  std::string name;  // "VEVENT"
  std::size_t line = 0;
  std::vector<ContentLine> lines;
  std::vector<CalendarComponent> parts;

  const ContentLine* find(std::string_view wanted) const;
};

// Strict in the form of lines (3.1) and in the nesting of BEGIN and END; a line end may be LF alone, which
// many programs write. Refused with "file:line": not UTF-8, control characters, a line without a name or a
// colon, a quote that does not close, more than `deepest` components inside each other.
Expected<std::vector<ContentLine>> content_lines(std::string_view bytes, const std::string& file);
// The VCALENDARs of a stream.
Expected<std::vector<CalendarComponent>> calendar_components(std::string_view bytes, const std::string& file);

// A value of type TEXT (3.3.11) without its escapes.
std::string plain_text(std::string_view value);

}  // namespace beegarth::garth
