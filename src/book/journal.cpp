#include "book/journal.hpp"

#include <algorithm>
#include <utility>

#include "book/book.hpp"
#include "book/canonical.hpp"
#include "book/sha256.hpp"

namespace beegarth::book {

namespace {

constexpr std::string_view head_sql =
    "SELECT sequence, hash FROM entry WHERE device = ?1 ORDER BY sequence DESC LIMIT 1";

Head head_from(Statement& statement, const std::string& device) {
  statement.bind(1, device);
  Head head;
  if (statement.step()) head = {statement.whole(0), statement.text(1)};
  statement.reset();
  return head;
}

}  // namespace

Head head_of_device(const Database& database, const std::string& device) {
  Statement statement = database.prepare(head_sql);
  return head_from(statement, device);
}

std::string head_of_all(const Database& database) {
  Statement statement = database.prepare(
      "SELECT device, sequence, hash FROM entry AS e WHERE sequence = (SELECT max(sequence) FROM entry WHERE "
      "device = e.device) ORDER BY device");
  std::string all;
  while (statement.step()) {
    all += statement.text(0) + " " + std::to_string(statement.whole(1)) + " " + statement.text(2) + "\n";
  }
  return sha256_hex(all);
}

Adder::Adder(const Database& database)
    : next_device_(database.prepare("SELECT min(device) FROM entry WHERE device > ?1")),
      last_of_device_(
          database.prepare("SELECT written_ms, written_counter FROM entry WHERE device = ?1 ORDER "
                           "BY sequence DESC LIMIT 1")),
      head_(database.prepare(head_sql)),
      has_(database.prepare("SELECT 1 FROM entry WHERE id = ?1")),
      insert_(database.prepare("INSERT INTO entry(id, device, sequence, kind, happened, happened_hour, "
                               "written_ms, written_counter, who, "
                               "supersedes, payload, previous, hash) VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, "
                               "?9, ?10, ?11, ?12, ?13)")) {}

// Each is reset as soon as it has answered: one that waits for more would hold on to an old state of the
// file.
entries::Written Adder::latest_written() {
  // A device writes later and later, so its last entry is its latest. The devices are few, and each is found
  // by one step in the index (device, sequence); a recursive query says the same, and sorts in passing.
  entries::Written latest{-1, 0};
  for (std::string device;;) {
    next_device_.bind(1, device).step();
    const bool none = next_device_.is_null(0);
    if (!none) device = next_device_.text(0);
    next_device_.reset();
    if (none) return latest;
    last_of_device_.bind(1, device).step();
    latest = std::max(latest, entries::Written{last_of_device_.whole(0),
                                               static_cast<std::uint32_t>(last_of_device_.whole(1))});
    last_of_device_.reset();
  }
}

Head Adder::head_of_device(const std::string& device) {
  return head_from(head_, device);
}

bool Adder::has_entry(const EntryId& id) {
  const bool there = has_.bind(1, id.text()).step();
  has_.reset();
  return there;
}

void Adder::add(const Link& link) {
  const entries::Entry& entry = link.entry;
  insert_.bind(1, entry.id.text()).bind(2, entry.device).bind(3, link.sequence);
  insert_.bind(4, entries::kind_name(entry.payload)).bind(5, entry.happened.iso());
  entry.happened_hour ? insert_.bind(6, *entry.happened_hour) : insert_.bind_null(6);
  insert_.bind(7, entry.written.utc_ms).bind(8, std::int64_t{entry.written.counter}).bind(9, entry.who);
  entry.supersedes ? insert_.bind(10, entry.supersedes->text()) : insert_.bind_null(10);
  insert_.bind(11, payload_json(entry.payload)).bind(12, link.previous).bind(13, link.hash);
  insert_.step();
  insert_.reset();
}

namespace {

constexpr std::string_view columns =
    "row, id, device, sequence, kind, happened, happened_hour, written_ms, written_counter, who, supersedes, "
    "payload, previous, hash";

void take_all(Statement statement, const std::function<void(Row&&)>& take) {
  while (statement.step()) {
    Row row;
    entries::Entry& entry = row.link.entry;
    row.place = statement.whole(0);
    entry.id = EntryId(statement.text(1));
    entry.device = statement.text(2);
    row.link.sequence = statement.whole(3);
    row.kind = statement.text(4);
    row.happened = statement.text(5);
    if (!statement.is_null(6)) entry.happened_hour = statement.real(6);
    entry.written = {statement.whole(7), static_cast<std::uint32_t>(statement.whole(8))};
    entry.who = statement.text(9);
    if (!statement.is_null(10)) entry.supersedes = EntryId(statement.text(10));
    row.payload = statement.text(11);
    row.link.previous = statement.text(12);
    row.link.hash = statement.text(13);
    take(std::move(row));
  }
}

std::string select_rows(std::string_view rest) {
  return "SELECT " + std::string(columns) + " FROM entry " + std::string(rest);
}

}  // namespace

void each_row(const Database& database, RowOrder order, const std::function<void(Row&&)>& take) {
  take_all(database.prepare(select_rows(order == RowOrder::by_device
                                            ? "ORDER BY device, sequence"
                                            : "ORDER BY written_ms, written_counter, device, sequence")),
           take);
}

void each_row_above(const Database& database, std::int64_t place, const std::function<void(Row&&)>& take) {
  Statement statement = database.prepare(select_rows("WHERE row > ?1 ORDER BY row"));
  statement.bind(1, place);
  take_all(std::move(statement), take);
}

void each_row_of(const Database& database, std::span<const std::string_view> kinds,
                 const std::function<void(Row&&)>& take) {
  Statement statement = database.prepare(
      "WITH wanted(kind) AS (SELECT value FROM json_each(?1)), "
      "linked(id) AS (SELECT id FROM entry WHERE supersedes IS NOT NULL UNION SELECT supersedes FROM entry "
      "WHERE supersedes IS NOT NULL UNION SELECT json_extract(payload, '$.entry') FROM entry WHERE kind = "
      "'removed') " +
      select_rows("WHERE row IN (SELECT row FROM entry WHERE kind IN (SELECT kind FROM wanted) OR kind = "
                  "'removed' UNION SELECT row FROM entry WHERE id IN (SELECT id FROM linked))"));
  const std::string list = canonical(nlohmann::json(std::vector<std::string>(kinds.begin(), kinds.end())));
  statement.bind(1, list);
  take_all(std::move(statement), take);
}

namespace {

std::optional<entries::Entry> only_one(Statement statement) {
  std::optional<entries::Entry> found;
  take_all(std::move(statement), [&](Row&& row) {
    if (auto link = read_row(std::move(row))) found = std::move(link->entry);
  });
  return found;
}

}  // namespace

std::optional<entries::Entry> entry_with_id(const Database& database, const EntryId& id) {
  Statement statement = database.prepare(select_rows("WHERE id = ?1"));
  statement.bind(1, id.text());
  return only_one(std::move(statement));
}

std::optional<entries::Entry> entry_at_row(const Database& database, std::int64_t place) {
  Statement statement = database.prepare(select_rows("WHERE row = ?1"));
  statement.bind(1, place);
  return only_one(std::move(statement));
}

Expected<Link> read_row(Row&& row) {
  Link link = std::move(row.link);
  const std::string where = "entry " + link.entry.id.text();
  const auto happened = Date::parse(row.happened);
  if (!happened) return bad_input("happened on no day of the calendar", where, "take the last backup");
  link.entry.happened = *happened;
  auto payload = payload_from_json(row.kind, row.payload, where);
  if (!payload) return payload.problem();
  link.entry.payload = *std::move(payload);
  return link;
}

}  // namespace beegarth::book
