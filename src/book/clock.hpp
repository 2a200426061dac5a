// When an entry was written, and the id that follows from it.
#pragma once

#include <cstdint>
#include <string>

#include "book/book.hpp"

namespace beegarth::book {

// The next reading of the hybrid logical clock: after `latest`, whatever the wall clock says.
entries::Written tick(const entries::Written& latest, std::int64_t wall_utc_ms);

// UUID version 7 (RFC 9562): milliseconds, then the counter in the 12 bits after the version, then random
// bits. Ids sort as text in the order of their clock readings.
EntryId new_entry_id(const entries::Written& written, const Surroundings& surroundings);

// A name for this copy of the book: "d-" and 16 random hex digits.
std::string new_device_name(const Surroundings& surroundings);

}  // namespace beegarth::book
