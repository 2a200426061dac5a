// Rows of the journal: reading, adding, and what the next entry needs to know.
#pragma once

#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "book/json_entry.hpp"
#include "book/sqlite.hpp"

namespace beegarth::book {

inline const std::string no_previous(64, '0');

struct Head {  // the last entry of one device
  std::int64_t sequence = 0;
  std::string hash = no_previous;
};

Head head_of_device(const Database& database, const std::string& device);
// One hash for the whole journal: SHA-256 over "device sequence hash\n" of the last entry of each device, by
// device.
std::string head_of_all(const Database& database);

// Adds entries, and tells what the next one needs to know. Its statements are prepared once: that is most of
// the work of a single entry.
class Adder {
 public:
  explicit Adder(const Database& database);
  entries::Written latest_written();  // of any entry; earlier than any in an empty book
  Head head_of_device(const std::string& device);
  bool has_entry(const EntryId& id);
  void add(const Link& link);

 private:
  Statement next_device_, last_of_device_, head_, has_, insert_;
};

// A row as it lies in the file, payload unread.
struct Row {
  std::int64_t place = 0;  // in the file: whatever comes into the book later lies higher
  Link link;               // without payload and date
  std::string kind;
  std::string happened;
  std::string payload;
};

enum class RowOrder { by_writing, by_device };

// Calls `take` with every row, in the order in which entries were written or along the chain of one device
// after another.
void each_row(const Database& database, RowOrder order, const std::function<void(Row&&)>& take);
// The rows that lie above `place`, in the order in which they came into this book.
void each_row_above(const Database& database, std::int64_t place, const std::function<void(Row&&)>& take);
// The rows of `kinds`, every row that corrects or takes back another, and every row that this is done to.
void each_row_of(const Database& database, std::span<const std::string_view> kinds,
                 const std::function<void(Row&&)>& take);

// One row with its payload read; nullopt where there is none or it cannot be read.
std::optional<entries::Entry> entry_with_id(const Database& database, const EntryId& id);
std::optional<entries::Entry> entry_at_row(const Database& database, std::int64_t place);
// The row with its payload read; a problem where that cannot be done.
Expected<Link> read_row(Row&& row);

}  // namespace beegarth::book
