// Comma-separated values, read strictly (RFC 4180) and a row at a time: a broken file is refused with the
// line named, never mended in silence. Memory is bounded by the longest row allowed, whatever the file holds.
#pragma once

#include <cstddef>
#include <functional>
#include <string>
#include <string_view>
#include <vector>

#include "base/expected.hpp"
#include "garth/imports/table_rows.hpp"

namespace beegarth::garth {

using CsvSource = std::function<std::string_view()>;  // the next piece of the file; empty at its end

CsvSource whole_text(std::string_view bytes);

class CsvReader : public TableRows {
 public:
  static constexpr std::size_t longest_row_bytes = 1'000'000;

  // Reads the header. Accepted: quotes, line ends LF or CR LF, a byte order mark, blank lines at the very
  // end. Refused: not UTF-8, zero bytes, ragged rows, a column named twice, stray quotes, rows of over 1 MB.
  static Expected<CsvReader> open(CsvSource source, std::string name, char separator = ',');

  const std::vector<std::string>& header() const override { return header_; }
  const std::string& name() const override { return name_; }
  // Reads the next row into `cells`, as many as the header has; false at the end of the file.
  Expected<bool> next(std::vector<std::string>& cells) override;
  std::size_t line() const override {
    return row_line_;
  }                                    // on which the row last read began, 1 for the first
  std::string where() const override;  // "file.csv:14"

 private:
  CsvReader(CsvSource source, std::string name, char separator)
      : source_(std::move(source)), name_(std::move(name)), separator_(separator) {}

  Expected<bool> read_record(std::vector<std::string>& cells);
  Outcome read_quoted(std::string& cell);
  Outcome within_bounds() const;
  Outcome grow(std::string& cell, char c);
  Outcome end_cell(std::vector<std::string>& cells, std::string& cell);
  int peek();  // the next byte, or -1 at the end
  int take();
  Problem refuse(const std::string& what, const std::string& remedy) const;

  CsvSource source_;
  std::string name_;
  char separator_;
  std::string_view piece_;
  std::size_t at_ = 0;
  bool ended_ = false;
  std::size_t line_ = 1;      // of the next byte
  std::size_t row_line_ = 0;  // of the row last read
  std::size_t row_bytes_ = 0;
  std::string carried_;  // bytes taken for a byte order mark that was none
  std::vector<std::string> header_;
};

}  // namespace beegarth::garth
