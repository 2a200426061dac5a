#include "duty/rows.hpp"

#include <cmath>
#include <utility>

namespace beegarth::duty {

void Rows::fail(std::string what, std::string_view key, std::string remedy) {
  if (!fault_)
    fault_ =
        bad_input(std::move(what), table_->name() + ": row '" + std::string(key) + "'", std::move(remedy));
}

const FactRow& Rows::row(std::string_view key) {
  static const FactRow none;
  if (const FactRow* found = table_->find(key)) return *found;
  fail("there is no such row", key, "add it with a source");
  return none;
}

double Rows::number(std::string_view key) {
  const auto value = table_->value(key);
  if (value) return *value;
  if (!fault_) fault_ = value.problem();
  return 0;
}

int Rows::one_of(std::string_view key, int most) {
  const double value = number(key);
  if (value >= 0 && value <= most && value == std::floor(value)) return static_cast<int>(value);
  fail("the value is none of 0 to " + std::to_string(most), key, "give one of them");
  return 0;
}

std::string Rows::words(std::string_view key) {
  auto text = table_->words(key);
  if (text) return *std::move(text);
  if (!fault_) fault_ = text.problem();
  return {};
}

std::string Rows::source(std::string_view key) {
  return row(key).source;
}

}  // namespace beegarth::duty
