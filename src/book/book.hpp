// The one notebook: an append-only journal in one SQLite file.
#pragma once

#include <cstdint>
#include <functional>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "base/expected.hpp"
#include "entries/entry.hpp"

namespace beegarth::book {

struct Wanted;
struct Hits;

struct OpenOptions {
  bool create = false;  // make a new book where there is none; fails where there is one
  bool read_only = false;
  std::string who = "keeper";  // written into new entries
  std::string device;          // empty: the book's own device id for this machine
};

// What to write: the book adds id, clock, device and hash.
struct Draft {
  Date happened;
  std::optional<double> happened_hour;
  entries::Payload payload;
  std::optional<EntryId> supersedes;
};

struct VerifyReport {
  std::int64_t entries = 0;
  std::vector<std::string> faults;  // empty: the book is sound
  std::string head;                 // hash over the whole journal, 64 hex digits
};

// The wall clock and the source of random bytes, passed in so that tests can set them.
struct Surroundings {
  std::function<std::int64_t()> utc_ms;
  std::function<void(unsigned char*, std::size_t)> random_bytes;
};

class Book {
 public:
  static Expected<Book> open(const std::string& path, const OpenOptions& options, Surroundings surroundings);
  Book(Book&&) noexcept;
  Book& operator=(Book&&) noexcept;
  ~Book();

  // All or none, in one transaction; when it returns the entries are on the disk. Every draft is validated
  // first. `fit`, where there is one, is asked while nobody else can write, with every entry that is there by
  // then: what it refuses is not kept.
  using Fit = std::function<Outcome(std::span<const entries::Entry>)>;
  Expected<std::vector<entries::Entry>> append(const std::vector<Draft>& drafts, const Fit& fit = {});

  // Every entry, in time order of `happened`, then of `written`, then of id. Kept by the book, so that only
  // what is new is read the next time: the span holds until this is called again after something was written.
  Expected<std::span<const entries::Entry>> entries() const;
  // The entries of these kinds and, beside them, all that corrects or takes back anything and what that is
  // done to, so that standing_entries can say which of them count; in the same order. Not every entry is read
  // for it.
  Expected<std::vector<entries::Entry>> entries_of(std::span<const std::string_view> kinds) const;
  // By words, kind, day and what they are about, page by page: find.hpp. Quick in a book of a million
  // entries.
  Expected<Hits> find(const Wanted& wanted) const;
  // An entry and all that corrections and removals join to it, in the same order; bad_input where there is no
  // such entry.
  Expected<std::vector<entries::Entry>> whole_line(const EntryId& id) const;
  Expected<VerifyReport> verify() const;
  // The same hash for the same entries whatever was cached; the ETag of the book.
  Expected<std::string> head() const;

  // JSON Lines, one entry a line, hash chain included. Importing the export into an empty book gives an equal
  // export.
  Expected<std::string> export_lines() const;
  struct ImportCount {
    int added = 0;
    int known = 0;  // already there, skipped
  };
  Expected<ImportCount> import_lines(std::string_view lines, const std::string& file_name, bool dry_run);

 private:
  struct Inside;
  explicit Book(std::unique_ptr<Inside> inside);
  std::unique_ptr<Inside> inside_;
};

// ---- entries as JSON (kept in book/ because core knows no JSON) ----
std::string payload_json(const entries::Payload& payload);  // canonical (RFC 8785), absent fields left out
Expected<entries::Payload> payload_from_json(std::string_view kind, std::string_view json,
                                             const std::string& where);
std::string entry_json(const entries::Entry& entry);  // canonical, without the chain
std::string schema_json(std::string_view kind);       // JSON Schema of one kind

}  // namespace beegarth::book
