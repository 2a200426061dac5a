// The file of a book: making one, opening one, and saying exactly why that cannot be done. Nothing is written
// or created on the way to a refusal.
#pragma once

#include <string>

#include "book/book.hpp"
#include "book/sqlite.hpp"

namespace beegarth::book {

inline constexpr std::int32_t application_id = 0x62656567;  // "beeg"
inline constexpr int schema_version = 3;

// These throw StorageTrouble.
void create_book_file(const std::string& path, const Surroundings& surroundings);
Database open_book_file(const std::string& path, bool read_only);

// A path as a file: URI of SQLite.
std::string file_uri(const std::string& path, const char* query);

// Tells this copy of the file from any other: a copied or restored file has another.
std::string identity_of(const std::string& path);

// Tables, indexes and triggers of a book, as SQLite describes them: those it has, and those that a book of a
// version (1 to schema_version) must have. A book of an older version is read as it is, and brought up to
// date when it is opened for writing.
std::string schema_of(const Database& database);
const std::string& expected_schema(std::int64_t version);

}  // namespace beegarth::book
