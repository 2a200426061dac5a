#include "book/word_index.hpp"

#include <unistd.h>

#include <algorithm>
#include <array>
#include <cstdio>
#include <fstream>
#include <utility>

#include "book/file.hpp"
#include "book/inside.hpp"
#include "book/journal.hpp"
#include "entries/fields.hpp"
#include "entries/read_back.hpp"

namespace beegarth::book {
namespace {

// https://www.sqlite.org/fts5.html. The text itself is not kept again (content=''): it is read from the
// journal.
constexpr const char* index_sql = R"sql(
CREATE VIRTUAL TABLE said USING fts5(text, mark, content='', columnsize=0, prefix='1', tokenize="unicode61 remove_diacritics 2");
CREATE TABLE placed(place INTEGER PRIMARY KEY) STRICT;
CREATE TABLE link(target TEXT NOT NULL, by TEXT NOT NULL, PRIMARY KEY(target, by)) WITHOUT ROWID, STRICT;
CREATE TABLE name(key TEXT PRIMARY KEY, name TEXT NOT NULL) WITHOUT ROWID, STRICT;
CREATE TABLE made(only INTEGER PRIMARY KEY CHECK(only = 1), identity TEXT NOT NULL, row INTEGER NOT NULL,
  hash TEXT NOT NULL) STRICT;
)sql";
constexpr int index_version = 1;

// One word of letters and digits for a key or a kind, whatever stands in it: no two come out the same.
std::string mark_of(char sort, std::string_view key) {
  constexpr std::string_view hex = "0123456789abcdef";
  std::string mark(1, sort);
  for (const char c : key) {
    mark += hex[static_cast<unsigned char>(c) >> 4U];
    mark += hex[static_cast<unsigned char>(c) & 15U];
  }
  return mark;
}
std::string mark_of_id(const SiteId& id) {
  return mark_of('s', id.text());
}
std::string mark_of_id(const HiveId& id) {
  return mark_of('h', id.text());
}
std::string mark_of_id(const ColonyId& id) {
  return mark_of('c', id.text());
}
std::string mark_of_id(const QueenId& id) {
  return mark_of('q', id.text());
}

// The marks of all that an entry names.
struct MarksNamed : entries::FieldsPassedBy {
  using FieldsPassedBy::id;
  using FieldsPassedBy::ids;
  std::vector<std::string> marks;

  template <class T>
  void id(const char*, const Id<T>& value, bool) {
    if constexpr (requires { mark_of_id(value); }) marks.push_back(mark_of_id(value));
  }
  template <class T>
  void id(const char* name, const std::optional<Id<T>>& value) {
    if (value) id(name, *value, false);
  }
  template <class T>
  void ids(const char* name, const std::vector<Id<T>>& values) {
    for (const Id<T>& value : values) id(name, value, false);
  }
};

// What an entry gives a name to.
struct Naming {
  std::string mark;
  std::string name;
};
std::optional<Naming> naming_of(const entries::Payload& payload) {
  if (const auto* site = std::get_if<entries::Site>(&payload))
    return Naming{mark_of_id(site->site), site->name};
  if (const auto* hive = std::get_if<entries::Hive>(&payload))
    return Naming{mark_of_id(hive->hive), hive->name};
  if (const auto* began = std::get_if<entries::ColonyBegan>(&payload))
    return Naming{mark_of_id(began->colony), began->name};
  if (const auto* split = std::get_if<entries::Split>(&payload))
    return Naming{mark_of_id(split->into), split->name};
  if (const auto* queen = std::get_if<entries::QueenBegan>(&payload))
    return Naming{mark_of_id(queen->queen), queen->name};
  return std::nullopt;
}
constexpr auto naming_kinds =
    std::to_array<std::string_view>({"site", "hive", "colony_began", "split", "queen_began"});

constexpr std::int64_t index_application_id = 0x62656777;  // "begw"

// Anything but a file of words that stands under this name is left alone.
bool may_be_ours(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::array<char, 72> header{};
  if (!file.read(header.data(), header.size())) return file.gcount() == 0;  // there is none, or it is empty
  std::int64_t id = 0;
  for (std::size_t i = 68; i < 72; ++i) id = (id << 8) | static_cast<unsigned char>(header[i]);
  return std::string_view(header.data(), 15) == "SQLite format 3" && id == index_application_id;
}

Database open_index(const std::string& book_path, bool in_a_file) {
  const std::string path = book_path + "-words";
  const std::size_t slash = path.rfind('/');
  const std::string folder =
      slash == std::string::npos ? "." : path.substr(0, std::max<std::size_t>(slash, 1));
  if (in_a_file && ::access(folder.c_str(), W_OK) == 0 && may_be_ours(path)) {
    try {
      Database database(file_uri(path, ""), path, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
      // It can be made again: what a power cut takes of it costs a minute, nothing else.
      database.run("PRAGMA journal_mode=WAL; PRAGMA synchronous=NORMAL; PRAGMA busy_timeout=20000");
      return database;
    } catch (const StorageTrouble&) {
      for (const char* tail : {"", "-wal", "-shm"}) std::remove((path + tail).c_str());
    }
  }
  return {"file::memory:", path, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE};
}

// As FTS5 wants a string: in double quotes, those in it doubled.
std::string as_string(std::string_view text) {
  std::string out = "\"";
  for (const char c : text) {
    if (static_cast<unsigned char>(c) < 0x20) continue;
    out += c;
    if (c == '"') out += c;
  }
  return out + "\"";
}

std::string any_of_marks(const std::vector<std::string>& marks) {
  std::string any;
  for (const std::string& mark : marks) any += (any.empty() ? "" : " OR ") + mark;
  return "{mark}: (" + any + ")";
}

// The question in FTS5's words; empty where everything is wanted.
std::string question_of(const Wanted& wanted) {
  std::vector<std::string> parts;
  for (const std::string& word : wanted.words) parts.push_back("{text}: " + as_string(word) + " *");
  if (wanted.kinds) {
    std::vector<std::string> marks{"nothing"};
    for (const std::string_view kind : *wanted.kinds) marks.push_back(mark_of('k', kind));
    parts.push_back(any_of_marks(marks));
  }
  if (wanted.sites || wanted.hives || wanted.colonies) {
    std::vector<std::string> marks{"nothing"};
    const auto add = [&](const auto& ids) {
      if (ids)
        for (const auto& id : *ids) marks.push_back(mark_of_id(id));
    };
    add(wanted.sites), add(wanted.hives), add(wanted.colonies);
    parts.push_back(any_of_marks(marks));
  }
  std::string question;
  for (const std::string& part : parts) question += (question.empty() ? "" : " AND ") + part;
  return question;
}

}  // namespace

WordIndex::WordIndex(const std::string& book_path, std::string identity, bool in_a_file)
    : identity_(std::move(identity)), database_(open_index(book_path, in_a_file)) {
  if (database_.number("PRAGMA user_version") != index_version) make_anew();
}

void WordIndex::make_anew() {
  Transaction transaction(database_);
  for (const char* table : {"said", "placed", "link", "name", "made"})
    database_.run((std::string("DROP TABLE IF EXISTS ") + table).c_str());
  database_.run(index_sql);
  database_.run(("PRAGMA application_id=" + std::to_string(index_application_id)).c_str());
  database_.run(("PRAGMA user_version=" + std::to_string(index_version)).c_str());
  transaction.commit();
}

// A copy of the book that went its own way has other entries in the same rows.
bool WordIndex::fits(const Database& book) const {
  Statement made = database_.prepare("SELECT identity, row, hash FROM made");
  if (!made.step()) return true;  // nothing was taken yet
  if (made.text(0) != identity_) return false;
  Statement entry = book.prepare("SELECT hash FROM entry WHERE row = ?1");
  entry.bind(1, made.whole(1));
  return entry.step() && entry.text(0) == made.text(2);
}

void WordIndex::catch_up(const Database& book) {
  const std::int64_t last = book.number("SELECT max(row) FROM entry");
  if (!fits(book)) make_anew();
  if (database_.number("SELECT row FROM made") >= last) return;
  Transaction transaction(database_);
  std::int64_t above = database_.number("SELECT row FROM made");  // another may have been quicker
  if (take_names(book, above)) {
    for (const char* emptied : {"INSERT INTO said(said) VALUES('delete-all')", "DELETE FROM placed",
                                "DELETE FROM link", "DELETE FROM made"})
      database_.run(emptied);
    above = 0;
  }
  take_entries(book, above);
  transaction.commit();
}

// True where something that older entries are about has a name now that it had not: they must be found by it
// too.
bool WordIndex::take_names(const Database& book, std::int64_t above) {
  Statement rows = book.prepare(
      "SELECT kind, payload FROM entry WHERE row > ?1 AND kind IN (?2, ?3, ?4, ?5, ?6) "
      "ORDER BY row");
  rows.bind(1, above);
  int at = 2;
  for (const std::string_view kind : naming_kinds) rows.bind(at++, kind);
  Statement known = database_.prepare("SELECT name FROM name WHERE key = ?1");
  Statement keep = database_.prepare("INSERT OR REPLACE INTO name VALUES(?1, ?2)");
  Statement mentioned = database_.prepare("SELECT 1 FROM said WHERE said MATCH ?1 LIMIT 1");
  bool changed = false;
  while (rows.step()) {
    const auto payload = payload_from_json(rows.text(0), rows.text(1), "");
    const auto naming = payload ? naming_of(*payload) : std::nullopt;
    if (!naming) continue;
    known.reset();
    known.bind(1, naming->mark);
    const bool there = known.step();
    if (there && known.text(0) == naming->name) continue;
    mentioned.reset();
    mentioned.bind(1, "{mark}: " + naming->mark);
    changed = changed || (above > 0 && mentioned.step());
    keep.reset();
    keep.bind(1, naming->mark).bind(2, naming->name).step();
  }
  return changed;
}

void WordIndex::take_entries(const Database& book, std::int64_t above) {
  Statement say = database_.prepare("INSERT INTO said(rowid, text, mark) VALUES(?1, ?2, ?3)");
  Statement place = database_.prepare("INSERT INTO placed VALUES(?1)");
  Statement link = database_.prepare("INSERT OR IGNORE INTO link VALUES(?1, ?2)");
  Statement name = database_.prepare("SELECT name FROM name WHERE key = ?1");
  std::int64_t row_number = above;
  std::string hash;
  each_row_above(book, above, [&](Row&& row) {
    row_number = row.place;
    hash = row.link.hash;
    const auto read = read_row(std::move(row));
    if (!read) return;  // verify names it; here there is nothing to find
    const entries::Entry& entry = read->entry;
    MarksNamed named;
    entries::visit_fields_of(named, entry.payload);
    std::string text = entries::read_back(entry.payload) + " " + entry.who;
    std::string marks = mark_of('k', entries::kind_name(entry.payload));
    for (const std::string& mark : named.marks) {
      marks += " " + mark;
      name.reset();
      name.bind(1, mark);
      if (name.step()) text += " " + name.text(0);
    }
    const std::int64_t at = place_of(entry.happened, row_number);
    say.reset(), place.reset();
    say.bind(1, at).bind(2, text).bind(3, marks).step();
    place.bind(1, at).step();
    for (const EntryId& target : targets_of(entry)) {
      link.reset();
      link.bind(1, target.text()).bind(2, entry.id.text()).step();
    }
  });
  Statement made = database_.prepare("INSERT OR REPLACE INTO made VALUES(1, ?1, ?2, ?3)");
  made.bind(1, identity_).bind(2, row_number).bind(3, hash).step();
}

WordIndex::Places WordIndex::find(const Wanted& wanted, std::optional<std::int64_t> below) const {
  const std::string question = question_of(wanted);
  const std::int64_t lowest = wanted.from ? place_of(*wanted.from, 0) : INT64_MIN;
  const std::int64_t highest = wanted.to ? place_of(*wanted.to, rows_of_a_day - 1) : INT64_MAX;
  const std::int64_t top = below ? std::min(*below - 1, highest) : highest;
  Places found;
  const auto take = [&](std::int64_t place) {
    if (place <= top && found.places.size() <= wanted.limit) found.places.push_back(place);
  };
  if (question.empty()) {
    Statement count = database_.prepare("SELECT count(*) FROM placed WHERE place BETWEEN ?1 AND ?2");
    if (count.bind(1, lowest).bind(2, highest).step()) found.count = static_cast<std::size_t>(count.whole(0));
    Statement page =
        database_.prepare("SELECT place FROM placed WHERE place BETWEEN ?1 AND ?2 ORDER BY place DESC");
    page.bind(1, lowest).bind(2, top);
    while (found.places.size() <= wanted.limit && page.step()) take(page.whole(0));
    return found;
  }
  // Counted and paged in one pass: what a word begins is gathered anew for every question.
  Statement all = database_.prepare(
      "SELECT rowid FROM said WHERE said MATCH ?3 AND rowid BETWEEN ?1 AND ?2 ORDER BY rowid DESC");
  all.bind(1, lowest).bind(2, highest).bind(3, question);
  for (; all.step(); ++found.count) take(all.whole(0));
  return found;
}

std::vector<EntryId> WordIndex::linked_to(const EntryId& id) const {
  Statement links = database_.prepare("SELECT by FROM link WHERE target = ?1");
  links.bind(1, id.text());
  std::vector<EntryId> by;
  while (links.step()) by.emplace_back(links.text(0));
  return by;
}

}  // namespace beegarth::book
