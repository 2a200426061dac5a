// Short patterns that words are held against. Private to the room.
//   word      that lemma            a|b    one of them            =a|b   the same, and remembered
//   #         a number              #kg    with a unit of mass    #%     with a per cent sign    #day  with
//   days or weeks    #len  with mm or cm     #min  with minutes    #ratio  two numbers like 1:1
//   #C #mm #wind #h   numbers of weather, their units may be left out; #mm! not
//   QC        "queen cell", "QC"    @colony @hive @site   a known name; its key is remembered
//   *         any one word          +      one to three plain words     ~   one word or more, to the end;
//             all three remembered as typed
//   ...?      may be missing        ^ $    begins, ends a segment
#pragma once

#include <cstddef>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "entries/note_words.hpp"

namespace beegarth::entries {

struct PatternMatch {
  std::size_t words = 0;            // how many it took; 0 where it did not match
  std::vector<double> numbers;      // in the unit of the book
  std::vector<std::string> chosen;  // remembered words
  std::string typed;                // all of it
};

class Pattern {
 public:
  explicit Pattern(std::string_view text);
  // `segment` without marks; `at` is where to begin.
  PatternMatch match(std::span<const NoteWord> segment, std::size_t at) const;
  void collect_words(std::set<std::string>& into) const;

  struct Beginning {
    std::set<std::string> lemmas;  // that it may begin with
    bool number = false;           // or with a number
    bool any = false;              // or with anything
  };
  Beginning beginning() const;

 private:
  struct Element {
    std::string kind;  // "" a word; else "#", "#kg", ... or "*"
    std::vector<std::string> words;
    bool remembered = false;
    bool optional = false;
  };
  bool match_from(std::size_t element, std::span<const NoteWord> segment, std::size_t at,
                  PatternMatch& found) const;
  bool free_words(std::size_t element, std::span<const NoteWord> segment, std::size_t at,
                  PatternMatch& found) const;
  static std::size_t take(const Element& element, std::span<const NoteWord> segment, std::size_t at,
                          PatternMatch& found);

  std::vector<Element> elements_;
  bool begins_ = false;
  bool ends_ = false;
};

}  // namespace beegarth::entries
