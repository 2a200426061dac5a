#include "garth/imports/csv.hpp"

#include <set>
#include <utility>

#include "base/utf8.hpp"

namespace beegarth::garth {
namespace {

constexpr int end_of_file = -1;

}  // namespace

CsvSource whole_text(std::string_view bytes) {
  return [bytes, given = false]() mutable {
    if (given) return std::string_view();
    given = true;
    return bytes;
  };
}

std::string CsvReader::where() const {
  return name_ + ":" + std::to_string(row_line_);
}

Problem CsvReader::refuse(const std::string& what, const std::string& remedy) const {
  return bad_input(what, name_ + ":" + std::to_string(line_), remedy);
}

int CsvReader::peek() {
  while (at_ == piece_.size() && !ended_) {
    piece_ = source_();
    at_ = 0;
    ended_ = piece_.empty();
  }
  return ended_ ? end_of_file : static_cast<unsigned char>(piece_[at_]);
}

int CsvReader::take() {
  const int c = peek();
  if (c == end_of_file) return c;
  ++at_;
  ++row_bytes_;
  if (c == '\n') ++line_;
  return c;
}

Outcome CsvReader::within_bounds() const {
  if (row_bytes_ <= longest_row_bytes) return Done{};
  return refuse("the row is longer than 1 MB", "look for a quote that is never closed, or split the file");
}

Outcome CsvReader::grow(std::string& cell, char c) {
  if (c == '\0') return refuse("the file holds a zero byte", "save it as CSV in UTF-8");
  cell.push_back(c);
  return within_bounds();
}

Outcome CsvReader::end_cell(std::vector<std::string>& cells, std::string& cell) {
  if (!is_utf8(cell)) return refuse("the text is not UTF-8", "save the file as CSV in UTF-8");
  // One more than the header has is enough to see that the row is ragged.
  if (header_.empty() || cells.size() <= header_.size()) cells.push_back(std::move(cell));
  cell.clear();
  return within_bounds();
}

// After the opening quote, up to and with the closing one. A doubled quote stands for one.
Outcome CsvReader::read_quoted(std::string& cell) {
  for (;;) {
    const int c = take();
    if (c == end_of_file) return refuse("a quote is never closed", "close it");
    if (c == '"') {
      if (peek() != '"') break;
      take();
    }
    if (auto grown = grow(cell, static_cast<char>(c)); !grown) return grown;
  }
  const int next = peek();
  const bool ends = next == end_of_file || next == '\n' || next == '\r' || next == separator_;
  if (!ends) return refuse("text follows a closing quote", "double the quotes inside a quoted cell");
  return Done{};
}

// One record; false where the file ends before it.
Expected<bool> CsvReader::read_record(std::vector<std::string>& cells) {
  cells.clear();
  row_line_ = line_;
  row_bytes_ = 0;
  if (peek() == end_of_file) return false;
  std::string cell = std::exchange(carried_, {});
  bool fresh = cell.empty();  // nothing of the cell was read yet
  for (;;) {
    const int c = take();
    if (c == end_of_file || c == '\n') break;
    if (c == '\r') {
      if (peek() != '\n') return refuse("a carriage return stands alone", "end lines with LF or CR LF");
      continue;
    }
    if (c == separator_) {
      if (auto ended = end_cell(cells, cell); !ended) return ended.problem();
      fresh = true;
      continue;
    }
    if (c == '"') {
      if (!fresh)
        return refuse("a quote stands inside an unquoted cell",
                      "quote the whole cell and double the quotes in it");
      if (auto quoted = read_quoted(cell); !quoted) return quoted.problem();
    } else if (auto grown = grow(cell, static_cast<char>(c)); !grown) {
      return grown.problem();
    }
    fresh = false;
  }
  if (auto ended = end_cell(cells, cell); !ended) return ended.problem();
  return true;
}

Expected<CsvReader> CsvReader::open(CsvSource source, std::string name, char separator) {
  CsvReader reader(std::move(source), std::move(name), separator);
  for (const int byte : {0xEF, 0xBB, 0xBF}) {  // the byte order mark
    if (reader.peek() != byte) break;
    reader.carried_.push_back(static_cast<char>(reader.take()));
  }
  if (reader.carried_.size() == 3) reader.carried_.clear();
  std::vector<std::string> header;
  auto any = reader.read_record(header);
  if (!any) return any.problem();
  if (!*any || (header.size() == 1 && header.front().empty())) {
    return bad_input("the file has no header", reader.name_ + ":1", "name the columns in its first line");
  }
  std::set<std::string_view> seen;
  for (const std::string& column : header) {
    if (!seen.insert(column).second) {
      return bad_input("two columns are named '" + column.substr(0, 60) + "'", reader.name_ + ":1",
                       "rename one of them");
    }
  }
  reader.header_ = std::move(header);
  return reader;
}

Expected<bool> CsvReader::next(std::vector<std::string>& cells) {
  std::size_t blank_line = 0;
  for (;;) {
    auto any = read_record(cells);
    if (!any) return any.problem();
    const bool is_blank = *any && header_.size() > 1 && cells.size() == 1 && cells.front().empty();
    if (is_blank) {
      if (blank_line == 0) blank_line = row_line_;
      continue;
    }
    if (!*any) return false;
    if (blank_line != 0) {
      return bad_input("the line is blank", name_ + ":" + std::to_string(blank_line), "remove it");
    }
    if (cells.size() == header_.size()) return true;
    const bool more = cells.size() > header_.size();
    return bad_input(
        "the row has " +
            (more ? "more than " + std::to_string(header_.size()) : std::to_string(cells.size())) +
            " cells, the header " + std::to_string(header_.size()),
        where(), "check its separators and quotes");
  }
}

}  // namespace beegarth::garth
