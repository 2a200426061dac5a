#include "garth/imports/written_values.hpp"

#include <cctype>
#include <charconv>
#include <cmath>

namespace beegarth::garth {

namespace {

std::optional<double> number_in(std::string text) {
  std::replace(text.begin(), text.end(), ',', '.');
  double value = 0;
  const auto [end, fault] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (fault != std::errc{} || end != text.data() + text.size() || !std::isfinite(value)) return {};
  return value;
}

}  // namespace

std::string plain_word(std::string text) {
  for (char& c : text) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  std::replace(text.begin(), text.end(), '_', ' ');
  return text;
}

std::optional<std::string> Boxes::text(const char* box) const {
  const auto found = values_.find(box);
  return found == values_.end() ? std::nullopt : std::optional(found->second);
}

std::optional<double> Boxes::number(const char* box) {
  const auto said = text(box);
  if (!said) return {};
  const auto value = number_in(*said);
  if (!value) blame(box, "'" + *said + "' is no number", "write it in figures, like 6 or 6.5");
  if (value && *value < 0) blame(box, "'" + *said + "' is less than nothing", "no box of a sheet is");
  return value;
}

std::optional<int> Boxes::whole(const char* box) {
  const auto value = number(box);
  if (!value) return {};
  if (*value < 0 || *value > 1e6 || *value != std::floor(*value)) {
    blame(box, "'" + *text(box) + "' is no whole number", "write 0, 1, 2 ...");
    return {};
  }
  return static_cast<int>(*value);
}

std::optional<double> Boxes::share(const char* box) {
  auto said = text(box);
  if (!said) return {};
  if (said->ends_with('%')) said->pop_back();
  while (said->ends_with(' ')) said->pop_back();
  const auto value = number_in(*said);
  if (value && *value >= 0 && *value <= 100) return *value / 100;
  blame(box, "'" + *text(box) + "' is no share in per cent", "write 0 to 100");
  return {};
}

std::optional<bool> Boxes::flag(const char* box) {
  const auto said = text(box);
  if (!said) return {};
  const std::string word = plain_word(*said);
  if (word == "yes" || word == "y") return true;
  if (word == "no" || word == "n") return false;
  blame(box, "'" + *said + "' is neither yes nor no", "write yes or no, or leave it empty");
  return {};
}

std::optional<Date> Boxes::day(const char* box) {
  const auto said = text(box);
  if (!said) return {};
  const auto date = Date::parse(*said);
  if (date) return *date;
  blame(box, date.problem().what, date.problem().remedy);
  return {};
}

bool Boxes::any(std::initializer_list<const char*> boxes) const {
  return std::any_of(boxes.begin(), boxes.end(), [&](const char* box) { return values_.contains(box); });
}

void Boxes::blame(const char* box, std::string what, std::string remedy) {
  if (!fault_) fault_ = bad_input(std::move(what), box, std::move(remedy));
}

}  // namespace beegarth::garth
