// The journal as JSON Lines, out and in.
#include <algorithm>
#include <tuple>
#include <unordered_map>
#include <utility>

#include "base/utf8.hpp"
#include "book/inside.hpp"
#include "book/journal.hpp"

namespace beegarth::book {
namespace {

constexpr std::size_t longest_line = 1'000'000;  // bytes; an entry of ours stays well below

struct Found {
  Link link;
  std::size_t line = 0;
};

class Importer {
 public:
  Importer(const Database& database, const std::string& file) : database_(database), file_(file) {}

  Book::ImportCount count;
  std::vector<Found> added;  // in the order in which they were written

  Outcome read(std::string_view lines) {
    if (lines.substr(0, 3) == "\xef\xbb\xbf") lines.remove_prefix(3);
    for (std::size_t number = 1; !lines.empty(); ++number) {
      const std::size_t end = std::min(lines.find('\n'), lines.size());
      std::string_view line = lines.substr(0, end);
      lines.remove_prefix(std::min(end + 1, lines.size()));
      if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
      if (line.find_first_not_of(" \t") == std::string_view::npos) continue;
      if (const auto taken = take(line, number); !taken) return taken.problem();
    }
    return Done{};
  }

  // The new entries must continue the chains that are there, and name only entries that are there or come
  // with them.
  Outcome fit() {
    std::sort(added.begin(), added.end(), [](const Found& a, const Found& b) {
      return std::tie(a.link.entry.device, a.link.sequence) < std::tie(b.link.entry.device, b.link.sequence);
    });
    const Link* before = nullptr;
    for (const Found& found : added) {
      if (const auto continues = follow(found, before); !continues) return continues.problem();
      before = &found.link;
    }
    for (const Found& found : added) {
      for (const EntryId& target : targets_of(found.link.entry)) {
        const auto written = written_of(target.text());
        if (!written)
          return bad(found.line,
                     "names entry " + target.text() + ", which is neither in the book nor in the file",
                     "import the file that holds it first");
        if (*written >= found.link.entry.written)
          return bad(found.line, "names entry " + target.text() + ", which was written later",
                     "restore the line as it was exported");
      }
    }
    std::sort(added.begin(), added.end(), [](const Found& a, const Found& b) {
      return std::tie(a.link.entry.written, a.link.entry.device) <
             std::tie(b.link.entry.written, b.link.entry.device);
    });
    count.added = static_cast<int>(added.size());
    return Done{};
  }

 private:
  std::string where(std::size_t line) const { return file_ + ":" + std::to_string(line); }
  Problem bad(std::size_t line, std::string what, std::string remedy) const {
    return bad_input(std::move(what), where(line), std::move(remedy));
  }

  Outcome take(std::string_view line, std::size_t number) {
    if (line.size() > longest_line)
      return bad(number, "the line is longer than " + std::to_string(longest_line) + " bytes",
                 "give one entry a line");
    auto link = link_from_line(line, where(number));
    if (!link) return link.problem();
    if (hash_of(*link) != link->hash)
      return bad(number, "the hash does not fit the content: the line was changed",
                 "restore the line as it was exported");
    if (const auto known = hash_known(link->entry.id.text())) {
      if (*known != link->hash)
        return bad(number, "another entry with the id " + link->entry.id.text() + " is already there",
                   "keep both books and ask which is right");
      ++count.known;
      return Done{};
    }
    new_[link->entry.id.text()] = {link->hash, link->entry.written};
    added.push_back({*std::move(link), number});
    return Done{};
  }

  Outcome follow(const Found& found, const Link* before) {
    const Link& link = found.link;
    const std::string name = link.entry.device + " " + std::to_string(link.sequence);
    if (!before || before->entry.device != link.entry.device) {
      head_ = head_of_device(database_, link.entry.device);
      last_ = last_written(link.entry.device);
    }
    if (link.sequence <= head_.sequence)
      return bad(
          found.line,
          "the device has another entry " + name + ": one of two copies was written under the same name",
          "keep both books; give one copy another device name");
    if (link.sequence != head_.sequence + 1)
      return bad(found.line, "the entries before " + name + " are missing",
                 "import the file that holds them first");
    if (link.previous != head_.hash)
      return bad(found.line, "does not continue the chain before " + name,
                 "restore the line as it was exported");
    if (link.entry.written <= last_)
      return bad(found.line, "was written before the entry before it", "restore the line as it was exported");
    head_ = {link.sequence, link.hash};
    last_ = link.entry.written;
    return Done{};
  }

  std::optional<std::string> hash_known(const std::string& id) {
    if (const auto found = new_.find(id); found != new_.end()) return found->second.first;
    Statement statement = database_.prepare("SELECT hash FROM entry WHERE id = ?1");
    if (!statement.bind(1, id).step()) return std::nullopt;
    return statement.text(0);
  }
  std::optional<entries::Written> written_of(const std::string& id) {
    if (const auto found = new_.find(id); found != new_.end()) return found->second.second;
    Statement statement = database_.prepare("SELECT written_ms, written_counter FROM entry WHERE id = ?1");
    if (!statement.bind(1, id).step()) return std::nullopt;
    return entries::Written{statement.whole(0), static_cast<std::uint32_t>(statement.whole(1))};
  }
  entries::Written last_written(const std::string& device) {
    Statement statement = database_.prepare(
        "SELECT written_ms, written_counter FROM entry WHERE device = ?1 ORDER BY sequence DESC LIMIT 1");
    if (!statement.bind(1, device).step()) return {-1, 0};
    return {statement.whole(0), static_cast<std::uint32_t>(statement.whole(1))};
  }

  const Database& database_;
  const std::string& file_;
  std::unordered_map<std::string, std::pair<std::string, entries::Written>> new_;
  Head head_;
  entries::Written last_;
};

}  // namespace

Expected<std::string> Book::export_lines() const {
  return guarded([&]() -> Expected<std::string> {
    std::string lines;
    std::optional<Problem> fault;
    each_row(inside_->database, RowOrder::by_writing, [&](Row&& row) {
      if (fault) return;
      const auto link = read_row(std::move(row));
      if (!link) {
        fault = link.problem();
      } else {
        lines += line_of(*link) + "\n";
      }
    });
    if (fault) return storage_problem("an entry cannot be read: " + fault->what, fault->where, "run verify");
    return lines;
  });
}

Expected<Book::ImportCount> Book::import_lines(std::string_view lines, const std::string& file_name,
                                               bool dry_run) {
  Inside& in = *inside_;
  if (in.options.read_only && !dry_run)
    return storage_problem("the book is open for reading only", in.database.path(), "open it for writing");
  return guarded([&]() -> Expected<ImportCount> {
    Transaction transaction(in.database, dry_run ? "BEGIN" : "BEGIN IMMEDIATE");
    Importer importer(in.database, file_name);
    if (const auto read = importer.read(lines); !read) return read.problem();
    if (const auto fits = importer.fit(); !fits) return fits.problem();
    if (dry_run) return importer.count;
    Adder adder(in.database);
    for (const Found& found : importer.added) adder.add(found.link);
    transaction.commit();
    return importer.count;
  });
}

}  // namespace beegarth::book
