// The files that were compiled into this room.
#pragma once

#include <span>

#include "garth/embedded.hpp"

namespace beegarth::http {

using garth::EmbeddedFile;

std::span<const EmbeddedFile> page_files();  // web/dist, or the one plain page that says it was not built
std::span<const EmbeddedFile> description_files();  // openapi.json

}  // namespace beegarth::http
