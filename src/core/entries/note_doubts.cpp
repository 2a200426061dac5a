#include "entries/note_doubts.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <string_view>

#include "entries/note_clause.hpp"

namespace beegarth::entries {
namespace {

constexpr auto other_keepers =
    std::to_array<std::string_view>({"neighbour", "neighbours", "neighbour's", "neighbours'", "neighbor",
                                     "neighbors", "neighbor's", "somebody", "someone", "friend", "friend's"});
constexpr auto not_mine = std::to_array<std::string_view>({"not by me", "not by us", "not me", "not us"});
constexpr auto on_again = std::to_array<std::string_view>(
    {"put back on", "put back", "back on", "on again", "put on again", "put back again"});

template <std::size_t N>
bool is_one_of(const std::array<std::string_view, N>& list, std::string_view text) {
  return std::find(list.begin(), list.end(), text) != list.end();
}

bool has(std::span<const NoteWord> words, std::string_view raw) {
  return std::any_of(words.begin(), words.end(), [&](const NoteWord& word) { return word.raw == raw; });
}

// The words as typed, without those that say nothing here.
std::string bare(std::span<const NoteWord> segment) {
  std::string text;
  for (const NoteWord& word : segment) {
    if (is_filler(word) || word.raw == "it" || word.raw == "them") continue;
    text += (text.empty() ? "" : " ") + word.raw;
  }
  return text;
}

}  // namespace

bool tells_of_before(std::span<const NoteWord> segment) {
  bool off = false;
  for (std::size_t i = 0; i < segment.size(); ++i) {
    if (segment[i].raw == "used" && i + 1 < segment.size() && segment[i + 1].raw == "to") return true;
    if (off && (segment[i].raw == "again" || segment[i].raw == "back")) return true;
    off = off || segment[i].raw == "off";
  }
  return false;
}

bool tells_of_another_keeper(std::span<const NoteWord> segment) {
  const auto first = std::find_if(segment.begin(), segment.end(), [](const NoteWord& word) {
    return !is_filler(word) && word.raw != "my" && word.raw != "our";
  });
  return first != segment.end() && is_one_of(other_keepers, first->raw);
}

bool takes_back(std::span<const NoteWord> segment, std::span<const NoteWord> before) {
  const std::string text = bare(segment);
  return is_one_of(not_mine, text) || (has(before, "off") && is_one_of(on_again, text));
}

}  // namespace beegarth::entries
