// Every line of the tables in docs/note.md is read as the page says.
#include "note_docs.hpp"

#include <gtest/gtest.h>

namespace beegarth::entries {
namespace {

struct Row {
  int at = 0;
  std::string said;
  std::vector<std::string> told;
};

// What stands between back-ticks.
std::vector<std::string> code_spans(const std::string& text) {
  std::vector<std::string> spans;
  for (std::size_t begin = text.find('`'); begin != std::string::npos; begin = text.find('`', begin)) {
    const std::size_t end = text.find('`', begin + 1);
    if (end == std::string::npos) break;
    spans.push_back(text.substr(begin + 1, end - begin - 1));
    begin = end + 1;
  }
  return spans;
}

std::vector<Row> rows_of_the_page() {
  std::ifstream page(BEEGARTH_SOURCE_DIR "/docs/note.md");
  std::vector<Row> rows;
  int at = 0;
  for (std::string line; std::getline(page, line);) {
    ++at;
    if (line.rfind("| `", 0) != 0) continue;
    std::vector<std::string> spans = code_spans(line);
    const std::string said = spans.front();
    spans.erase(spans.begin());
    rows.push_back({at, said, std::move(spans)});
  }
  return rows;
}

TEST(NoteDocs, every_line_of_the_tables_is_read_as_the_page_says) {
  const auto rows = rows_of_the_page();
  EXPECT_GE(rows.size(), 120U);
  for (const Row& row : rows) EXPECT_EQ(docs_reading(row.said), row.told) << "docs/note.md:" << row.at;
}

}  // namespace
}  // namespace beegarth::entries
