// What in an entry raises the suspicion of a notifiable disease or pest: foulbroods, small hive beetle,
// Tropilaelaps (trade facts 5.4).
#include <algorithm>
#include <array>
#include <string_view>

#include "garth/ledgers/suspects.hpp"

namespace beegarth::garth {
namespace {

constexpr auto suspicious = std::to_array<std::string_view>(
    {"sunken_cappings", "perforated_cappings", "greasy_cappings", "ropy_larva", "discoloured_larvae",
     "hive_beetle", "other_brood_mite", "foulbrood_suspected"});

// How those who write a result or a report name them; the Latin names are of what causes them.
constexpr auto disease_names =
    std::to_array<std::string_view>({"foulbrood", "foul brood", "afb", "efb", "paenibacillus",
                                     "melissococcus", "hive beetle", "aethina", "tropilaelaps"});

std::vector<std::string> suspicious_among(const std::vector<std::string>& signs) {
  std::vector<std::string> found;
  for (std::string sign : signs) {
    if (std::find(suspicious.begin(), suspicious.end(), sign) == suspicious.end()) continue;
    std::replace(sign.begin(), sign.end(), '_', ' ');
    found.push_back(std::move(sign));
  }
  return found;
}

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

// Small letters, and a blank for whatever is none.
std::string plain_words(std::string text) {
  for (char& c : text) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + ('a' - 'A'));
    if (!is_letter(c)) c = ' ';
  }
  return " " + text + " ";
}

std::vector<std::string> in(const entries::Sample& sample) {
  if (sample.finding != entries::Finding::found) return {};
  const std::string result = sample.result.value_or("");
  if (names_a_notifiable(result)) return {"the laboratory found: " + result};
  // Bees are sent for nosema and mites; the others mostly for foulbrood (from memory).
  const bool may_be =
      sample.of != entries::SampleOf::bees && sample.of != entries::SampleOf::other && result.empty();
  return may_be ? std::vector<std::string>{"the laboratory found something that is not named"}
                : std::vector<std::string>();
}

std::vector<std::string> in(const entries::Reported& reported) {
  if (!names_a_notifiable(reported.what)) return {};
  std::string what = reported.what;
  std::replace(what.begin(), what.end(), '_', ' ');
  return {what + " reported"};
}

std::vector<std::string> in(const entries::Sign& sign) {
  if (sign.how_much == entries::Level::none) return {};
  auto found = suspicious_among(sign.signs);
  if (sign.thread_mm.value_or(0) > 0) found.emplace_back("a thread drawn from a cell");
  return found;
}

std::vector<std::string> in(const entries::Inspection& look) {
  return suspicious_among(look.signs);
}
std::vector<std::string> in(const entries::DeadColony& dead) {
  return suspicious_among(dead.signs);
}
template <class Other>
std::vector<std::string> in(const Other&) {
  return {};
}

}  // namespace

bool names_a_notifiable(const std::string& text) {
  const std::string words = plain_words(text);
  return std::any_of(disease_names.begin(), disease_names.end(), [&](std::string_view name) {
    return words.find(" " + std::string(name)) != std::string::npos;
  });
}

std::vector<std::string> suspicious_signs(const entries::Payload& payload) {
  return std::visit([](const auto& said) { return in(said); }, payload);
}

}  // namespace beegarth::garth
