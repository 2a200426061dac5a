#include "book/journal.hpp"

#include <utility>

#include "book/book.hpp"
#include "book/sha256.hpp"

namespace beegarth::book {

entries::Written latest_written(const Database& database) {
  Statement statement = database.prepare(
      "SELECT written_ms, written_counter FROM entry ORDER BY written_ms DESC, written_counter DESC LIMIT 1");
  if (!statement.step()) return {-1, 0};  // earlier than any
  return {statement.whole(0), static_cast<std::uint32_t>(statement.whole(1))};
}

Head head_of_device(const Database& database, const std::string& device) {
  Statement statement =
      database.prepare("SELECT sequence, hash FROM entry WHERE device = ?1 ORDER BY sequence DESC LIMIT 1");
  statement.bind(1, device);
  if (!statement.step()) return {};
  return {statement.whole(0), statement.text(1)};
}

bool has_entry(const Database& database, const EntryId& id) {
  Statement statement = database.prepare("SELECT 1 FROM entry WHERE id = ?1");
  return statement.bind(1, id.text()).step();
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
    : statement_(database.prepare("INSERT INTO entry(id, device, sequence, kind, happened, happened_hour, "
                                  "written_ms, written_counter, who, "
                                  "supersedes, payload, previous, hash) VALUES(?1, ?2, ?3, ?4, ?5, ?6, ?7, "
                                  "?8, ?9, ?10, ?11, ?12, ?13)")) {}

void Adder::add(const Link& link) {
  const entries::Entry& entry = link.entry;
  statement_.reset();
  statement_.bind(1, entry.id.text()).bind(2, entry.device).bind(3, link.sequence);
  statement_.bind(4, entries::kind_name(entry.payload)).bind(5, entry.happened.iso());
  entry.happened_hour ? statement_.bind(6, *entry.happened_hour) : statement_.bind_null(6);
  statement_.bind(7, entry.written.utc_ms).bind(8, std::int64_t{entry.written.counter}).bind(9, entry.who);
  entry.supersedes ? statement_.bind(10, entry.supersedes->text()) : statement_.bind_null(10);
  statement_.bind(11, payload_json(entry.payload)).bind(12, link.previous).bind(13, link.hash);
  statement_.step();
}

void each_row(const Database& database, RowOrder order, const std::function<void(Row&&)>& take) {
  const std::string columns =
      "SELECT id, device, sequence, kind, happened, happened_hour, written_ms, written_counter, who, "
      "supersedes, "
      "payload, previous, hash FROM entry ";
  Statement statement = database.prepare(
      columns + (order == RowOrder::by_device ? "ORDER BY device, sequence"
                                              : "ORDER BY written_ms, written_counter, device, sequence"));
  while (statement.step()) {
    Row row;
    entries::Entry& entry = row.link.entry;
    entry.id = EntryId(statement.text(0));
    entry.device = statement.text(1);
    row.link.sequence = statement.whole(2);
    row.kind = statement.text(3);
    row.happened = statement.text(4);
    if (!statement.is_null(5)) entry.happened_hour = statement.real(5);
    entry.written = {statement.whole(6), static_cast<std::uint32_t>(statement.whole(7))};
    entry.who = statement.text(8);
    if (!statement.is_null(9)) entry.supersedes = EntryId(statement.text(9));
    row.payload = statement.text(10);
    row.link.previous = statement.text(11);
    row.link.hash = statement.text(12);
    take(std::move(row));
  }
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
