// What stands behind the question mark of an address. Private to the room.
#pragma once

#include <cstddef>
#include <optional>
#include <string>

#include "http/respond.hpp"

namespace beegarth::http {

// Empty where it is not there.
std::string said(const Ask& ask, const char* name);
// Empty is as good as absent, so that an empty field of a form need not be left out.
Expected<std::optional<Date>> day_asked(const Ask& ask, const char* name);
Expected<garth::Span> span_asked(const Ask& ask);
Expected<std::size_t> limit_asked(const Ask& ask);
Expected<int> days_asked(const Ask& ask);  // of a plan: 1..28, 14 where it is not said

}  // namespace beegarth::http
