// What went wrong in the keeper's data or on the keeper's disk, said once and plainly.
#pragma once

#include <string>

namespace beegarth {

// The kinds are the exit codes of the command line and map one to one to HTTP status codes.
enum class ProblemKind {
  answer_is_no = 1,  // a check ran and failed
  wrong_use = 2,     // unknown command, option or calc name
  bad_input = 3,     // a bad file or field, an unknown colony, a date before the book began
  storage = 4,       // not a book, truncated, locked, disk full
};

struct Problem {
  ProblemKind kind = ProblemKind::bad_input;
  std::string what;    // one plain sentence without a full stop
  std::string where;   // file:line, entry id or JSON path; empty where there is none
  std::string remedy;  // what to do about it; empty where nothing can be said
};

// "where: what; remedy", without line breaks or other control characters.
std::string one_line(const Problem& problem);

Problem bad_input(std::string what, std::string where = {}, std::string remedy = {});

}  // namespace beegarth
