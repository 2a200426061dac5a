// The command line: reads the arguments, hands the call to its command, returns the exit code.
// Exit codes: 0 done, 1 the answer is "no", 2 wrong use, 3 bad input, 4 storage.
#include <CLI/CLI.hpp>
#include <array>
#include <charconv>
#include <csignal>
#include <cstdint>
#include <cstdio>
#include <exception>
#include <functional>
#include <iostream>
#include <string>
#include <vector>

#include "cli/call.hpp"

namespace beegarth::cli {
namespace {

struct Command {
  const char* name;
  const char* summary;
  const char* example;
  int (*run)(const Call&);
  void (*options)(CLI::App&, Call&);
};

// An empty date, as from a variable that was never set, is a slip and not "today".
std::string empty_fault(const std::string& text) {
  return text.empty() ? "give a date like 2026-06-05" : "";
}
void with_today(CLI::App& app, Call& call, const char* what) {
  app.add_option("--today", call.today, what)->check(CLI::Validator(empty_fault, "DATE"));
}
void with_book(CLI::App& app, Call& call) {
  app.add_option("BOOK", call.book, "the book, a .garth file")->required();
  with_today(app, call,
             "the date to stand on, like 2026-06-05; default: the book's own (a demo has one), else this "
             "machine's date");
}
// Digits alone: a number that does not fit would be cut to one that does.
std::string seed_fault(const std::string& text) {
  std::uint64_t seed = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), seed);
  return error == std::errc{} && end == text.data() + text.size()
             ? ""
             : "give a whole number from 0 to 18446744073709551615";
}
void with_seed(CLI::App& app, Call& call, const char* what) {
  app.add_option("--seed", call.seed, what)->check(CLI::Validator(seed_fault, "WHOLE"));
}
void with_chance(CLI::App& app, Call& call) {
  with_seed(app, call, "seed of every random stream; the same seed gives the same answer");
  app.add_option("--members", call.members, "members of the ensemble per colony")
      ->check(CLI::Range(32, 16384));
  app.add_option("--threads", call.threads, "threads; never changes a result; 0: as many as the machine has")
      ->check(CLI::Range(0, 64));
}
void plan_options(CLI::App& app, Call& call) {
  with_book(app, call);
  with_chance(app, call);
  app.add_option("--days", call.days, "days to plan, 1 to 28");
  app.add_option(
         "--form", call.form,
         "lines (one job each, to be mended for --own), packing, calendar (iCalendar) or gpx; default: "
         "to be read")
      ->check(CLI::IsMember({"lines", "packing", "calendar", "gpx"}));
  app.add_option(
      "--own", call.own,
      "a week of your own, held beside the plan: a file of lines like --form lines writes, or - for "
      "standard input");
  app.add_option("--out", call.out, "file to write; default: standard output");
}
void outlook_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("COLONY", call.subject, "key or name; default: every living colony");
  with_chance(app, call);
}
void note_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("LINE", call.text,
                 "what was seen or done, as one line; default: standard input, one note a line");
  app.add_flag("--keep", call.keep, "keep what was understood (without it, it is only shown)");
  app.add_option("--who", call.who, "who says it");
}
void enter_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("KIND", call.subject, "kind of entry; --list shows them");
  app.add_option("PAYLOAD", call.text, "its fields as JSON; default: standard input");
  app.add_option("--date", call.date, "when it happened; default: today");
  app.add_option("--corrects", call.corrects, "id of the entry that this one stands in for");
  app.add_option("--who", call.who, "who says it");
  app.add_flag("--schema", call.schema, "print the JSON Schema of the kind");
  app.add_flag("--list", call.list, "list the kinds");
}
void entries_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("--known", call.known, "as it was known on that day: what was written later is left out");
  app.add_option("NAME", call.subject, "a colony, a site or a hive; default: all");
  app.add_option("--text", call.text, "words that must stand in the entry, capitals or not");
  app.add_option("--kind", call.kind,
                 "a kind (see enter --list) or a group: seen, done, colonies, produce, equipment, ground, "
                 "plants, sky, keeping, or notebook for all but the weather");
  app.add_option("--from", call.from, "the first day");
  app.add_option("--to", call.to, "the last day; default: today");
}
void import_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("FILE", call.subject,
                 "a .jsonl export of a book, a CSV file with --map, places (.geojson) or a calendar (.ics)")
      ->required();
  app.add_option("--map", call.map,
                 "mapping from the columns of the file to entries; maps/ holds examples; needed for CSV");
  app.add_option(
         "--form", call.form,
         "jsonl, csv, geojson or calendar; default: by the file's ending, else jsonl, or csv with a map")
      ->check(CLI::IsMember({"jsonl", "csv", "geojson", "calendar"}));
  app.add_flag("--dry-run", call.dry_run, "say what would be entered and write nothing");
  app.add_option("--who", call.who, "who says it");
}
void export_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("--out", call.out, "file to write; default: standard output");
  app.add_option("--form", call.form,
                 "jsonl, geojson, calendar or zip; default: by the file's ending, else jsonl")
      ->check(CLI::IsMember({"jsonl", "geojson", "calendar", "zip"}));
}
void with_known(CLI::App& app, Call& call) {
  app.add_option("--known", call.known, "as it was known on that day: what was written later is left out");
}
void see_options(CLI::App& app, Call& call) {
  with_book(app, call);
  with_known(app, call);
}
void photo_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("FILE", call.subject, "a JPEG, PNG or WebP picture")->required();
  app.add_option("--about", call.about, "the colony or site that it shows");
  app.add_option("--entry", call.entry, "id of the entry that it belongs to");
  app.add_option("--caption", call.caption, "what is to be seen");
  app.add_option("--date", call.date, "when it was taken; default: today");
  app.add_option("--who", call.who, "who says it");
}
void checklist_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("WHAT", call.subject, "what has happened; default: list them");
}
void calc_options(CLI::App& app, Call& call) {
  app.add_option("NAME", call.subject, "the computation; --list shows them");
  app.add_flag("--list", call.list, "list the computations");
  app.add_flag("--schema", call.schema, "print the JSON Schemas of input and output");
  app.add_flag("--example", call.example, "print an input that works");
  with_today(app, call, "accepted everywhere; a computation takes its dates from its input");
  with_seed(app, call, "accepted everywhere; a computation takes its seed from its input");
}
void demo_options(CLI::App& app, Call& call) {
  app.add_option("PATH", call.book, "where to write the demo book")->required();
  with_today(app, call, "accepted everywhere; the demo has its own fixed today");
  with_seed(app, call, "seed of the invented weather");
}
void new_options(CLI::App& app, Call& call) {
  app.add_option("PATH", call.book, "where to write the new, empty book")->required();
  with_today(app, call, "accepted everywhere; an empty book has no date");
  with_seed(app, call, "accepted everywhere; nothing is drawn here");
}
void sheet_options(CLI::App& app, Call& call) {
  with_book(app, call);
  with_chance(app, call);
  app.add_option("--date", call.date, "day of the visit; default: the first visit of the plan");
  app.add_option("--site", call.site, "site of the visit, key or name");
  app.add_option("--out", call.out, "PDF file to write")->required();
  app.add_option("--paper", call.paper, "A4 or Letter")->check(CLI::IsMember({"A4", "Letter"}));
  app.add_option("--days", call.days, "days to plan, 1 to 28");
}
void key_in_options(CLI::App& app, Call& call) {
  with_book(app, call);
  with_chance(app, call);
  app.add_option("FILE", call.subject, "lines like  Cobble/brood combs: 6 ; default: standard input");
  app.add_option("--site", call.site, "site of the visit, key or name")->required();
  app.add_option("--date", call.date, "day of the visit; default: today");
  app.add_option("--printed", call.printed, "the day on which the sheet was printed; default: its own day");
  app.add_flag("--list", call.list, "print every box of the sheet as a line to fill in");
  app.add_flag("--keep", call.keep, "keep the entries, all or none (without it, they are only shown)");
  app.add_option("--who", call.who, "who says it");
}
void transfer_ways_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("COLONY", call.subject, "key or name of the colony")->required();
  app.add_option("--into", call.into, "key or name of the hive it shall live in")->required();
}
void draft_map_options(CLI::App& app, Call& call) {
  app.add_option("FILE", call.subject, "a CSV file of your own, with a header")->required();
  app.add_option("--kind", call.kind, "the kind of entry that each row is, see enter --list")->required();
}
void week_ahead_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("FILE", call.subject, "rows like  2026-06-04 19 9 2 4 9 ; default: standard input");
  app.add_option("--site", call.site, "key or name of the site; default: all of them");
  app.add_flag("--list", call.list, "print seven rows to fill in");
  app.add_flag("--keep", call.keep, "keep the forecast, all or none (without it, it is only shown)");
  app.add_option("--who", call.who, "who says it");
}
void register_options(CLI::App& app, Call& call) {
  with_book(app, call);
  with_known(app, call);
  app.add_option("NAME", call.subject, "the register; default: list them");
  app.add_option("--from", call.from, "the first day");
  app.add_option("--to", call.to, "the last day");
  app.add_flag("--csv", call.csv, "answer as CSV");
  app.add_option("--out", call.out, "file to write: .pdf or .csv");
  app.add_option("--paper", call.paper, "A4 or Letter")->check(CLI::IsMember({"A4", "Letter"}));
}
void lines_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("--out", call.out, "draw the pedigree into this file, .svg or .pdf");
}
void skill_options(CLI::App& app, Call& call) {
  with_book(app, call);
  with_chance(app, call);
  app.add_flag("--schema", call.schema, "print the JSON Schema of the answer");
}
void suppose_options(CLI::App& app, Call& call) {
  with_book(app, call);
  app.add_option("COLONY", call.subject, "key or name of the colony")->required();
  app.add_option(
      "WAY", call.ways,
      "a day and what would be done, in the words of a note; several parts with ; between; a range of "
      "days stands for one way each; 'nothing' is always among them");
  app.add_option("--until", call.until, "the last day to follow it to; default: next spring");
  with_chance(app, call);
}
void serve_options(CLI::App& app, Call& call) {
  with_book(app, call);
  with_chance(app, call);
  app.add_option("--port", call.port, "port on loopback")->check(CLI::Range(0, 65535));
}

constexpr auto commands = std::to_array<Command>({
    {"plan",
     "Where to go in the next days, when, in which order, what to do and take, with what odds, and why",
     "beegarth plan build/demo.garth --form lines > week.txt; beegarth plan build/demo.garth --own week.txt",
     plan_command, plan_options},
    {"outlook", "What is believed of a colony, and what is to come with what odds",
     "beegarth outlook build/demo.garth cobble --json", outlook_command, outlook_options},
    {"note", "Turn a typed line into entries; shown back, and kept with --keep",
     "beegarth note build/demo.garth \"Cobble: 9 seams, eggs, 2 charged cells\" --keep", note_command,
     note_options},
    {"enter", "Enter one thing by its kind and fields",
     "beegarth enter my.garth feed '{\"colony\":\"alder-5\",\"kg\":2,\"form\":\"syrup\"}' --date 2026-06-05",
     enter_command, enter_options},
    {"see", "Sites, hives and colonies as they stand on a date",
     "beegarth see build/demo.garth --today 2026-04-01", see_command, see_options},
    {"entries", "The entries of the book, newest first, searched",
     "beegarth entries build/demo.garth cobble --text \"queen cells\" --kind inspection --from 2026-05-01",
     entries_command, entries_options},
    {"import", "Bring in a CSV file, places or a calendar by a mapping, or another book's export",
     "beegarth import my.garth weather.csv --map maps/daily_st_K_1998_2010.toml --dry-run", import_command,
     import_options},
    {"photo", "Keep a photo beside the book and list it in it",
     "beegarth photo my.garth comb.jpg --about Cobble --caption \"patchy brood\"", photo_command,
     photo_options},
    {"checklist", "What to do at once: a swarm call, robbing, a hive blown over, stings and the like",
     "beegarth checklist build/demo.garth stings", checklist_command, checklist_options},
    {"export", "Everything in the book: JSON Lines, places, dates, or a zip of all",
     "beegarth export my.garth --out my.zip", export_command, export_options},
    {"verify", "Check the book: file, chain, every entry", "beegarth verify my.garth", verify_command,
     with_book},
    {"sheet", "One visit as a printed sheet (PDF)", "beegarth sheet build/demo.garth --out visit.pdf",
     sheet_command, sheet_options},
    {"transfer-ways",
     "A colony into a hive of another pattern: which ways there are, what each costs and needs",
     "beegarth transfer-ways build/demo.garth Snipe --into \"Meadow stand 3\"", transfer_ways_command,
     transfer_ways_options},
    {"draft-map", "A first mapping file for a CSV of your own, to be mended by hand and tried with --dry-run",
     "beegarth draft-map own.csv --kind inspection > own.toml", draft_map_command, draft_map_options},
    {"week-ahead", "The weather of the days ahead, one row a day: highest, lowest, rain, wind, gust",
     "echo 2026-06-04 19 9 2 4 9 | beegarth week-ahead build/demo.garth --keep", week_ahead_command,
     week_ahead_options},
    {"key-in", "A filled sheet comes back: what was written in its boxes, in its own order, becomes entries",
     "beegarth key-in build/demo.garth filled.txt --site \"Pinder Yard\" --date 2026-06-03 --keep",
     key_in_command, key_in_options},
    {"register", "Medicines, movements, lots and the other registers, on screen, as CSV or printed",
     "beegarth register build/demo.garth medicines --out medicines.pdf", register_command, register_options},
    {"lines", "Queens with their lines, inbreeding and scores, and which to mate with whose drones",
     "beegarth lines my.garth --out pedigree.pdf", lines_command, lines_options},
    {"skill", "How well forecasts would have done at the looks in the book, against plain guesses",
     "beegarth skill build/demo.garth --json", skill_command, skill_options},
    {"suppose",
     "What would come of other deeds: ways of acting side by side, the cheapest first, and how sure",
     "beegarth suppose build/demo.garth Cobble \"2026-08-10: treated with thymol for 28 days\" \"2026-08-24: "
     "treated with thymol for 28 days\"",
     suppose_command, suppose_options},
    {"calc", "One computation on its own: JSON in, JSON out",
     "echo '{\"mites\":9,\"bees\":300}' | beegarth calc mite-sample", calc_command, calc_options},
    {"demo", "Write the demo book: an invented keeper, invented sites", "beegarth demo build/demo.garth",
     demo_command, demo_options},
    {"new", "Write a new, empty book", "beegarth new my.garth", new_command, new_options},
    {"serve", "Serve the page on this machine only", "beegarth serve build/demo.garth --port 8750",
     serve_command, serve_options},
});

int wrong_use(const std::string& what) {
  return report({ProblemKind::wrong_use, what, {}, "see beegarth --help"});
}

int run(int argc, char** argv) {
  CLI::App app{"beegarth: one notebook for bees at several sites, and what to do next"};
  app.set_version_flag("--version", "beegarth 0.1.0");
  app.require_subcommand(1);
  app.footer("Exit codes: 0 done, 1 the answer is \"no\", 2 wrong use, 3 bad input, 4 storage.");
  Call call;
  for (const Command& command : commands) {
    CLI::App* sub = app.add_subcommand(command.name, command.summary);
    command.options(*sub, call);
    sub->add_flag("--json", call.json, "answer as JSON");
    sub->footer(std::string("Example: ") + command.example);
  }
  try {
    app.parse(argc, argv);
  } catch (const CLI::Success& done) {
    return app.exit(done);
  } catch (const CLI::ParseError& error) {
    return wrong_use(error.what());
  }
  for (const Command& command : commands) {
    if (!app.got_subcommand(command.name)) continue;
    call.command = command.name;
    const int code = command.run(call);
    std::cout.flush();
    if (std::cout) return code;
    return report(
        {ProblemKind::storage, "the answer could not be written", "standard output", "check where it goes"});
  }
  return wrong_use("no command was given");
}

}  // namespace
}  // namespace beegarth::cli

int main(int argc, char** argv) {
  // A file that may not grow is told as a problem, not by a signal.
  std::signal(SIGXFSZ, SIG_IGN);
  try {
    return beegarth::cli::run(argc, argv);
  } catch (const std::exception& error) {
    std::fprintf(stderr, "beegarth: a fault of the program or the machine: %s\n", error.what());
    return 70;
  }
}
