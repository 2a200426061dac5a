// notifiable: from signs or a named disease to what is told to the authority, how often, and whether anything
// moves.
#include <algorithm>

#include "duty/notification.hpp"
#include "entries/fields.hpp"
#include "garth/calc/country.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most_signs = 20, most_reports = 200;
constexpr std::array<std::string_view, 3> duties{"none", "report", "notify_at_once"};

Json input_schema() {
  const Json earlier = object_schema(
      {{"subject", choice_schema("", duty::subject_keys)}, {"date", date_schema("on which it was reported")}},
      {"subject"});
  return object_schema(
      {{"country", country_schema()},
       {"subject", choice_schema("what is suspected, where it has a name", duty::subject_keys)},
       {"signs",
        {{"type", "array"},
         {"items", choice_schema("as written in an inspection", entries::signs_of_health)},
         {"maxItems", most_signs}}},
       {"hives_at_place",
        {{"type", "integer"}, {"minimum", 1}, {"maximum", 10000}, {"description", "1 where absent"}}},
       {"date", date_schema("on which it was seen")},
       {"earlier_reports", {{"type", "array"}, {"items", earlier}, {"maxItems", most_reports}}}},
      {"country"});
}

Json output_schema() {
  const Json report = object_schema({{"subject", choice_schema("", duty::subject_keys)},
                                     {"name", text_schema("")},
                                     {"duty", choice_schema("", duties)},
                                     {"reports_due", {{"type", "integer"}, {"minimum", 0}, {"maximum", 1}}},
                                     {"stops_movement", flag_schema("")},
                                     {"once_per_place", flag_schema("")},
                                     {"signs", {{"type", "array"}, {"items", text_schema("")}}},
                                     {"why", text_schema("why so many")},
                                     {"law", text_schema("")},
                                     {"source", text_schema("")}},
                                    {"subject", "name", "duty", "reports_due", "stops_movement",
                                     "once_per_place", "signs", "why", "law", "source"});
  const Json texts{{"type", "array"}, {"items", text_schema("")}};
  return object_schema(
      {{"reports", {{"type", "array"}, {"items", report}}},
       {"reports_due", {{"type", "integer"}, {"minimum", 0}}},
       {"movement_stops", flag_schema("nothing leaves, nothing goes to another hive")},
       {"to", text_schema("whom to tell, in general words")},
       {"do_at_once", texts},
       {"signs_of_nothing_notifiable", texts}},
      {"reports", "reports_due", "movement_stops", "to", "do_at_once", "signs_of_nothing_notifiable"});
}

Json example() {
  return {{"country", "england"}, {"signs", {"sunken_cappings", "ropy_larva"}}, {"hives_at_place", 6}};
}

duty::Subject subject_called(const std::string& name) {
  const auto at = std::find(duty::subject_keys.begin(), duty::subject_keys.end(), name);
  return static_cast<duty::Subject>(at - duty::subject_keys.begin());
}

void read_signs(Reader& reader, duty::Suspicion& suspicion) {
  suspicion.signs = reader.maybe_texts("signs", most_signs);
  for (std::size_t i = 0; i < suspicion.signs.size(); ++i) {
    const auto& known = entries::signs_of_health;
    if (std::find(known.begin(), known.end(), suspicion.signs[i]) == known.end())
      reader.fail(bad_input("there is no sign '" + suspicion.signs[i] + "'", reader.path_of("signs", i),
                            "see --schema"));
  }
}

Json told(const duty::Notification& notification) {
  Json reports = Json::array();
  for (const duty::Report& report : notification.reports) {
    const auto subject = static_cast<std::size_t>(report.subject);
    reports.push_back({{"subject", duty::subject_keys[subject]},
                       {"name", duty::subject_names[subject]},
                       {"duty", duties[static_cast<std::size_t>(report.duty)]},
                       {"reports_due", report.due},
                       {"stops_movement", report.stops_movement},
                       {"once_per_place", report.once_per_place},
                       {"signs", report.signs},
                       {"why", report.why},
                       {"law", report.law},
                       {"source", report.source}});
  }
  return {{"reports", std::move(reports)},
          {"reports_due", notification.due},
          {"movement_stops", notification.movement_stops},
          {"to", notification.to},
          {"do_at_once", notification.at_once},
          {"signs_of_nothing_notifiable", notification.signs_of_nothing_notifiable}};
}

Expected<Json> run(const Json& input, const Tables& tables) {
  Reader reader(input);
  const std::string country = reader.choice_of("country", countries);
  duty::Suspicion suspicion;
  if (const auto subject = reader.maybe_choice_of("subject", duty::subject_keys))
    suspicion.subjects.push_back(subject_called(*subject));
  read_signs(reader, suspicion);
  suspicion.hives_at_place = reader.maybe_whole("hives_at_place", 1, 10000).value_or(1);
  suspicion.date = reader.maybe_date("date");
  const auto earlier = reader.maybe_list("earlier_reports", most_reports);
  if (auto fault = reader.done()) return *std::move(fault);
  if (suspicion.subjects.empty() && suspicion.signs.empty())
    return bad_input("nothing is suspected", "$", "give subject or signs");
  for (std::size_t i = 0; i < earlier.size(); ++i) {
    Reader row(earlier[i], reader.path_of("earlier_reports", i));
    const std::string subject = row.choice_of("subject", duty::subject_keys);
    const auto date = row.maybe_date("date");
    if (auto fault = row.done()) return *std::move(fault);
    const bool later = date && suspicion.date && *date > *suspicion.date;
    if (!later) suspicion.reported_earlier.push_back(subject_called(subject));
  }
  const auto notification =
      duty::notification_of(suspicion, duty_table(tables, country), tables["duty_signs"]);
  if (!notification) return notification.problem();
  return told(*notification);
}

}  // namespace

Calc notifiable_calc() {
  return {
      "notifiable", "what a sign or a disease has to be told to the authority, and whether anything may move",
      input_schema, output_schema,
      example,      run};
}

}  // namespace beegarth::garth
