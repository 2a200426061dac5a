// Rows of the journal: reading, adding, and what the next entry needs to know.
#pragma once

#include <functional>
#include <map>
#include <string>
#include <vector>

#include "book/json_entry.hpp"
#include "book/sqlite.hpp"

namespace beegarth::book {

inline const std::string no_previous(64, '0');

struct Head {  // the last entry of one device
  std::int64_t sequence = 0;
  std::string hash = no_previous;
};

entries::Written latest_written(const Database& database);
Head head_of_device(const Database& database, const std::string& device);
bool has_entry(const Database& database, const EntryId& id);
// One hash for the whole journal: SHA-256 over "device sequence hash\n" of the last entry of each device, by
// device.
std::string head_of_all(const Database& database);

class Adder {
 public:
  explicit Adder(const Database& database);
  void add(const Link& link);

 private:
  Statement statement_;
};

// A row as it lies in the file, payload unread.
struct Row {
  Link link;  // without payload and date
  std::string kind;
  std::string happened;
  std::string payload;
};

enum class RowOrder { by_writing, by_device };

// Calls `take` with every row, in the order in which entries were written or along the chain of one device
// after another.
void each_row(const Database& database, RowOrder order, const std::function<void(Row&&)>& take);

// The row with its payload read; a problem where that cannot be done.
Expected<Link> read_row(Row&& row);

}  // namespace beegarth::book
