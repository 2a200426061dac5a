// Files whose rows become entries by a map: CSV, places (GeoJSON), events (iCalendar).
#pragma once

#include <optional>
#include <string>

#include "book/book.hpp"
#include "garth/imports/import.hpp"

namespace beegarth::garth {

// `form` is csv, geojson or calendar; without a map the last two are read by that of the program.
Expected<ImportAnswer> import_by_map(const ImportWish& wish, const std::string& form,
                                     const std::string& bytes, const std::optional<MapText>& map);

// The book to write to: the one there is, or a new one. A dry run opens read-only and makes nothing.
Expected<std::optional<book::Book>> book_to_import_into(const ImportWish& wish);
// Removes a book that this call has made, because what was to go into it is broken.
void take_back_book(const std::string& path);

}  // namespace beegarth::garth
