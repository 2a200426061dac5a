// What an import map is held against: named columns, and row after row, wherever they come from.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "base/expected.hpp"

namespace beegarth::garth {

class TableRows {
 public:
  virtual ~TableRows() = default;
  virtual const std::vector<std::string>& header() const = 0;
  virtual const std::string& name() const = 0;  // of the file
  // Reads the next row into `cells`, as many as the header has; false at the end.
  virtual Expected<bool> next(std::vector<std::string>& cells) = 0;
  virtual std::size_t line() const = 0;   // of the file, of the row last read
  virtual std::string where() const = 0;  // "file.csv:14"
  // So many of the first columns were made up for maps to use: nobody has to be told that one was not.
  virtual std::size_t made_up() const { return 0; }
  virtual std::optional<double> hour() const { return std::nullopt; }  // at which the row's thing happened
};

struct ListedRow {
  std::size_t line = 0;
  std::vector<std::string> cells;
  std::optional<double> hour;
};

// Rows that are all there already.
class ListedRows : public TableRows {
 public:
  ListedRows(std::string name, std::vector<std::string> header, std::size_t made_up,
             std::vector<ListedRow> rows)
      : name_(std::move(name)), header_(std::move(header)), made_up_(made_up), rows_(std::move(rows)) {}

  const std::vector<std::string>& header() const override { return header_; }
  const std::string& name() const override { return name_; }
  Expected<bool> next(std::vector<std::string>& cells) override {
    if (read_ == rows_.size()) return false;
    cells = rows_[read_++].cells;
    return true;
  }
  std::size_t line() const override { return read_ == 0 ? 0 : rows_[read_ - 1].line; }
  std::string where() const override { return name_ + ":" + std::to_string(line()); }
  std::size_t made_up() const override { return made_up_; }
  std::optional<double> hour() const override { return read_ == 0 ? std::nullopt : rows_[read_ - 1].hour; }

 private:
  std::string name_;
  std::vector<std::string> header_;
  std::size_t made_up_;
  std::vector<ListedRow> rows_;
  std::size_t read_ = 0;
};

}  // namespace beegarth::garth
