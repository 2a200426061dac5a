// Files that were compiled into the program: reference tables, the demo, the maps.
#pragma once

#include <span>
#include <string_view>

namespace beegarth::garth {

struct EmbeddedFile {
  std::string_view path;  // "tables/colony.toml"
  std::string_view bytes;
};

std::span<const EmbeddedFile> embedded_files();  // sorted by path

}  // namespace beegarth::garth
