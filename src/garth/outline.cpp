#include "garth/outline.hpp"

#include <utility>

namespace beegarth::garth {

book::State outline_on(const Outline& outline, Date date) {
  return book::outline_of(book::standing_entries(outline.entries, date, outline.known_at), date);
}

Expected<Outline> open_outline(const std::string& path, const SessionOptions& options) {
  auto opened = open_book(path, options);
  if (!opened) return opened.problem();
  auto entries = opened->book.entries_of(book::outline_kinds());
  if (!entries) return entries.problem();
  Outline outline{.path = path,
                  .book = std::move(opened->book),
                  .entries = *std::move(entries),
                  .today = opened->today,
                  .known_at = end_of(options.known_on)};
  outline.state = outline_on(outline, outline.today);
  if (outline.state.first_date) return outline;
  if (auto begun = has_begun(outline.book, path, outline.today, options.known_on); !begun)
    return begun.problem();
  return outline;
}

}  // namespace beegarth::garth
