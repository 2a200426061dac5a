#include "garth/imports/import.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <optional>
#include <set>
#include <system_error>

#include "book/book.hpp"
#include "garth/files.hpp"
#include "garth/imports/by_map.hpp"
#include "garth/imports/import_plan.hpp"
#include "garth/imports/import_remarks.hpp"
#include "garth/session.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

std::set<EntryId> ids_of(std::span<const entries::Entry> all) {
  std::set<EntryId> ids;
  for (const auto& entry : all) ids.insert(entry.id);
  return ids;
}

struct Imported {
  book::Book::ImportCount count;
  std::vector<std::string> remarks;
};

Expected<Imported> import_into(book::Book& book, const std::string& bytes, const std::string& file) {
  const auto there = book.entries();
  if (!there) return there.problem();
  const std::set<EntryId> known_before = ids_of(*there);
  const auto count = book.import_lines(bytes, file, false);
  if (!count) return count.problem();
  if (count->added == 0) return Imported{*count, {}};
  const auto all = book.entries();
  if (!all) return all.problem();
  std::set<EntryId> added = ids_of(*all);
  std::erase_if(added, [&](const EntryId& id) { return known_before.contains(id); });
  auto tables = Tables::built_in();
  if (!tables) return tables.problem();
  const Date last = *Date::from_ymd(2999, 12, 31);
  const auto state = book::state_of(book::standing_entries(*all, last), last);
  if (auto own = tables->with(state.overrides)) tables = *std::move(own);
  return Imported{*count, what_gates_would_have_refused(*all, added, *tables)};
}

// Takes itself back when it is no longer wanted.
class PassingBook {
 public:
  PassingBook()
      : path_((std::filesystem::temp_directory_path() /
               ("beegarth-trial-" + std::to_string(machine_surroundings().utc_ms())))
                  .string()) {}
  PassingBook(const PassingBook&) = delete;
  PassingBook& operator=(const PassingBook&) = delete;
  ~PassingBook() { take_back_book(path_); }
  const std::string& path() const { return path_; }

 private:
  std::string path_;
};

// What an import would do is found out by doing it to a copy of the book.
Expected<Imported> try_import(const ImportWish& wish, const std::string& bytes) {
  const PassingBook passing;
  auto copy = book::Book::open(passing.path(), {.create = true, .who = wish.who}, machine_surroundings());
  if (!copy) return copy.problem();
  if (std::filesystem::exists(wish.book)) {
    const auto book = book::Book::open(wish.book, {.read_only = true}, machine_surroundings());
    if (!book) return book.problem();
    const auto lines = book->export_lines();
    if (!lines) return lines.problem();
    if (const auto there = copy->import_lines(*lines, wish.book, false); !there) return there.problem();
  }
  return import_into(*copy, bytes, wish.file);
}

Expected<Imported> do_import(const ImportWish& wish, const std::string& bytes) {
  const bool there = std::filesystem::exists(wish.book);
  auto imported = [&]() -> Expected<Imported> {
    auto book = book_to_import_into(wish);
    if (!book) return book.problem();
    return import_into(**book, bytes, wish.file);
  }();
  if (!there && !imported) take_back_book(wish.book);
  return imported;
}

Expected<ImportAnswer> import_export(const ImportWish& wish, const std::string& bytes) {
  const auto imported = wish.dry_run ? try_import(wish, bytes) : do_import(wish, bytes);
  if (!imported) return imported.problem();
  const auto& count = imported->count;
  nlohmann::json answer{{"added", count.added}, {"known", count.known}, {"dry_run", wish.dry_run}};
  if (!imported->remarks.empty()) answer["remarks"] = imported->remarks;
  return ImportAnswer{std::move(answer),
                      fmt::format("{} {} entries, {} were there already\n",
                                  wish.dry_run ? "would add" : "added", count.added, count.known),
                      imported->remarks};
}

std::string form_of(const ImportWish& wish, bool with_map) {
  if (!wish.form.empty()) return wish.form;
  const std::string_view file = wish.file;
  if (file.ends_with(".geojson")) return "geojson";
  if (file.ends_with(".ics")) return "calendar";
  return with_map ? "csv" : "jsonl";
}

}  // namespace

Problem as_one(const std::vector<Problem>& refused) {
  Problem first = refused.front();
  if (refused.size() > 1) {
    first.remedy += fmt::format(" ({}{} more problems; nothing was written)", refused.size() - 1,
                                refused.size() == ImportPlan::most_problems ? " or" : "");
  }
  return first;
}

Expected<ImportAnswer> import_text(const ImportWish& wish, const std::string& bytes,
                                   const std::optional<MapText>& map) {
  const std::string form = form_of(wish, map.has_value());
  if (form == "csv" && !map)
    return Problem{ProblemKind::wrong_use, "a CSV file needs a map", "--map", "see maps/example.toml"};
  if (form == "jsonl" && map)
    return Problem{ProblemKind::wrong_use, "JSON Lines need no map", "--map", "leave it out"};
  return form == "jsonl" ? import_export(wish, bytes) : import_by_map(wish, form, bytes, map);
}

Expected<ImportAnswer> import_file(const ImportWish& wish) {
  const auto bytes = read_file(wish.file);
  if (!bytes) return bytes.problem();
  std::optional<MapText> map;
  if (!wish.map.empty()) {
    auto toml = read_file(wish.map);
    if (!toml) return toml.problem();
    map = MapText{wish.map, *std::move(toml)};
  }
  auto answer = import_text(wish, *bytes, map);
  if (answer && !answer->refused.empty()) return as_one(answer->refused);
  return answer;
}

}  // namespace beegarth::garth
