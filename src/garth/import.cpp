#include "garth/import.hpp"

#include <fmt/format.h>

#include <filesystem>
#include <optional>
#include <set>
#include <system_error>

#include "book/book.hpp"
#include "garth/files.hpp"
#include "garth/import_plan.hpp"
#include "garth/keep.hpp"
#include "garth/session.hpp"
#include "garth/tables.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

// The book to write to: the one there is, or a new one. A dry run opens read-only and makes nothing.
Expected<std::optional<book::Book>> book_for(const ImportWish& wish) {
  const bool there = std::filesystem::exists(wish.book);
  if (!there && wish.dry_run) return std::optional<book::Book>();
  auto book = book::Book::open(wish.book, {.create = !there, .read_only = wish.dry_run, .who = wish.who},
                               machine_surroundings());
  if (!book) return book.problem();
  return std::optional<book::Book>(*std::move(book));
}

// Removes a book that this call has made, because what was to go into it is broken.
void take_back(const std::string& path) {
  std::error_code ignored;
  for (const char* tail : {"", "-wal", "-shm"}) std::filesystem::remove(path + tail, ignored);
}

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
    auto book = book_for(target);
    if (!book) return book.problem();
    return (**book).import_lines(bytes, wish.file, target.dry_run);
  }();
  if (passing || (!there && !count)) take_back(target.book);
  if (!count) return count.problem();
  return ImportAnswer{{{"added", count->added}, {"known", count->known}, {"dry_run", wish.dry_run}},
                      fmt::format("{} {} entries, {} were there already\n",
                                  wish.dry_run ? "would add" : "added", count->added, count->known)};
}

// Takes out the drafts that an entry of the book already tells, so that a file can be imported again after it
// has grown.
std::size_t leave_out_known(const std::vector<entries::Entry>& there, std::vector<ImportDraft>& drafts) {
  std::set<std::string> told;
  const auto key = [](Date date, const entries::Payload& payload) {
    return date.iso() + std::string(entries::kind_name(payload)) + book::payload_json(payload);
  };
  for (const auto& entry : there) told.insert(key(entry.happened, entry.payload));
  return std::erase_if(
      drafts, [&](const ImportDraft& draft) { return told.contains(key(draft.happened, draft.payload)); });
}

Problem first_of(const ImportPlan& plan) {
  Problem first = plan.problems.front();
  if (plan.problems.size() > 1) {
    first.remedy += fmt::format(" ({}{} more problems; nothing was written)", plan.problems.size() - 1,
                                plan.problems.size() == ImportPlan::most_problems ? " or" : "");
  }
  return first;
}

Expected<ImportAnswer> import_table(const ImportWish& wish, const std::string& bytes) {
  const auto map = read_file(wish.map);
  if (!map) return map.problem();
  const auto plan = plan_import(bytes, wish.file, *map, wish.map);
  if (!plan) return plan.problem();
  if (!plan->ready()) return first_of(*plan);
  json kinds = json::object();
  for (const auto& [kind, count] : plan->kinds) kinds[kind] = kinds.value(kind, std::size_t{0}) + count;
  ImportAnswer answer{{{"rows", plan->rows},
                       {"entries", plan->drafts.size()},
                       {"kinds", std::move(kinds)},
                       {"oddities", plan->oddities},
                       {"first", plan->first_entries},
                       {"dry_run", wish.dry_run}},
                      ""};
  for (const std::string& line : report(*plan)) answer.text += line + "\n";
  const bool made_here = !std::filesystem::exists(wish.book);
  auto book = book_for(wish);
  if (!book) return book.problem();
  std::vector<entries::Entry> there;
  if (*book) {
    auto all = (**book).entries();
    if (!all) return all.problem();
    there = *std::move(all);
  }
  std::vector<ImportDraft> fresh = plan->drafts;
  const std::size_t known_before = leave_out_known(there, fresh);
  std::vector<book::Draft> drafts;
  drafts.reserve(fresh.size());
  for (const ImportDraft& draft : fresh)
    drafts.push_back({.happened = draft.happened, .payload = draft.payload});
  const auto refuse = [&](const Problem& problem) {
    if (made_here && !wish.dry_run) {
      book->reset();
      take_back(wish.book);
    }
    return problem;
  };
  const auto tables = Tables::built_in();
  if (!tables) return tables.problem();
  if (const auto objection = objection_to(there, drafts, *tables)) {
    return refuse(told(
        *objection, [&](std::size_t draft) { return fmt::format("{}:{}", wish.file, fresh[draft].line); }));
  }
  answer.json["known"] = known_before;
  if (known_before > 0)
    answer.text += fmt::format("{} of them are in the book already, the same to the word, and are left out\n",
                               known_before);
  if (wish.dry_run) {
    answer.text += "nothing was written: a dry run\n";
    return answer;
  }
  const auto kept = (**book).append(drafts);
  if (!kept) return refuse(kept.problem());
  answer.text += fmt::format("kept: {} entries\n", kept->size());
  return answer;
}

}  // namespace

Expected<ImportAnswer> import_file(const ImportWish& wish) {
  const auto bytes = read_file(wish.file);
  if (!bytes) return bytes.problem();
  return wish.map.empty() ? import_export(wish, *bytes) : import_table(wish, *bytes);
}

}  // namespace beegarth::garth
