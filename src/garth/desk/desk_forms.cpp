// The book in other forms, its queens, photos and checklists, for a page.
#include "draw/draw.hpp"
#include "garth/desk/desk.hpp"
#include "garth/entry_json.hpp"
#include "garth/exports/bundle.hpp"
#include "garth/exports/calendar.hpp"
#include "garth/exports/places.hpp"
#include "garth/keep/checklists.hpp"
#include "garth/keep/keep.hpp"
#include "garth/lines/book_lines.hpp"
#include "garth/lines/pedigree_drawing.hpp"

namespace beegarth::garth {

using nlohmann::json;

Expected<std::string> Desk::exported(BookForm form) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  switch (form) {
    case BookForm::geojson:
      return places_geojson(session_).dump(1) + "\n";
    case BookForm::calendar:
      return calendar_text(calendar_days(session_), session_.today);
    case BookForm::zip: {
      const auto files = bundled_files(session_);
      if (!files) return files.problem();
      return zip_of(*files, session_.today);
    }
    case BookForm::jsonl:
      break;
  }
  return session_.book.export_lines();
}

Expected<json> Desk::lines() {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  const auto lines = lines_of(session_);
  if (!lines) return lines.problem();
  return lines_json(*lines);
}

Expected<std::string> Desk::pedigree() {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  const auto lines = lines_of(session_);
  if (!lines) return lines.problem();
  const auto drawing = pedigree_drawing(lines->pedigree, "Queens of the book", session_.today);
  if (!drawing) return drawing.problem();
  return draw::to_svg(drawing->pages.front());
}

Expected<json> Desk::add_photo(const PhotoWish& wish, std::string_view bytes) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  if (const Outcome likely = likely_date(wish.happened, session_.today, "date"); !likely)
    return likely.problem();
  const auto kept = keep_photo(session_, wish, bytes);
  if (!kept) return kept.problem();
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  return json{{"kept", true}, {"entries", json::array({shown_entry(*kept, session_.state)})}};
}

Expected<PhotoBytes> Desk::photo(std::string_view id) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  return photo_bytes(session_, EntryId(std::string(id)));
}

Expected<json> Desk::checklists() {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  const auto lists = every_checklist(session_);
  if (!lists) return lists.problem();
  json told = json::array();
  for (const auto& list : *lists) told.push_back(checklist_json(list));
  return json{{"checklists", std::move(told)}, {"emergency_number", emergency_number(session_)}};
}

}  // namespace beegarth::garth
