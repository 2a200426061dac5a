// Bringing files into a book: another book's export, or any CSV by a mapping. All or nothing, with a dry run.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "base/expected.hpp"

namespace beegarth::garth {

struct ImportWish {
  std::string book;  // made where there is none
  std::string file;
  std::string map;  // empty: the file is JSON Lines
  bool dry_run = false;
  std::string who = "keeper";
};

struct ImportAnswer {
  nlohmann::json json;
  std::string text;
};

Expected<ImportAnswer> import_file(const ImportWish& wish);

}  // namespace beegarth::garth
