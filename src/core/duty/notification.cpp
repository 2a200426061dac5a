#include "duty/notification.hpp"

#include <algorithm>

#include "duty/rows.hpp"

namespace beegarth::duty {
namespace {

std::string key_of(Subject subject, std::string_view what) {
  return std::string(subject_keys[static_cast<std::size_t>(subject)]) + "_" + std::string(what);
}

template <class Things, class Thing>
bool holds(const Things& things, const Thing& thing) {
  return std::find(things.begin(), things.end(), thing) != things.end();
}

// The signs among those seen that stand for the subject.
std::vector<std::string> signs_of(Subject subject, const Suspicion& suspicion, Rows& signs) {
  std::vector<std::string> found;
  for (const std::string& sign : suspicion.signs) {
    const std::string key = sign + "_of_" + std::string(subject_keys[static_cast<std::size_t>(subject)]);
    if (signs.maybe(key) && signs.yes(key) && !holds(found, sign)) found.push_back(sign);
  }
  return found;
}

// None is due before the law was, nor where one report of the place is enough and was made.
void settle_due(Report& report, const Suspicion& suspicion, Rows& country) {
  if (report.duty == Duty::none) {
    report.why = "this country's table asks for no report of it";
    return;
  }
  const std::string since_key = key_of(report.subject, "since");
  if (country.maybe(since_key) && suspicion.date) {
    const auto since = Date::parse(country.words(since_key));
    if (!since) return country.fail("the text is no date", since_key, "write it like 2021-04-21");
    if (*suspicion.date < *since) {
      report.why = "it was seen before " + since->iso() + ", the first day on which it is reported";
      return;
    }
  }
  const bool told = holds(suspicion.reported_earlier, report.subject);
  if (report.once_per_place && told) {
    report.why = "it was reported for this place before, and once is enough";
    return;
  }
  report.due = 1;
  report.why = report.once_per_place ? "once for the place, however many hives stand there"
                                     : "one for the place, naming every hive concerned";
  if (told) report.why += "; it was told before, and a new suspicion is told again";
}

Report report_of(Subject subject, std::vector<std::string> found, const Suspicion& suspicion, Rows& country) {
  Report report;
  report.subject = subject;
  report.duty = static_cast<Duty>(country.one_of(key_of(subject, "duty"), 2));
  report.stops_movement = country.yes(key_of(subject, "stops_movement"));
  report.once_per_place = country.yes(key_of(subject, "once_per_place"));
  report.signs = std::move(found);
  report.law = country.words(key_of(subject, "law"));
  report.source = country.source(key_of(subject, "duty"));
  settle_due(report, suspicion, country);
  return report;
}

std::vector<std::string> deeds(const Notification& told, const Suspicion& suspicion) {
  std::vector<std::string> list;
  const auto grave = [](const Report& r) { return r.duty == Duty::notify_at_once && r.due > 0; };
  const bool at_once = std::any_of(told.reports.begin(), told.reports.end(), grave);
  if (at_once) list.push_back("tell " + told.to + " today, by telephone, before any other visit");
  if (told.movement_stops) {
    list.emplace_back(
        "nothing leaves this place and nothing goes to another hive: no bees, hives, combs, tools, feed, "
        "honey "
        "or wax, until the inspector has spoken");
    list.emplace_back("close the hive, narrow its entrance so that it is not robbed, and mark it");
    list.emplace_back(
        "wash hands, tools and boots with washing soda, and change suit and gloves before other bees");
  }
  if (at_once) list.emplace_back("treat nothing and destroy nothing: that is the inspector's to decide");
  if (told.due == 0)
    list.push_back("no report is due by what was told; in doubt ask " + told.to +
                   ", for asking costs nothing");
  if (!at_once && told.due > 0) list.push_back("send the report to " + told.to);
  const bool hornet = std::any_of(told.reports.begin(), told.reports.end(), [](const Report& r) {
    return r.subject == Subject::yellow_legged_hornet && r.due > 0;
  });
  if (hornet)
    list.emplace_back(
        "take a photograph from afar, note place and hour, and keep away from any nest: it stings in "
        "numbers");
  if (told.due > 0)
    list.push_back("say where the place is, that " + std::to_string(suspicion.hives_at_place) +
                   (suspicion.hives_at_place == 1 ? " hive stands" : " hives stand") +
                   " there, what was seen and when; write the call in the book");
  return list;
}

}  // namespace

Expected<Notification> notification_of(const Suspicion& suspicion, const FactTable& country_table,
                                       const FactTable& sign_table) {
  Rows country(country_table), signs(sign_table);
  Notification told;
  told.to = country.words("authority");
  std::vector<std::string> explained;
  for (std::size_t i = 0; i < subject_keys.size(); ++i) {
    const auto subject = static_cast<Subject>(i);
    auto found = signs_of(subject, suspicion, signs);
    if (found.empty() && !holds(suspicion.subjects, subject)) continue;
    explained.insert(explained.end(), found.begin(), found.end());
    told.reports.push_back(report_of(subject, std::move(found), suspicion, country));
  }
  if (country.fault()) return *country.fault();
  if (signs.fault()) return *signs.fault();
  std::stable_sort(told.reports.begin(), told.reports.end(),
                   [](const Report& a, const Report& b) { return a.duty > b.duty; });
  for (const std::string& sign : suspicion.signs) {
    if (!holds(explained, sign)) told.signs_of_nothing_notifiable.push_back(sign);
  }
  for (const Report& report : told.reports) {
    told.due += report.due;
    told.movement_stops = told.movement_stops || report.stops_movement;
  }
  told.at_once = deeds(told, suspicion);
  return told;
}

}  // namespace beegarth::duty
