// The page and its parts, from the files compiled in. Private to the room.
#pragma once

#include <optional>

#include "http/respond.hpp"

namespace beegarth::http {

// Nothing where no such file was compiled in.
std::optional<Reply> page_reply(const Ask& ask);

}  // namespace beegarth::http
