// What stands in the boxes of one set, read as numbers, days, yes and no, or words of a list. Private to the
// keying-in of sheets.
#pragma once

#include <algorithm>
#include <initializer_list>
#include <map>
#include <optional>
#include <string>
#include <utility>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "entries/fields.hpp"

namespace beegarth::garth {

using WrittenValues = std::map<std::string, std::string>;  // by the name of the box, nothing empty

// Small letters, and blanks for underscores.
std::string plain_word(std::string text);

// The first fault is kept, and what is read after it does not matter. A Problem's `where` is the box.
class Boxes {
 public:
  explicit Boxes(const WrittenValues& values) : values_(values) {}

  std::optional<std::string> text(const char* box) const;
  std::optional<double> number(const char* box);
  std::optional<int> whole(const char* box);
  std::optional<double> share(const char* box);  // written in per cent; 0..1
  std::optional<bool> flag(const char* box);
  std::optional<Date> day(const char* box);
  template <class E>
  std::optional<E> choice(const char* box) {
    const auto said = text(box);
    if (!said) return {};
    const auto& words = entries::Words<E>::list;
    const auto at = std::find_if(words.begin(), words.end(), [&](const auto& word) {
      return plain_word(std::string(word)) == plain_word(*said);
    });
    if (at != words.end()) return static_cast<E>(at - words.begin());
    blame(box, "there is no choice '" + *said + "' here", "write one of: " + words_of<E>());
    return {};
  }
  template <class E>
  E needed(const char* box, const char* what_is_missing) {
    const auto value = choice<E>(box);
    if (!value) blame(box, what_is_missing, "write one of: " + words_of<E>());
    return value.value_or(E{});
  }
  bool any(std::initializer_list<const char*> boxes) const;
  void blame(const char* box, std::string what, std::string remedy);
  const std::optional<Problem>& fault() const { return fault_; }

 private:
  template <class E>
  static std::string words_of() {
    std::string all;
    for (const auto& word : entries::Words<E>::list)
      all += (all.empty() ? "" : ", ") + plain_word(std::string(word));
    return all;
  }

  const WrittenValues& values_;
  std::optional<Problem> fault_;
};

}  // namespace beegarth::garth
