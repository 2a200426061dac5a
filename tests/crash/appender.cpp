// The process that is made to fail: appends numbered notes, one at a time and in threes, and says "ack n" on
// standard output only after append has returned. appender PATH FAULT AT SEED
#include <unistd.h>

#include <cstdlib>
#include <string>

#include "book/book.hpp"
#include "crash/faulty_disk.hpp"

namespace {

using namespace beegarth;

void tell(const std::string& line) {
  const std::string text = line + "\n";
  if (write(STDOUT_FILENO, text.data(), text.size()) != static_cast<ssize_t>(text.size())) _exit(9);
}

book::Draft numbered(int number) {
  return {Date::from_day_number(20600 + number % 7),
          {},
          entries::Note{.text = "note " + std::to_string(number) +
                                std::string(static_cast<std::size_t>(number % 5) * 700, '.')},
          {}};
}

// Notes first .. last, every third time three at once.
void append_some(book::Book& book, int first, int last) {
  for (int number = first; number <= last;) {
    const int count = number % 3 == 0 && number + 2 <= last ? 3 : 1;
    std::vector<book::Draft> drafts;
    for (int i = 0; i < count; ++i) drafts.push_back(numbered(number + i));
    const auto kept = book.append(drafts);
    for (int i = 0; i < count; ++i) {
      const std::string name = std::to_string(number + i);
      if (kept) tell("ack " + name);
      if (!kept && kept.problem().kind == ProblemKind::storage) tell("refused " + name);
      if (!kept && kept.problem().kind != ProblemKind::storage)
        tell("wrong kind of problem: " + one_line(kept.problem()));
    }
    number += count;
  }
}

int session(const std::string& path, bool create, const book::Surroundings& surroundings, int first,
            int last) {
  auto book = book::Book::open(path, {.create = create}, surroundings);
  if (!book) {
    tell("not opened: " + one_line(book.problem()));
    return 1;
  }
  append_some(*book, first, last);
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 5) return 2;
  const std::string path = argv[1];
  const auto number = [&](int at) { return std::strtoull(argv[at], nullptr, 10); };
  crash::FaultyDisk disk({static_cast<crash::Fault>(number(2)), static_cast<int>(number(3)), number(4)});

  std::int64_t now_ms = 1'780'000'000'000;
  Stream random({.seed = number(4), .purpose = Purpose::demo});
  const book::Surroundings surroundings{[&] { return now_ms += 3; },
                                        [&](unsigned char* bytes, std::size_t count) {
                                          for (std::size_t i = 0; i < count; ++i)
                                            bytes[i] = static_cast<unsigned char>(random.word());
                                        }};
  // Closing the book moves its log into the file; that is swept too.
  if (session(path, true, surroundings, 1, 8) == 0) session(path, false, surroundings, 9, 13);
  tell(disk.fired() ? "end, fault met" : "end, no fault met");
  return 0;
}
