// Whether a book is sound: its file, its chain, every entry, and the photos that it lists.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "base/expected.hpp"
#include "book/book.hpp"

namespace beegarth::garth {

// Opens the book for itself and for reading only. The photos are looked at where all else is sound.
Expected<book::VerifyReport> check_book(const std::string& path);

nlohmann::json check_json(const book::VerifyReport& report);

}  // namespace beegarth::garth
