// The table of kinds in docs/book.md is the manual: it must name every kind and every field.
#include <gtest/gtest.h>

#include <fstream>
#include <nlohmann/json.hpp>
#include <sstream>

#include "book/book.hpp"

namespace beegarth::book {
namespace {

std::string row_of(const std::string& manual, const std::string& kind) {
  const std::size_t at = manual.find("\n| `" + kind + "` | ");
  return at == std::string::npos ? std::string() : manual.substr(at + 1, manual.find('\n', at + 1) - at - 1);
}

TEST(Manual, names_every_kind_with_every_field) {
  std::ifstream file(std::string(BEEGARTH_SOURCE_DIR) + "/docs/book.md");
  std::stringstream manual;
  manual << file.rdbuf();
  for (std::size_t i = 0; i < entries::kind_count; ++i) {
    const std::string kind(entries::kind_name_at(i));
    const std::string row = row_of(manual.str(), kind);
    ASSERT_FALSE(row.empty()) << kind;
    const auto schema = nlohmann::json::parse(schema_json(kind));
    for (const auto& field : schema["properties"].items())
      EXPECT_NE(row.find(field.key()), std::string::npos) << kind << '.' << field.key();
  }
}

}  // namespace
}  // namespace beegarth::book
