// The reference tables: TOML read here, because core knows no files. Compiled in; a book may override rows.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>

#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "entries/payloads.hpp"

namespace beegarth::garth {

// One TOML file: an array of tables [[row]] with key, value or text, unit, source and maybe low, high, note.
Expected<FactTable> read_table(std::string name, std::string_view toml);

class Tables {
 public:
  static Expected<Tables> built_in();
  Expected<Tables> with(std::span<const entries::TableOverride> overrides) const;
  // A bug where there is no such table: the names are ours.
  const FactTable& operator[](std::string_view name) const;

 private:
  std::map<std::string, FactTable, std::less<>> tables_;
};

}  // namespace beegarth::garth
