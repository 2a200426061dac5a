#include "garth/ledgers/comb_store.hpp"

#include <algorithm>
#include <cctype>
#include <utility>

namespace beegarth::garth {
namespace {

// "National", "national " and "NATIONAL" are one pattern.
std::string plain(const std::string& type) {
  std::string key;
  for (const char c : type)
    if (std::isspace(static_cast<unsigned char>(c)) == 0)
      key += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return key;
}

}  // namespace

void CombStore::lay(Pile pile, const std::string& type, HoneyMark mark, Date day) {
  mark.stored = day;
  marks_.try_emplace({pile, plain(type)}, std::move(mark));
}

std::string CombStore::pattern_of(const std::string& type) const {
  std::string pattern = plain(type);
  for (auto same = called_like_.find(pattern); same != called_like_.end(); same = called_like_.find(pattern))
    pattern = same->second;
  return pattern;
}

void CombStore::are_one_pattern(const std::string& type, const std::string& other) {
  const std::string one = pattern_of(type), two = pattern_of(other);
  if (one != two && !one.empty() && !two.empty()) called_like_[two] = one;
}

std::optional<HoneyMark> CombStore::mark_in(Pile pile, const std::string& type) const {
  const std::string wanted = pattern_of(type);
  const auto found = std::find_if(marks_.begin(), marks_.end(), [&](const auto& one) {
    const auto& [there, pattern] = one.first;
    return there == pile && (pattern.empty() || wanted.empty() || pattern_of(pattern) == wanted);
  });
  return found == marks_.end() ? std::nullopt : std::optional(found->second);
}

}  // namespace beegarth::garth
