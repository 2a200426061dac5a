// A typed line cut into words, numbers and marks. Private to the room.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace beegarth::entries {

struct KnownName;

// A known name that begins at a word; several where a colony, its hive or a site share it.
struct NameHere {
  const KnownName* name = nullptr;
  std::size_t words = 0;
};

enum class Mark { word, number, colon, query, segment_end, clause_end };

struct NoteWord {
  Mark mark = Mark::word;
  std::string typed;
  std::string raw;        // in lower case
  std::string lemma;      // the word of the trade it stands for: "frames" is "comb"
  double number = 0;      // numbers only
  std::size_t begin = 0;  // in the line
  std::size_t end = 0;
  std::vector<NameHere> names;
};

// Commas, full stops and brackets end a segment; semicolons and line ends a clause. A comma or point before
// exactly three digits may be a thousands separator or a decimal mark, so such a number stays a word.
std::vector<NoteWord> note_words(std::string_view line);

}  // namespace beegarth::entries
