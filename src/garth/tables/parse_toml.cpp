#include "garth/tables/parse_toml.hpp"

#include <algorithm>

namespace beegarth::garth {
namespace {

bool may_begin_key(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' || c == '-' ||
         c == '"' || c == '\'';
}

// Walks over the text outside strings and comments.
class Walk {
 public:
  explicit Walk(std::string_view toml) : toml_(toml) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (toml.substr(0, 3) == byte_order_mark) at_ = 3;
  }

  std::optional<TomlFault> first_fault() {
    while (at_ < toml_.size()) {
      const char c = toml_[at_];
      if (c == '#') {
        at_ = std::min(toml_.find('\n', at_), toml_.size());
      } else if (c == '"' || c == '\'') {
        pass_string();
      } else if (static_cast<unsigned char>(c) >= 0x80) {
        return TomlFault{line_of(at_), "a letter beyond ASCII stands outside quotes"};
      } else if (c == '[' && depth_ == 0 && at_line_start_) {
        if (!pass_header_start())
          return TomlFault{line_of(at_), "a table's header does not begin with its name"};
      } else {
        if (c == '[' || c == '{') ++depth_;
        if (c == ']' || c == '}') depth_ = std::max(0, depth_ - 1);
        ++at_;
      }
      at_line_start_ = c == '\n' || (at_line_start_ && (c == ' ' || c == '\t' || c == '\r'));
    }
    return std::nullopt;
  }

 private:
  std::size_t line_of(std::size_t at) const {
    const auto end = toml_.begin() + static_cast<std::ptrdiff_t>(std::min(at, toml_.size()));
    return 1 + static_cast<std::size_t>(std::count(toml_.begin(), end, '\n'));
  }

  // Past the string that opens here, by TOML's four kinds of quotes; to the end of the text where it never
  // closes.
  void pass_string() {
    const char quote = toml_[at_];
    const bool is_long = toml_.substr(at_, 3) == std::string_view(quote == '"' ? "\"\"\"" : "'''");
    const std::size_t width = is_long ? 3 : 1;
    for (std::size_t i = at_ + width; i < toml_.size(); ++i) {
      if (toml_[i] == '\\' && quote == '"') {
        ++i;
      } else if (!is_long && toml_[i] == '\n') {
        at_ = i;
        return;
      } else if (toml_[i] == quote && (!is_long || toml_.substr(i, 3) == toml_.substr(at_, 3))) {
        at_ = i + width;
        return;
      }
    }
    at_ = toml_.size();
  }

  // Past "[" or "[[" and blanks; false where no key follows. Its closing brackets find no depth to close.
  bool pass_header_start() {
    ++at_;
    if (at_ < toml_.size() && toml_[at_] == '[') ++at_;
    while (at_ < toml_.size() && (toml_[at_] == ' ' || toml_[at_] == '\t')) ++at_;
    return at_ == toml_.size() || may_begin_key(toml_[at_]);
  }

  std::string_view toml_;
  std::size_t at_ = 0;
  int depth_ = 0;
  bool at_line_start_ = true;
};

}  // namespace

std::optional<TomlFault> unfit_for_parser(std::string_view toml) {
  return Walk(toml).first_fault();
}

Expected<toml::table> parse_toml(std::string_view text, const std::string& name) {
  const auto at = [&](std::size_t line) { return name + ":" + std::to_string(line); };
  if (const auto fault = unfit_for_parser(text))
    return bad_input(fault->what, at(fault->line), "put it in quotes");
  try {
    return toml::parse(text, name);
  } catch (const toml::parse_error& error) {
    return bad_input(std::string(error.description()), at(error.source().begin.line), "mend the TOML");
  }
}

}  // namespace beegarth::garth
