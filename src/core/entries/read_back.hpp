// An entry in one plain line, as a keeper reads it back before it is kept.
#pragma once

#include <string>

#include "entries/entry.hpp"

namespace beegarth::entries {

// "mite count, alder-5: method wash, mites 7, bees 300". What was not said does not appear.
std::string read_back(const Payload& payload);
// The same without the kind and without whom it is about: "method wash, mites 7, bees 300".
std::string read_back_fields(const Payload& payload);

std::string plain_number(double value);  // "2.5", "43"; at most six decimals

}  // namespace beegarth::entries
