// How long the book takes: one entry kept for good against a bare insert at the same settings of SQLite, a
// book of ten years opened, the state at a date and a search among a million entries.
//
//   bench_book append            the ratio of the two inserts, in turns, one run
//   bench_book grow PATH SHAPE   writes a grown book; SHAPE is keeper (ten years) or million
//   bench_book read PATH         opens it, tells the state at dates, searches
#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <filesystem>
#include <string>
#include <vector>

#include "book/find.hpp"
#include "garth/outline.hpp"
#include "garth/search.hpp"
#include "grown_book.hpp"

namespace {

using namespace beegarth;
using Clock = std::chrono::steady_clock;

double ms_since(Clock::time_point begin) {
  return std::chrono::duration<double, std::milli>(Clock::now() - begin).count();
}

template <class Work>
std::vector<double> times_of(int runs, const Work& work) {
  std::vector<double> times;
  for (int run = 0; run < runs; ++run) {
    const auto begin = Clock::now();
    work(run);
    times.push_back(ms_since(begin));
  }
  std::sort(times.begin(), times.end());
  return times;
}

void tell(const char* what, const std::vector<double>& times) {
  fmt::print("{:<58} {:8.2f} ms middle, {:8.2f} quickest, {:8.2f} slowest of {}\n", what,
             times[times.size() / 2], times.front(), times.back(), times.size());
}

template <class T>
T or_die(Expected<T> result) {
  if (result) return *std::move(result);
  fmt::print(stderr, "{}\n", one_line(result.problem()));
  std::exit(4);
}

// ---- one entry against a bare insert ----

// The same columns, one primary key, no checks, no chain, no links: as little as a program could do that
// keeps an entry.
class BareTable {
 public:
  explicit BareTable(const std::string& path) {
    sqlite3_open(path.c_str(), &database_);
    run("PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL");
    run("CREATE TABLE entry(id TEXT PRIMARY KEY, device TEXT, sequence INTEGER, kind TEXT, happened TEXT, "
        "happened_hour REAL, written_ms INTEGER, written_counter INTEGER, who TEXT, supersedes TEXT, payload "
        "TEXT, "
        "previous TEXT, hash TEXT)");
    sqlite3_prepare_v2(database_, "INSERT INTO entry VALUES(?1,?2,?3,?4,?5,NULL,?6,0,?7,NULL,?8,?9,?10)", -1,
                       &insert_, nullptr);
  }
  BareTable(const BareTable&) = delete;
  BareTable& operator=(const BareTable&) = delete;
  ~BareTable() {
    sqlite3_finalize(insert_);
    sqlite3_close(database_);
  }
  void add(const entries::Entry& entry, int sequence) {
    const std::string hash(64, 'a');
    const std::string id = entry.id.text() + std::to_string(sequence);
    const std::string payload = book::payload_json(entry.payload);
    int at = 0;
    const auto text = [&](const std::string& value) {
      sqlite3_bind_text(insert_, ++at, value.data(), static_cast<int>(value.size()), SQLITE_TRANSIENT);
    };
    const auto whole = [&](std::int64_t value) { sqlite3_bind_int64(insert_, ++at, value); };
    text(id), text(entry.device), whole(sequence), text("inspection"), text(entry.happened.iso());
    whole(entry.written.utc_ms), text(entry.who), text(payload), text(hash), text(hash);
    if (sqlite3_step(insert_) != SQLITE_DONE) std::exit(4);
    sqlite3_reset(insert_);
  }

 private:
  void run(const char* sql) {
    if (sqlite3_exec(database_, sql, nullptr, nullptr, nullptr) != SQLITE_OK) std::exit(4);
  }
  sqlite3* database_ = nullptr;
  sqlite3_stmt* insert_ = nullptr;
};

int bench_append(const std::filesystem::path& folder) {
  auto book = or_die(
      book::Book::open((folder / "one.garth").string(), {.create = true}, garth::machine_surroundings()));
  BareTable bare((folder / "bare.sqlite").string());
  const book::Draft draft{
      .happened = *Date::from_ymd(2026, 6, 1),
      .payload = entries::Inspection{.colony = ColonyId("stock-1"), .seams = 8, .eggs = true}};
  const entries::Entry entry = or_die(book.append({draft}))[0];
  std::vector<double> ours;
  std::vector<double> theirs;
  for (int turn = 0; turn < 40; ++turn) {  // in turns, so that a busy disk is busy for both
    for (const double ms : times_of(25, [&](int) { (void)or_die(book.append({draft})); })) ours.push_back(ms);
    for (const double ms : times_of(25, [&](int run) { bare.add(entry, turn * 25 + run); }))
      theirs.push_back(ms);
  }
  std::sort(ours.begin(), ours.end());
  std::sort(theirs.begin(), theirs.end());
  tell("one entry kept for good", ours);
  tell("a bare insert, WAL, synchronous=FULL", theirs);
  fmt::print("ratio of the middles {:.2f}\n", ours[ours.size() / 2] / theirs[theirs.size() / 2]);
  return 0;
}

// ---- grown books ----

int grow(const std::string& path, const std::string& shape) {
  bench::Growth growth;
  if (shape == "million") growth = {.sites = 100, .colonies = 1000, .years = 10, .looks = 60, .weights = 40};
  auto book = or_die(book::Book::open(path, {.create = true}, garth::machine_surroundings()));
  std::size_t count = 0;
  bench::GrownBook(growth).tell([&](const std::vector<book::Draft>& drafts) {
    count += drafts.size();
    return or_die(book.append(drafts));
  });
  fmt::print("{} entries, {} MB\n", count, std::filesystem::file_size(path) / 1'000'000);
  return 0;
}

std::size_t count_of(const book::Book& book) {
  return or_die(book.find({.limit = 1})).count;
}

int bench_read(const std::string& path) {
  garth::SessionOptions options;
  options.today = *Date::from_ymd(2025, 12, 20);
  tell("opened to see what there is, a new process's first",
       times_of(1, [&](int) { (void)or_die(garth::open_outline(path, options)); }));
  tell("the same again", times_of(5, [&](int) { (void)or_die(garth::open_outline(path, options)); }));
  const auto outline = or_die(garth::open_outline(path, options));
  tell("what there is at another date of the open book", times_of(21, [&](int run) {
         (void)garth::outline_on(outline, *Date::from_ymd(2018, 1, 15) + run * 100);
       }));
  tell("the first search, which may have to gather the words", times_of(1, [&](int) {
         (void)or_die(garth::search_entries(outline.book, outline.state, {.text = "calm"}));
       }));
  for (const garth::EntrySearch& search : std::vector<garth::EntrySearch>{
           {},
           {.text = "calm"},
           {.text = "heather stock 17"},
           {.text = "entra wasps"},
           {.text = "8"},
           {.kind = "mite_count"},
           {.kind = "seen", .about = "Stock 3 of year 0"},
           {.about = "Invented Field 2"},
           {.text = "calm", .from = *Date::from_ymd(2019, 6, 1), .to = *Date::from_ymd(2019, 6, 30)}}) {
    std::size_t count = 0;
    const auto times = times_of(
        7, [&](int) { count = or_die(garth::search_entries(outline.book, outline.state, search)).count; });
    tell(fmt::format("search '{}' {} {}{}: {} found", search.text, search.kind, search.about,
                     search.from ? " in a month" : "", count)
             .c_str(),
         times);
  }
  if (count_of(outline.book) > 100'000) return 0;
  tell("the book opened, everything in it read",
       times_of(7, [&](int) { (void)or_die(garth::open_session(path, options)); }));
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  const std::vector<std::string> words(argv + 1, argv + argc);
  if (words.size() == 3 && words[0] == "grow") return grow(words[1], words[2]);
  if (words.size() == 2 && words[0] == "read") return bench_read(words[1]);
  if (words.size() != 2 || words[0] != "append") {
    fmt::print(stderr, "usage: bench_book append FOLDER | grow PATH keeper|million | read PATH\n");
    return 2;
  }
  return bench_append(words[1]);
}
