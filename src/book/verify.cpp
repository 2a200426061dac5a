// Everything that must hold of a book, checked from the file up; every fault names its entry.
#include <map>
#include <optional>
#include <unordered_map>
#include <utility>

#include "book/canonical.hpp"
#include "book/file.hpp"
#include "book/inside.hpp"
#include "book/journal.hpp"

namespace beegarth::book {
namespace {

constexpr std::size_t most_faults = 20;  // the first says what to do; thousands would hide it

class Verifier {
 public:
  explicit Verifier(const Database& database) : database_(database) {}

  VerifyReport report;

  void file() {
    attempt([&] {
      Statement check = database_.prepare("PRAGMA integrity_check(5)");
      while (check.step()) {
        if (const std::string said = check.text(0); said != "ok") say("the file is damaged: " + said);
      }
      Statement keys = database_.prepare("PRAGMA foreign_key_check");
      while (keys.step()) say("a row of " + keys.text(0) + " points to nothing");
    });
  }

  void form() {
    attempt([&] {
      if (database_.number("PRAGMA application_id") != application_id)
        say("the file is not marked as a book");
      const std::int64_t version = database_.number("PRAGMA user_version");
      if (version < 1 || version > schema_version)
        say("the version of the book is not one of 1 to " + std::to_string(schema_version));
      else if (schema_of(database_) != expected_schema(version))
        say("the tables, checks or triggers are not those of a book");
    });
  }

  void journal() {
    attempt([&] {
      each_row(database_, RowOrder::by_device, [&](Row&& row) { row_of_chain(std::move(row)); });
      for (const auto& [from, to] : targets_) target(from, to);
      report.head = head_of_all(database_);
    });
  }

 private:
  void attempt(const std::function<void()>& work) {
    try {
      work();
    } catch (const StorageTrouble& trouble) {
      say(one_line(trouble.problem));
    }
  }

  void say(const std::string& fault) {
    if (report.faults.size() < most_faults) report.faults.push_back(fault);
  }

  void row_of_chain(Row&& row) {
    ++report.entries;
    const std::string where = "entry " + row.link.entry.id.text() + " (" + row.link.entry.device + " " +
                              std::to_string(row.link.sequence) + "): ";
    follow(row.link, where);
    const std::string stored = row.payload;
    const auto link = read_row(std::move(row));
    if (!link) return say(where + link.problem().what);
    const entries::Entry& entry = link->entry;
    if (payload_json(entry.payload) != stored) say(where + "the payload is not in canonical form");
    if (const auto frame = check_frame(entry, ""); !frame) say(where + frame.problem().what);
    if (hash_of(*link) != link->hash) say(where + "the hash does not fit the content: it was changed");
    for (const EntryId& to : targets_of(entry)) targets_.emplace_back(entry.id.text(), to.text());
  }

  void follow(const Link& link, const std::string& where) {
    if (link.entry.device != device_) {
      device_ = link.entry.device;
      head_ = {};
      last_ = std::nullopt;
    }
    if (link.sequence != head_.sequence + 1) {
      say(where + "entry " + std::to_string(head_.sequence + 1) + " of this device is missing before it");
    } else if (link.previous != head_.hash) {
      say(where + "the chain is broken before it");
    }
    if (last_ && link.entry.written <= *last_) say(where + "the clock ran backwards");
    head_ = {link.sequence, link.hash};
    last_ = link.entry.written;
    written_[link.entry.id.text()] = link.entry.written;
  }

  void target(const std::string& from, const std::string& to) {
    const auto found = written_.find(to);
    if (found == written_.end()) return say("entry " + from + ": names entry " + to + ", which is not there");
    if (found->second >= written_[from])
      say("entry " + from + ": names entry " + to + ", which was written later");
  }

  const Database& database_;
  std::string device_;
  Head head_;
  std::optional<entries::Written> last_;
  std::unordered_map<std::string, entries::Written> written_;
  std::vector<std::pair<std::string, std::string>> targets_;
};

}  // namespace

Expected<VerifyReport> Book::verify() const {
  return guarded([&]() -> Expected<VerifyReport> {
    Transaction transaction(inside_->database, "BEGIN");  // one state of the book throughout
    Verifier verifier(inside_->database);
    verifier.file();
    verifier.form();
    verifier.journal();
    return std::move(verifier.report);
  });
}

}  // namespace beegarth::book
