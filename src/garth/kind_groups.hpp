// The kinds of entry as a keeper would look for them: a few plain groups.
#pragma once

#include <span>
#include <string_view>

namespace beegarth::garth {

struct GroupedKind {
  std::string_view kind;
  // The field in which an entry of this kind brings in a key of its own, as a new colony its key; else empty.
  std::string_view brings_in = {};
  bool by_hand = true;  // false: made by the program from something else, never typed into a form
};

struct KindGroup {
  std::string_view name;  // "seen"
  std::string_view words;
  std::span<const GroupedKind> kinds;
};

// Each kind stands in one group.
std::span<const KindGroup> kind_groups();

// What a search means by `wanted`: a kind, a group, "notebook" (all that a keeper writes: everything but the
// weather) or "" (everything).
inline constexpr std::string_view notebook = "notebook";
bool is_kind_or_group(std::string_view wanted);
bool kind_is_of(std::string_view kind, std::string_view wanted);

}  // namespace beegarth::garth
