#include "book/sqlite.hpp"

#include <utility>

namespace beegarth::book {
namespace {

Problem problem_for(int result, const char* message, const std::string& path) {
  switch (result & 0xff) {
    case SQLITE_FULL:
      return storage_problem("the disk is full", path, "free some space and try again; nothing was written");
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
      return storage_problem("the book is locked by another program", path, "close that and try again");
    case SQLITE_READONLY:
    case SQLITE_PERM:
      return storage_problem("the book cannot be written", path,
                             "check the rights of the file and its folder");
    case SQLITE_CANTOPEN:
      return storage_problem("the book cannot be opened", path,
                             "check the rights of the file and its folder");
    case SQLITE_NOTADB:
      return storage_problem("this is not a book", path, "name a file made by beegarth");
    case SQLITE_CORRUPT:
      return storage_problem("the file is damaged", path,
                             "take the last backup and import what was exported since");
    case SQLITE_IOERR:
      return storage_problem("the disk reported an error", path,
                             "check the disk; what was not confirmed was not kept");
    default:
      return storage_problem(std::string("the book could not be used: ") + message, path, "run verify");
  }
}

}  // namespace

Problem storage_problem(std::string what, std::string where, std::string remedy) {
  return {ProblemKind::storage, std::move(what), std::move(where), std::move(remedy)};
}

Statement::Statement(sqlite3* database, std::string_view sql, const std::string& path)
    : database_(database), path_(&path) {
  sqlite3_stmt* statement = nullptr;
  const int result =
      sqlite3_prepare_v2(database, sql.data(), static_cast<int>(sql.size()), &statement, nullptr);
  statement_.reset(statement);
  check(result);
}

void Statement::check(int result) const {
  if (result == SQLITE_OK || result == SQLITE_ROW || result == SQLITE_DONE) return;
  throw StorageTrouble(problem_for(result, sqlite3_errmsg(database_), *path_));
}

Statement& Statement::bind(int at, std::int64_t value) {
  return check(sqlite3_bind_int64(statement_.get(), at, value)), *this;
}
Statement& Statement::bind(int at, double value) {
  return check(sqlite3_bind_double(statement_.get(), at, value)), *this;
}
Statement& Statement::bind(int at, std::string_view value) {
  check(sqlite3_bind_text64(statement_.get(), at, value.data(), value.size(), SQLITE_TRANSIENT, SQLITE_UTF8));
  return *this;
}
Statement& Statement::bind_null(int at) {
  return check(sqlite3_bind_null(statement_.get(), at)), *this;
}

bool Statement::step() {
  const int result = sqlite3_step(statement_.get());
  check(result);
  return result == SQLITE_ROW;
}
void Statement::reset() {
  sqlite3_reset(statement_.get());
}

std::int64_t Statement::whole(int column) const {
  return sqlite3_column_int64(statement_.get(), column);
}
double Statement::real(int column) const {
  return sqlite3_column_double(statement_.get(), column);
}
bool Statement::is_null(int column) const {
  return sqlite3_column_type(statement_.get(), column) == SQLITE_NULL;
}
std::string Statement::text(int column) const {
  const auto* bytes = static_cast<const char*>(sqlite3_column_blob(statement_.get(), column));
  return {bytes ? bytes : "", static_cast<std::size_t>(sqlite3_column_bytes(statement_.get(), column))};
}

Database::Database(const std::string& uri, std::string path, int flags) : path_(std::move(path)) {
  sqlite3* database = nullptr;
  const int result =
      sqlite3_open_v2(uri.c_str(), &database, flags | SQLITE_OPEN_URI | SQLITE_OPEN_EXRESCODE, nullptr);
  database_.reset(database);
  if (result != SQLITE_OK)
    throw StorageTrouble(problem_for(result, database ? sqlite3_errmsg(database) : "", path_));
  sqlite3_busy_timeout(database, 3000);
}

void Database::run(const char* sql) {
  const int result = sqlite3_exec(database_.get(), sql, nullptr, nullptr, nullptr);
  if (result != SQLITE_OK) throw StorageTrouble(problem_for(result, sqlite3_errmsg(database_.get()), path_));
}

Statement Database::prepare(std::string_view sql) const {
  return {database_.get(), sql, path_};
}

std::int64_t Database::number(const char* sql) const {
  Statement statement = prepare(sql);
  return statement.step() ? statement.whole(0) : 0;
}

Transaction::Transaction(Database& database, const char* begin) : database_(database) {
  database_.run(begin);
}
Transaction::~Transaction() {
  // A failed commit may have ended the transaction already; there is nothing to say about that here.
  if (open_) sqlite3_exec(database_.handle(), "ROLLBACK", nullptr, nullptr, nullptr);
}
void Transaction::commit() {
  database_.run("COMMIT");
  open_ = false;
}

}  // namespace beegarth::book
