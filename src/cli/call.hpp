// What was asked on the command line.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/problem.hpp"
#include "garth/session.hpp"

namespace beegarth::cli {

struct Call {
  std::string command;
  std::string book;
  std::string subject;  // a colony, a calc name, a file, a kind: what the command is about
  std::string text;     // of a note or an entry
  std::string today;    // as typed; empty: the machine's date
  std::uint64_t seed = 1;
  int members = 512;
  int threads = 0;
  int days = 14;
  bool json = false;
  bool list = false;
  bool schema = false;
  bool example = false;
  bool keep = false;
  bool dry_run = false;
  std::string map;      // import: the mapping file
  std::string date;     // sheet, enter, key-in
  std::string site;     // sheet, key-in, week-ahead
  std::string into;     // transfer-ways: the hive to go into
  std::string printed;  // key-in: the day on which the sheet was printed
  std::string out;      // file to write
  std::string form;     // export, plan
  std::string own;      // plan: the file of a week of one's own
  std::string known;    // see, entries, register: as it was known on that day
  std::string about;    // photo: a colony or site
  std::string caption;  // photo
  std::string entry;    // photo: the entry that it belongs to
  std::string kind;     // entries: a kind or a group of kinds
  std::string from;     // register, entries: the first day
  std::string to;       // and the last
  bool csv = false;
  std::string paper = "A4";
  std::vector<std::string> ways;  // suppose: ways of acting
  std::string until;              // and the last day
  std::string corrects;           // enter: the entry that this one stands in for
  std::string who = "keeper";
  int port = 8750;
};

// Prints the problem as one line on standard error; the exit code of its kind.
int report(const Problem& problem);

// The session options of a call; a Problem where --today is no date.
Expected<garth::SessionOptions> session_options(const Call& call, bool read_only);

// The day that an option gives, nothing where it was not given; a Problem where it is no date.
Expected<std::optional<Date>> day_of_option(const std::string& text, const char* option);

// Prints what to do at once for the urgent ones among entries just kept.
int tell_checklists(const garth::Session& session, const std::vector<entries::Entry>& kept);
// What the usual rules say to what was told, one line each.
int tell_remarks(const garth::Session& session, const std::vector<entries::Entry>& told);

// ---- the commands; each returns the exit code ----
int plan_command(const Call& call);
int outlook_command(const Call& call);
int note_command(const Call& call);
int enter_command(const Call& call);
int see_command(const Call& call);
int entries_command(const Call& call);
int import_command(const Call& call);
int export_command(const Call& call);
std::string export_form(const Call& call);  // as asked for, or by the ending of the file to write
int export_as(const Call& call, const std::string& form);
int verify_command(const Call& call);
int calc_command(const Call& call);
int demo_command(const Call& call);
int new_command(const Call& call);
int sheet_command(const Call& call);
int key_in_command(const Call& call);
int week_ahead_command(const Call& call);
int draft_map_command(const Call& call);
int transfer_ways_command(const Call& call);
int checklist_command(const Call& call);
int lines_command(const Call& call);
int photo_command(const Call& call);
int register_command(const Call& call);
int serve_command(const Call& call);
int skill_command(const Call& call);
int suppose_command(const Call& call);

}  // namespace beegarth::cli
