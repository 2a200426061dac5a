// What of ill health is told to whom, how often, and whether anything may leave the place. The rows are those
// of a country's table, tables/duty_<country>.toml; a suspicion is enough.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "base/fact_table.hpp"

namespace beegarth::duty {

enum class Subject {
  american_foulbrood,
  european_foulbrood,
  small_hive_beetle,
  tropilaelaps,
  varroa,
  yellow_legged_hornet
};
inline constexpr std::array<std::string_view, 6> subject_keys{
    "american_foulbrood",  "european_foulbrood", "small_hive_beetle", "tropilaelaps", "varroa",
    "yellow_legged_hornet"};
inline constexpr std::array<std::string_view, 6> subject_names{
    "American foulbrood",
    "European foulbrood",
    "small hive beetle",
    "Tropilaelaps (a brood mite other than varroa)",
    "varroa",
    "yellow-legged hornet"};

struct Suspicion {
  std::vector<Subject> subjects;          // named by the keeper
  std::vector<std::string> signs;         // as written in an inspection: "ropy_larva"
  int hives_at_place = 1;                 // told in the report; never a report for each
  std::vector<Subject> reported_earlier;  // of this place
  std::optional<Date> date;               // on which it was seen
};

enum class Duty { none, report, notify_at_once };

struct Report {
  Subject subject = Subject::varroa;
  Duty duty = Duty::none;
  int due = 0;  // how many reports are owed now: 0 or 1
  bool stops_movement = false;
  bool once_per_place = false;
  std::vector<std::string> signs;  // that brought it up; empty where the keeper named it
  std::string why;                 // why so many are owed
  std::string law;
  std::string source;
};

struct Notification {
  std::vector<Report> reports;  // the gravest first
  std::vector<std::string> signs_of_nothing_notifiable;
  int due = 0;
  bool movement_stops = false;
  std::string to;                    // in general words
  std::vector<std::string> at_once;  // what to do, in this order
};

// `signs` is tables/duty_signs.toml.
Expected<Notification> notification_of(const Suspicion& suspicion, const FactTable& country,
                                       const FactTable& signs);

}  // namespace beegarth::duty
