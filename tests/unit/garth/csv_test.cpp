#include "garth/imports/csv.hpp"

#include <gtest/gtest.h>

namespace beegarth::garth {
namespace {

using Rows = std::vector<std::vector<std::string>>;

Expected<Rows> read_all(CsvSource source) {
  auto reader = CsvReader::open(std::move(source), "f.csv");
  if (!reader) return reader.problem();
  Rows rows = {reader->header()};
  for (std::vector<std::string> cells;;) {
    auto more = reader->next(cells);
    if (!more) return more.problem();
    if (!*more) return rows;
    rows.push_back(cells);
  }
}
Expected<Rows> read_all(std::string_view text) {
  return read_all(whole_text(text));
}

// The same text in pieces of one byte.
CsvSource dripping(std::string_view text) {
  return [text, at = std::size_t{0}]() mutable {
    return at < text.size() ? text.substr(at++, 1) : std::string_view();
  };
}

std::string refusal(std::string_view text) {
  const auto rows = read_all(text);
  return rows ? "" : one_line(rows.problem());
}

TEST(Csv, quotes_hold_separators_line_ends_and_doubled_quotes) {
  const auto rows = read_all("a,b\r\n\"1,\n2\",\"say \"\"so\"\"\"\r\n");
  ASSERT_TRUE(rows);
  EXPECT_EQ(*rows, (Rows{{"a", "b"}, {"1,\n2", "say \"so\""}}));
}

TEST(Csv, a_byte_order_mark_and_a_missing_last_line_end_are_accepted) {
  const Rows wanted{{"date", "b"}, {"1", ""}};
  for (const std::string_view text : {"\xEF\xBB\xBF\"date\",b\n1,", "date,b\n1,\n", "date,b\n1,\n\n\n"}) {
    const auto rows = read_all(text);
    ASSERT_TRUE(rows) << one_line(rows.problem());
    EXPECT_EQ(*rows, wanted);
    const auto dripped = read_all(dripping(text));
    ASSERT_TRUE(dripped);
    EXPECT_EQ(*dripped, wanted);
  }
}

TEST(Csv, a_header_may_begin_like_a_byte_order_mark) {
  const auto rows = read_all("\xEF\xBC\xA1,b\n");  // U+FF21
  ASSERT_TRUE(rows);
  EXPECT_EQ(rows->front().front(), "\xEF\xBC\xA1");
}

TEST(Csv, what_is_broken_is_refused_with_its_line) {
  EXPECT_EQ(refusal(""), "f.csv:1: the file has no header; name the columns in its first line");
  EXPECT_EQ(refusal("a,b,a\n"), "f.csv:1: two columns are named 'a'; rename one of them");
  EXPECT_EQ(refusal("a,b\n1,2\n3\n"),
            "f.csv:3: the row has 1 cells, the header 2; check its separators and quotes");
  EXPECT_EQ(refusal("a,b\n1,2,3,4\n"),
            "f.csv:2: the row has more than 2 cells, the header 2; check its separators and quotes");
  EXPECT_EQ(refusal("a,b\n\n1,2\n"), "f.csv:2: the line is blank; remove it");
  EXPECT_EQ(refusal("a,b\n1,\"x\n"), "f.csv:3: a quote is never closed; close it");
  EXPECT_EQ(
      refusal("a,b\n1,x\"y\n"),
      "f.csv:2: a quote stands inside an unquoted cell; quote the whole cell and double the quotes in it");
  EXPECT_EQ(refusal("a,b\n1,\"x\"y\n"),
            "f.csv:2: text follows a closing quote; double the quotes inside a quoted cell");
  EXPECT_EQ(refusal("a,b\r1,2\r"), "f.csv:1: a carriage return stands alone; end lines with LF or CR LF");
  EXPECT_EQ(refusal(std::string_view("a,b\n1,\0\n", 8)),
            "f.csv:2: the file holds a zero byte; save it as CSV in UTF-8");
}

TEST(Csv, what_is_not_utf8_is_refused) {
  // Latin-1 e acute, a lone continuation byte, an overlong slash, a surrogate, beyond U+10FFFF, cut off.
  for (const char* cell : {"\xE9", "\x80", "\xC0\xAF", "\xED\xA0\x80", "\xF4\x90\x80\x80", "\xE2\x82"}) {
    EXPECT_NE(refusal(std::string("a\n") + cell).find("not UTF-8"), std::string::npos);
  }
  EXPECT_TRUE(read_all("a\n\xC3\xA9 \xE2\x82\xAC \xF0\x9F\x90\x9D\n"));
}

TEST(Csv, a_line_of_100_MB_is_refused_after_its_first_megabyte) {
  for (const char filling : {'a', ',', '"'}) {
    const std::string piece(64 * 1024, filling);
    const std::string start = filling == '"' ? "h\n" : "h,i\n";
    std::size_t given = 0;
    const auto rows = read_all([&]() -> std::string_view {
      if (given++ == 0) return start;
      return given <= 1600 ? std::string_view(piece) : std::string_view();
    });
    ASSERT_FALSE(rows);
    EXPECT_EQ(rows.problem().where, "f.csv:2");
    EXPECT_NE(rows.problem().what.find("longer than 1 MB"), std::string::npos);
    EXPECT_LE(given, 18U) << "read on after the row was too long";
  }
}

TEST(Csv, a_header_of_100_MB_is_refused_too) {
  const std::string piece(64 * 1024, ',');
  std::size_t given = 0;
  EXPECT_FALSE(read_all(
      [&]() -> std::string_view { return given++ < 1600 ? std::string_view(piece) : std::string_view(); }));
  EXPECT_LE(given, 18U);
}

}  // namespace
}  // namespace beegarth::garth
