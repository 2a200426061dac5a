#include "garth/import.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <optional>
#include <system_error>

#include "book/book.hpp"
#include "garth/files.hpp"
#include "garth/imports/by_map.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {
namespace {

Expected<ImportAnswer> import_export(const ImportWish& wish, const std::string& bytes) {
  const bool there = std::filesystem::exists(wish.book);
  ImportWish target = wish;
  if (!there && wish.dry_run) {
    // A dry run into a book that is not there yet goes into a passing one.
    target.book = (std::filesystem::temp_directory_path() /
                   ("beegarth-trial-" + std::to_string(machine_surroundings().utc_ms())))
                      .string();
    target.dry_run = false;
  }
  const bool passing = target.book != wish.book;
  auto count = [&]() -> Expected<book::Book::ImportCount> {
    auto book = book_to_import_into(target);
    if (!book) return book.problem();
    return (**book).import_lines(bytes, wish.file, target.dry_run);
  }();
  if (passing || (!there && !count)) take_back_book(target.book);
  if (!count) return count.problem();
  return ImportAnswer{{{"added", count->added}, {"known", count->known}, {"dry_run", wish.dry_run}},
                      fmt::format("{} {} entries, {} were there already\n",
                                  wish.dry_run ? "would add" : "added", count->added, count->known)};
}

std::string form_of(const ImportWish& wish) {
  if (!wish.form.empty()) return wish.form;
  const std::string_view file = wish.file;
  if (file.ends_with(".geojson")) return "geojson";
  if (file.ends_with(".ics")) return "calendar";
  return wish.map.empty() ? "jsonl" : "csv";
}

}  // namespace

Expected<ImportAnswer> import_file(const ImportWish& wish) {
  const auto bytes = read_file(wish.file);
  if (!bytes) return bytes.problem();
  const std::string form = form_of(wish);
  if (form == "csv" && wish.map.empty())
    return Problem{ProblemKind::wrong_use, "a CSV file needs a map", "--map", "see maps/example.toml"};
  if (form == "jsonl" && !wish.map.empty())
    return Problem{ProblemKind::wrong_use, "JSON Lines need no map", "--map", "leave it out"};
  return form == "jsonl" ? import_export(wish, *bytes) : import_by_map(wish, form, *bytes);
}

}  // namespace beegarth::garth
