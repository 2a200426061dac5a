// All that was said of one site, colony or hive on one day, and how it becomes entries and is read back.
// Private to the room.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "entries/note_clause.hpp"
#include "entries/note_corrections.hpp"
#include "entries/note_items.hpp"
#include "entries/note_line.hpp"

namespace beegarth::entries {

class NoteGroup {
 public:
  NoteGroup(std::string_view line, const KnownName* name, Date date, std::optional<double> hour,
            bool forecast, int line_number);

  // Whether what is said of that name then goes on here.
  bool goes_on(const KnownName* name, Date date, std::optional<double> hour, bool forecast) const {
    return name_ == name && date_ == date && forecast_ == forecast && (!hour || hour_ == hour);
  }
  void add_head(const Clause& clause);
  void read_segment(Clause& clause, const Segment& segment, const std::vector<Correction>& corrections);
  // A suspicion of foulbrood that is said in doubt is not lost in the text.
  void ask_about(const Clause& clause, const Segment& segment);
  void keep_text(const Clause& clause, const std::vector<Segment>& segments);
  void at_line(int number) { line_number_ = number; }
  void close(NoteReading& into);

 private:
  const ItemList& items() const;
  void take(Clause& clause, const std::vector<NoteWord>& words, const std::vector<std::size_t>& where,
            const Matched& match, const std::vector<Correction>& corrections);
  void propose(NoteReading& into, Payload payload, const std::string& words, int line_number) const;
  std::string typed(std::size_t begin, std::size_t end) const {
    return std::string(line_.substr(begin, end - begin));
  }

  std::string_view line_;
  const KnownName* name_ = nullptr;  // nullptr where nobody of the book is named
  Date date_;
  std::optional<double> hour_;
  bool forecast_ = false;
  int line_number_ = 1;
  int first_line_ = 1;
  Said said_;
  std::string head_;  // the words that said whom and when
  std::string look_words_;
  std::string weather_words_;
  std::vector<std::string> other_words_;
  std::vector<int> other_lines_;
  std::string text_;
  std::vector<std::string> questions_;
};

// What can be said of it; of days to come nothing but weather.
const ItemList& items_about(const KnownName* name, bool forecast);

}  // namespace beegarth::entries
