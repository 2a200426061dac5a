// Everything in the book in one zip that can be read without beegarth.
#pragma once

#include <string>
#include <vector>

#include "garth/session.hpp"

namespace beegarth::garth {

struct BundledFile {
  std::string name;  // with folders: "registers/medicines.csv"
  std::string bytes;
};

// A read-me, the journal as JSON Lines, every register as CSV, the places as GeoJSON, the dates as iCalendar,
// and the photos. What could not be read is named in the read-me.
Expected<std::vector<BundledFile>> bundled_files(const Session& session);

// A zip (deflate), its files dated `dated`: the same files give the same bytes.
std::string zip_of(const std::vector<BundledFile>& files, Date dated);

}  // namespace beegarth::garth
