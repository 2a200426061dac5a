#include "book/file.hpp"

#include <fcntl.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <fstream>
#include <optional>

#include "book/clock.hpp"

namespace beegarth::book {
namespace {

// The journal. Readable without beegarth: docs/book.md says what each column holds.
constexpr const char* first_version_sql = R"sql(
CREATE TABLE entry(
  row INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK(length(id) = 36),
  device TEXT NOT NULL CHECK(length(device) BETWEEN 1 AND 100),
  sequence INTEGER NOT NULL CHECK(sequence >= 1),
  kind TEXT NOT NULL CHECK(length(kind) BETWEEN 1 AND 50),
  happened TEXT NOT NULL CHECK(happened GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  happened_hour REAL CHECK(happened_hour BETWEEN 0 AND 24),
  written_ms INTEGER NOT NULL CHECK(written_ms >= 0),
  written_counter INTEGER NOT NULL CHECK(written_counter >= 0),
  who TEXT NOT NULL CHECK(length(who) BETWEEN 1 AND 100),
  supersedes TEXT REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  payload TEXT NOT NULL CHECK(json_valid(payload)),
  previous TEXT NOT NULL CHECK(length(previous) = 64),
  hash TEXT NOT NULL UNIQUE CHECK(length(hash) = 64),
  UNIQUE(device, sequence)
) STRICT;
CREATE INDEX entry_by_writing ON entry(written_ms, written_counter);
CREATE TABLE this_copy(
  only INTEGER PRIMARY KEY CHECK(only = 1),
  device TEXT NOT NULL CHECK(length(device) BETWEEN 1 AND 100),
  identity TEXT NOT NULL
) STRICT;
)sql";

constexpr const char* never_changed_sql = R"sql(
CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;
CREATE TRIGGER entry_is_never_deleted BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never deleted'); END;
CREATE TRIGGER entry_is_never_replaced BEFORE INSERT ON entry
WHEN EXISTS (SELECT 1 FROM entry WHERE id = NEW.id OR (device = NEW.device AND sequence = NEW.sequence))
BEGIN SELECT RAISE(ABORT, 'an entry is never replaced'); END;
)sql";

// Version 2: what there is can be read without passing over every weight and every look.
constexpr const char* second_version_sql = R"sql(
CREATE INDEX entry_by_kind ON entry(kind, happened);
CREATE INDEX entry_by_target ON entry(supersedes) WHERE supersedes IS NOT NULL;
PRAGMA user_version=2;
)sql";

// Version 3: an entry kept for good costs two pages of the file less. What was written last is told by the
// heads of the devices, and no two entries share a hash, since it covers the id. A table cannot lose a UNIQUE
// but by being made anew (https://www.sqlite.org/lang_altertable.html section 7).
constexpr const char* third_version_sql = R"sql(
CREATE TABLE entry_anew(
  row INTEGER PRIMARY KEY,
  id TEXT NOT NULL UNIQUE CHECK(length(id) = 36),
  device TEXT NOT NULL CHECK(length(device) BETWEEN 1 AND 100),
  sequence INTEGER NOT NULL CHECK(sequence >= 1),
  kind TEXT NOT NULL CHECK(length(kind) BETWEEN 1 AND 50),
  happened TEXT NOT NULL CHECK(happened GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
  happened_hour REAL CHECK(happened_hour BETWEEN 0 AND 24),
  written_ms INTEGER NOT NULL CHECK(written_ms >= 0),
  written_counter INTEGER NOT NULL CHECK(written_counter >= 0),
  who TEXT NOT NULL CHECK(length(who) BETWEEN 1 AND 100),
  supersedes TEXT REFERENCES entry(id) DEFERRABLE INITIALLY DEFERRED,
  payload TEXT NOT NULL CHECK(json_valid(payload)),
  previous TEXT NOT NULL CHECK(length(previous) = 64),
  hash TEXT NOT NULL CHECK(length(hash) = 64),
  UNIQUE(device, sequence)
) STRICT;
INSERT INTO entry_anew SELECT * FROM entry ORDER BY row;
DROP TABLE entry;
ALTER TABLE entry_anew RENAME TO entry;
CREATE INDEX entry_by_kind ON entry(kind, happened);
CREATE INDEX entry_by_target ON entry(supersedes) WHERE supersedes IS NOT NULL;
)sql";
static_assert(schema_version == 3);

void make_third_version(Database& database) {
  database.run(third_version_sql);
  database.run(never_changed_sql);
  database.run("PRAGMA user_version=3");
}

void apply_schema(Database& database, int version) {
  Transaction transaction(database);
  database.run(first_version_sql);
  database.run(never_changed_sql);
  database.run(("PRAGMA application_id=" + std::to_string(application_id)).c_str());
  database.run("PRAGMA user_version=1");
  if (version >= 2) database.run(second_version_sql);
  if (version >= 3) make_third_version(database);
  transaction.commit();
}

// An older book takes the shape of a new one; its entries stay as they are.
void bring_up_to_date(Database& database) {
  if (database.number("PRAGMA user_version") == schema_version) return;
  Transaction transaction(database);
  // Asked again: somebody else may have been quicker.
  if (database.number("PRAGMA user_version") == 1) database.run(second_version_sql);
  if (database.number("PRAGMA user_version") == 2) make_third_version(database);
  transaction.commit();
}

std::string folder_of(const std::string& path) {
  const std::size_t slash = path.rfind('/');
  if (slash == std::string::npos) return ".";
  return slash == 0 ? "/" : path.substr(0, slash);
}

void refuse(const std::string& path, std::string what, std::string remedy) {
  throw StorageTrouble(storage_problem(std::move(what), path, std::move(remedy)));
}

std::optional<struct stat> stat_of(const std::string& path) {
  struct stat found {};
  if (::stat(path.c_str(), &found) != 0) return std::nullopt;
  return found;
}

std::uint32_t big_endian(const std::array<char, 100>& header, std::size_t at) {
  std::uint32_t value = 0;
  for (std::size_t i = 0; i < 4; ++i) value = (value << 8U) | static_cast<unsigned char>(header[at + i]);
  return value;
}

// A log of committed pages that are not in the file yet: somebody has the book open, or died while it was.
// https://www.sqlite.org/fileformat2.html section 4.1: magic number 0x377f0682 or 0x377f0683.
bool has_open_log(const std::string& path) {
  std::ifstream log(path + "-wal", std::ios::binary);
  std::array<char, 4> magic{};
  log.read(magic.data(), magic.size());
  return log && (std::string_view(magic.data(), 4) == "\x37\x7f\x06\x82" ||
                 std::string_view(magic.data(), 4) == "\x37\x7f\x06\x83");
}

void check_file(const std::string& path) {
  const auto found = stat_of(path);
  if (!found && errno == ENOENT)
    refuse(path, "there is no book here", "check the path, or make one with: beegarth new PATH");
  if (!found)
    refuse(path, std::string("the book cannot be reached: ") + std::strerror(errno),
           "check the path and its rights");
  if (S_ISDIR(found->st_mode)) refuse(path, "this is a folder, not a book", "name the file");
  if (!S_ISREG(found->st_mode)) refuse(path, "this is not a file", "name the file of a book");
  if (::access(path.c_str(), R_OK) != 0)
    refuse(path, "the book cannot be read", "check the rights of the file");
  // SQLite would take an empty file for a new database, and throw its log away.
  if (found->st_size == 0) refuse(path, "the file is empty: not a book", "name a file made by beegarth");
}

void check_marks(const std::string& path, std::uint32_t found_id, std::int64_t version) {
  if (found_id != static_cast<std::uint32_t>(application_id))
    refuse(path, "this is a database of another program, not a book", "name a file made by beegarth");
  if (version > schema_version)
    refuse(path,
           "the book was made by a newer beegarth (version " + std::to_string(version) +
               ", this one reads up to " + std::to_string(schema_version) + ")",
           "use the newer one");
  if (version < 1) refuse(path, "the book has no version", "take the last backup");
}

// Looks at the first bytes before SQLite does, so that nothing of another program is touched. Where there is
// a log, the machine may have stopped while those very bytes were written: then only SQLite, with the log,
// can tell. https://www.sqlite.org/fileformat2.html section 1.3: magic at 0, user version at 60, application
// id at 68.
void check_header(const std::string& path) {
  std::ifstream file(path, std::ios::binary);
  std::array<char, 100> header{};
  file.read(header.data(), header.size());
  const auto got = static_cast<std::size_t>(file.gcount());
  constexpr std::string_view magic("SQLite format 3\0", 16);
  if (std::string_view(header.data(), std::min<std::size_t>(got, 16)) != magic.substr(0, got))
    refuse(path, "this is not a book", "name a file made by beegarth");
  if (got < header.size()) refuse(path, "the file is cut short", "take the last backup");
  check_marks(path, big_endian(header, 68), static_cast<std::int32_t>(big_endian(header, 60)));
  // The file is whole pages; their size stands in two bytes at 16, 1 for 65,536.
  const std::uintmax_t size = big_endian(header, 16) >> 16U;
  const auto found = stat_of(path);
  if (found &&
      static_cast<std::uintmax_t>(found->st_size) % std::max<std::uintmax_t>(size == 1 ? 65'536 : size, 1) !=
          0)
    refuse(path, "the file is cut short", "take the last backup");
}

Database open_to_read(const std::string& path) {
  const bool writable = ::access(path.c_str(), W_OK) == 0 && ::access(folder_of(path).c_str(), W_OK) == 0;
  if (writable) {
    // Shares the log with any writer. Only what a writer that died had committed may still go from its log
    // into the file.
    Database database(file_uri(path, ""), path, SQLITE_OPEN_READWRITE);
    database.run("PRAGMA query_only=ON");
    return database;
  }
  // On a medium that cannot be written nobody else writes either, so no lock is needed; SQLite could not make
  // one.
  return {file_uri(path, has_open_log(path) ? "" : "?immutable=1"), path, SQLITE_OPEN_READONLY};
}

void sync_folder(const std::string& folder) {
  const int handle = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  if (handle < 0) return;
  ::fsync(handle);
  ::close(handle);
}

// Gives the finished file its name, never in place of another.
void put_in_place(const std::string& made, const std::string& path) {
  if (::renameat2(AT_FDCWD, made.c_str(), AT_FDCWD, path.c_str(), RENAME_NOREPLACE) == 0) return;
  const int reason = errno;
  if (reason == EINVAL && !stat_of(path) && std::rename(made.c_str(), path.c_str()) == 0) return;
  std::remove(made.c_str());
  if (reason == EEXIST || reason == EINVAL)
    refuse(path, "there is already something here", "choose another name");
  refuse(path, std::string("the book cannot be made: ") + std::strerror(reason),
         "check the folder and its rights");
}

}  // namespace

// RFC 3986: what is not plain in a path is percent-encoded.
std::string file_uri(const std::string& path, const char* query) {
  std::string uri = "file:";
  for (const char c : path) {
    const bool plain = std::isalnum(static_cast<unsigned char>(c)) || std::strchr("/-_.~", c) != nullptr;
    if (plain && c != '\0') {
      uri += c;
    } else {
      std::array<char, 4> buffer{};
      std::snprintf(buffer.data(), buffer.size(), "%%%02X",
                    static_cast<unsigned>(static_cast<unsigned char>(c)));
      uri += buffer.data();
    }
  }
  return uri + query;
}

void create_book_file(const std::string& path, const Surroundings& surroundings) {
  if (path.empty()) refuse(path, "the book has no name", "give a path");
  if (struct stat found{}; ::lstat(path.c_str(), &found) == 0)
    refuse(path, "there is already something here", "choose another name");
  const std::string folder = folder_of(path);
  const auto place = stat_of(folder);
  if (!place || !S_ISDIR(place->st_mode)) refuse(path, "its folder does not exist", "make the folder first");
  if (::access(folder.c_str(), W_OK) != 0)
    refuse(path, "its folder cannot be written", "choose another folder or change its rights");

  const std::string made = path + "." + new_device_name(surroundings).substr(2) + ".new";
  try {
    Database database(file_uri(made, ""), path, SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
    database.run("PRAGMA synchronous=FULL");
    apply_schema(database, schema_version);
    database.run("PRAGMA journal_mode=WAL");
  } catch (const StorageTrouble&) {
    for (const char* tail : {"", "-journal", "-wal", "-shm"}) std::remove((made + tail).c_str());
    throw;
  }
  put_in_place(made, path);
  sync_folder(folder);
}

Database open_book_file(const std::string& path, bool read_only) {
  check_file(path);
  const bool log = has_open_log(path);
  if (!log) check_header(path);
  if (!read_only && ::access(path.c_str(), W_OK) != 0)
    refuse(path, "the file cannot be written", "open it for reading only or change its rights");
  if (!read_only && ::access(folder_of(path).c_str(), W_OK) != 0)
    refuse(path, "its folder cannot be written", "open it for reading only or change its rights");

  Database database =
      read_only ? open_to_read(path) : Database(file_uri(path, ""), path, SQLITE_OPEN_READWRITE);
  // Until it is known to be a book, closing it must not move the log into it.
  if (log) sqlite3_db_config(database.handle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 1, nullptr);
  {
    // In one look: somebody may be bringing the book up to date.
    Transaction look(database, "BEGIN");
    const std::int64_t version = database.number("PRAGMA user_version");
    check_marks(path, static_cast<std::uint32_t>(database.number("PRAGMA application_id")), version);
    if (schema_of(database) != expected_schema(version))
      refuse(path, "its tables are not those of a book", "take the last backup");
  }
  sqlite3_db_config(database.handle(), SQLITE_DBCONFIG_NO_CKPT_ON_CLOSE, 0, nullptr);
  sqlite3_db_config(database.handle(), SQLITE_DBCONFIG_DEFENSIVE, 1, nullptr);
  if (!read_only) bring_up_to_date(database);  // before links are held: a table is made anew
  database.run(
      "PRAGMA foreign_keys=ON; PRAGMA recursive_triggers=ON; PRAGMA synchronous=FULL; PRAGMA "
      "cell_size_check=ON");
  return database;
}

std::string identity_of(const std::string& path) {
  struct statx found {};
  if (::statx(AT_FDCWD, path.c_str(), 0, STATX_INO | STATX_BTIME, &found) != 0) return "unknown";
  std::string identity = std::to_string(found.stx_ino);
  if ((found.stx_mask & STATX_BTIME) != 0U) {
    identity += "." + std::to_string(found.stx_btime.tv_sec) + "." + std::to_string(found.stx_btime.tv_nsec);
  }
  return identity;
}

std::string schema_of(const Database& database) {
  Statement statement = database.prepare(
      "SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_stat%' ORDER BY type, name");
  std::string all;
  while (statement.step())
    all += statement.text(0) + " " + statement.text(1) + ": " + statement.text(2) + "\n";
  return all;
}

const std::string& expected_schema(std::int64_t version) {
  const auto made = [](int of_version) {
    Database database(":memory:", "", SQLITE_OPEN_READWRITE | SQLITE_OPEN_CREATE);
    apply_schema(database, of_version);
    return schema_of(database);
  };
  static const std::array<std::string, schema_version> all = {made(1), made(2), made(3)};
  return all.at(static_cast<std::size_t>(version - 1));
}

}  // namespace beegarth::book
