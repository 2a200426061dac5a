// Whatever happens to the process, the machine or the disk, at whichever write: nothing acknowledged is lost,
// nothing unexpected is there, a batch is there whole or not at all, and the book that is left is sound and
// goes on.
#include <fcntl.h>
#include <gtest/gtest.h>
#include <signal.h>
#include <sys/wait.h>
#include <unistd.h>

#include <filesystem>
#include <set>
#include <sstream>

#include "book/book.hpp"
#include "crash/faulty_disk.hpp"
#include "unit/book/desk.hpp"

namespace beegarth::crash {
namespace {

struct Outcome {
  std::set<int> acknowledged;
  bool fault_met = true;
  bool killed = false;
  std::string said;
};

// Runs the appender to its end, whatever that is.
Outcome run_appender(const std::string& path, const Plan& plan) {
  std::array<int, 2> ends{};
  if (pipe2(ends.data(), O_CLOEXEC) != 0) throw std::runtime_error("no pipe");
  const pid_t child = fork();
  if (child == 0) {
    dup2(ends[1], STDOUT_FILENO);
    const std::string fault = std::to_string(static_cast<int>(plan.fault));
    const std::string at = std::to_string(plan.at);
    const std::string seed = std::to_string(plan.seed);
    execl(BEEGARTH_APPENDER, "appender", path.c_str(), fault.c_str(), at.c_str(), seed.c_str(), nullptr);
    _exit(127);
  }
  close(ends[1]);
  Outcome outcome;
  std::array<char, 4096> buffer{};
  for (ssize_t got = 0; (got = read(ends[0], buffer.data(), buffer.size())) > 0;)
    outcome.said.append(buffer.data(), static_cast<std::size_t>(got));
  close(ends[0]);
  int status = 0;
  waitpid(child, &status, 0);
  outcome.killed = WIFSIGNALED(status) && WTERMSIG(status) == SIGKILL;
  EXPECT_TRUE(outcome.killed || (WIFEXITED(status) && WEXITSTATUS(status) == 0)) << status << "\n"
                                                                                 << outcome.said;
  EXPECT_EQ(outcome.said.find("wrong kind"), std::string::npos) << outcome.said;
  std::istringstream lines(outcome.said);
  for (std::string line; std::getline(lines, line);) {
    if (line.rfind("ack ", 0) == 0) outcome.acknowledged.insert(std::stoi(line.substr(4)));
    if (line == "end, no fault met") outcome.fault_met = false;
  }
  return outcome;
}

std::set<int> numbers_in(std::span<const entries::Entry> entries) {
  std::set<int> numbers;
  for (const entries::Entry& entry : entries)
    numbers.insert(std::stoi(std::get<entries::Note>(entry.payload).text.substr(5)));
  EXPECT_EQ(numbers.size(), entries.size()) << "a note is there twice";
  return numbers;
}

void expect_whole_batches(const std::set<int>& numbers) {
  for (const int first : {3, 6, 9}) {  // 12 and 13 come one by one
    const auto there = numbers.count(first) + numbers.count(first + 1) + numbers.count(first + 2);
    EXPECT_TRUE(there == 0 || there == 3) << "a part of the batch from " << first;
  }
}

class Sweep : public testing::Test {
 protected:
  void expect_nothing_lost(const std::string& path, const Outcome& outcome) {
    const bool there = std::filesystem::exists(path);
    if (!there) {
      EXPECT_TRUE(outcome.acknowledged.empty()) << "the whole book is lost";
      EXPECT_TRUE(book::Book::open(path, {.create = true}, desk.surroundings())) << "a new one can be made";
      return;
    }
    std::string last;
    for (const bool again : {false, true}) {
      auto book = book::Book::open(path, {}, desk.surroundings());
      ASSERT_TRUE(book) << one_line(book.problem());
      const auto all = book->entries();
      ASSERT_TRUE(all) << one_line(all.problem());
      const std::set<int> numbers = numbers_in(*all);
      for (const int number : outcome.acknowledged)
        EXPECT_EQ(numbers.count(number), 1U) << "lost: " << number;
      for (const int number : numbers)
        EXPECT_TRUE(number >= 1 && number <= (again ? 99 : 13)) << "unexpected: " << number;
      expect_whole_batches(numbers);
      const auto report = book->verify();
      ASSERT_TRUE(report);
      EXPECT_TRUE(report->faults.empty()) << report->faults[0];
      if (again) break;
      ASSERT_TRUE(book->append({book::note("note 99")})) << "the book goes on";
    }
  }

  // Every call in turn, until the appender ends without having met its fault.
  int sweep(Fault fault, std::uint64_t seed = 1) {
    for (int at = 1; at < 2000; ++at) {
      SCOPED_TRACE("fault " + std::to_string(static_cast<int>(fault)) + ", call " + std::to_string(at) +
                   ", seed " + std::to_string(seed));
      book::Folder folder;
      const Outcome outcome = run_appender(folder.file("a.garth"), {fault, at, seed});
      expect_nothing_lost(folder.file("a.garth"), outcome);
      if (testing::Test::HasFailure()) return at;
      if (!outcome.fault_met) {
        EXPECT_EQ(outcome.acknowledged.size(), 13U);
        return at - 1;
      }
      const bool deadly = fault == Fault::killed || fault == Fault::power_lost;
      EXPECT_EQ(outcome.killed, deadly);
    }
    ADD_FAILURE() << "the appender never came to its end";
    return 0;
  }
  book::Desk desk;
};

// Fewer calls than this would mean that the layer does not see what SQLite does.
constexpr int fewest_calls = 60;

TEST_F(Sweep, killed_at_every_call) {
  EXPECT_GT(sweep(Fault::killed), fewest_calls);
}
TEST_F(Sweep, power_lost_at_every_call) {
  for (std::uint64_t seed = 1; seed <= 3; ++seed) EXPECT_GT(sweep(Fault::power_lost, seed), fewest_calls);
}
TEST_F(Sweep, one_error_at_every_call) {
  EXPECT_GT(sweep(Fault::error_once), fewest_calls);
}
TEST_F(Sweep, errors_for_good_from_every_call_on) {
  EXPECT_GT(sweep(Fault::error_for_good), fewest_calls);
}
TEST_F(Sweep, disk_full_from_every_call_on) {
  EXPECT_GT(sweep(Fault::full), fewest_calls);
}

}  // namespace
}  // namespace beegarth::crash
