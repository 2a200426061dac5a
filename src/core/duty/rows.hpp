// Reads rows of one table; the first row that is missing or makes no sense is kept, as the keeper may have
// put it there. A reading can so ask for many rows and check once.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/fact_table.hpp"

namespace beegarth::duty {

// How much a law or good practice asks for something.
enum class Asked { no, advised, required };

class Rows {
 public:
  explicit Rows(const FactTable& table) : table_(&table) {}

  double number(std::string_view key);
  bool yes(std::string_view key) { return number(key) != 0; }
  int one_of(std::string_view key, int most);  // 0, 1 .. most
  Asked asked(std::string_view key) { return static_cast<Asked>(one_of(key, 2)); }
  std::string words(std::string_view key);
  std::string source(std::string_view key);
  const FactRow* maybe(std::string_view key) const { return table_->find(key); }
  const FactRow& row(std::string_view key);  // of value 0 where there is none

  void fail(std::string what, std::string_view key, std::string remedy);
  const std::optional<Problem>& fault() const { return fault_; }

 private:
  const FactTable* table_;
  std::optional<Problem> fault_;
};

}  // namespace beegarth::duty
