// SQLite with its handles owned. What the machine refuses is thrown as StorageTrouble inside the room and
// leaves it as a Problem: see guarded().
#pragma once

#include <sqlite3.h>

#include <cstdint>
#include <memory>
#include <stdexcept>
#include <string>
#include <string_view>

#include "base/expected.hpp"

namespace beegarth::book {

class StorageTrouble : public std::runtime_error {
 public:
  explicit StorageTrouble(Problem said) : std::runtime_error(said.what), problem(std::move(said)) {}
  Problem problem;
};

template <class Work>
auto guarded(const Work& work) -> decltype(work()) {
  try {
    return work();
  } catch (const StorageTrouble& trouble) {
    return trouble.problem;
  }
}

Problem storage_problem(std::string what, std::string where, std::string remedy);

class Statement {
 public:
  Statement(sqlite3* database, std::string_view sql, const std::string& path);

  Statement& bind(int at, std::int64_t value);
  Statement& bind(int at, double value);
  Statement& bind(int at, std::string_view value);
  Statement& bind_null(int at);

  bool step();   // true: there is a row
  void reset();  // ready for the next run; bindings stay
  std::int64_t whole(int column) const;
  double real(int column) const;
  std::string text(int column) const;
  bool is_null(int column) const;

 private:
  struct Finalize {
    void operator()(sqlite3_stmt* statement) const { sqlite3_finalize(statement); }
  };
  void check(int result) const;
  sqlite3* database_;
  const std::string* path_;
  std::unique_ptr<sqlite3_stmt, Finalize> statement_;
};

class Database {
 public:
  // flags as for sqlite3_open_v2; `uri` is a file: URI, `path` is what the keeper calls it.
  Database(const std::string& uri, std::string path, int flags);

  void run(const char* sql);
  Statement prepare(std::string_view sql) const;
  std::int64_t number(const char* sql) const;
  sqlite3* handle() const { return database_.get(); }
  const std::string& path() const { return path_; }

 private:
  struct Close {
    void operator()(sqlite3* database) const { sqlite3_close_v2(database); }
  };
  std::string path_;
  std::unique_ptr<sqlite3, Close> database_;
};

// All or nothing: rolled back unless committed.
class Transaction {
 public:
  explicit Transaction(Database& database, const char* begin = "BEGIN IMMEDIATE");
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

 private:
  Database& database_;
  bool open_ = true;
};

}  // namespace beegarth::book
