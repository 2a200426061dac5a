// The file of words beside a book: which entry lies where, which words stand in it, what corrects what.
// Private to the room; see find.hpp.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "book/find.hpp"
#include "book/sqlite.hpp"

namespace beegarth::book {

// An entry's place among all, by day and then by its row in the journal.
constexpr std::int64_t rows_of_a_day = std::int64_t{1} << 31;
inline std::int64_t place_of(Date day, std::int64_t row) {
  return day.day_number() * rows_of_a_day + row;
}
inline std::int64_t row_at(std::int64_t place) {
  return ((place % rows_of_a_day) + rows_of_a_day) % rows_of_a_day;
}

class WordIndex {
 public:
  // In the file beside the book, or in memory where that is not wished or cannot be.
  WordIndex(const std::string& book_path, std::string identity, bool in_a_file);

  void catch_up(const Database& book);

  struct Places {
    std::vector<std::int64_t> places;  // newest first, one more than the limit where there are more
    std::size_t count = 0;
  };
  Places find(const Wanted& wanted, std::optional<std::int64_t> below) const;
  // The entries that correct or take back this one.
  std::vector<EntryId> linked_to(const EntryId& id) const;

 private:
  void make_anew();
  bool fits(const Database& book) const;
  bool take_names(const Database& book, std::int64_t above);
  void take_entries(const Database& book, std::int64_t above);

  std::string identity_;
  Database database_;
};

}  // namespace beegarth::book
