// What every kind of need asks of the input: the season, the odds, the table, and the shape of a need.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "work/needs.hpp"
#include "work/words.hpp"

namespace beegarth::work {

// One way among several, and what it asks the keeper to do.
struct Way {
  std::string words;
  std::vector<facts::Deed> asks;
};

// One colony, where it stands and what is believed of it. Outlook may be missing.
struct Asking {
  const NeedsInput& input;
  const FactTable& table;
  const SiteStatus& site;
  const ColonyStatus* colony = nullptr;  // absent for needs of a site
  const facts::Outlook* outlook = nullptr;
  bool site_suspect = false;  // some colony of this site is

  Date last_day() const { return input.today + (input.days - 1); }
  // The table is compiled in: a missing row is a bug.
  double fact(const char* key) const;
  int minutes(const char* key) const;
  std::string source(const char* key) const;  // "tables/work prime_swarm_kg: from memory: ..."
  static std::string row(const char* key) { return "tables/work " + std::string(key); }
  int kit(const char* word) const;  // how many things owned have the word in their name

  // 1..12, turned by half a year south of the equator.
  int month(Date date) const;
  bool opening_season(Date date) const;  // March to October
  bool main_flow_over(Date date) const;
  bool dearth(Date date) const;  // in the foraging months, by the keeper's own reckoning; false where none

  const facts::EventOutlook* event(facts::EventKind kind) const;
  std::optional<facts::Odds> odds_by(facts::EventKind kind, Date date) const;
  std::optional<double> median_of(const char* quantity, Date date) const;

  // Whether this keeper does such a thing at all.
  bool will(facts::Deed deed) const { return !input.refused.contains(deed); }
  // What is left of several ways: "a, b or c"; `last` is the word before the last one.
  std::string ways_left(const std::vector<Way>& ways, const char* last = "or") const;

  // Key "kind/place", minutes and all windows still to be set.
  facts::Need need(const std::string& kind, std::string what) const;
  // The odds told with the need, for two days, and the reasons that came with them.
  void tell_odds(facts::Need& need, facts::EventKind kind, const char* words, Date first, Date second) const;
};

std::string lower(std::string text);

facts::Reason because(std::string text, std::vector<EntryId> entries = {},
                      std::vector<std::string> sources = {});

// Loss if the need is met on day d. p(d) are the odds that the event has come by day d, p(end) those at the
// end of what is foreseen. Met before the event, `saved` of its price is spared; what has come by today does
// its harm evenly over `harm_days`, so that meeting the need still spares the rest: price x ((1 - saved) x
// p(end) + saved x (p(0) x min(1, (d + 1) / harm_days) + p(d) - p(0))). Never met: price x p(end).
facts::LossCurve loss_from_odds(const Asking& asking, facts::EventKind kind, double price, double saved);

// Nothing up to `due`, then a straight line to `price` after `days_to_full` days.
facts::LossCurve loss_when_late(const Asking& asking, Date due, double days_to_full, double price);

}  // namespace beegarth::work
