#include "garth/desk/desk.hpp"

#include <algorithm>
#include <filesystem>

#include "entries/fields.hpp"
#include "garth/beliefs/outlook_json.hpp"
#include "garth/calc/calc.hpp"
#include "garth/entry_json.hpp"
#include "garth/keep/checklists.hpp"
#include "garth/keep/keep.hpp"
#include "garth/keep/remarks.hpp"
#include "garth/note.hpp"
#include "garth/plan/plan_json.hpp"
#include "garth/plan/status.hpp"
#include "garth/sheet/visit_sheet.hpp"

namespace beegarth::garth {
namespace {

using nlohmann::json;

// The list of colonies draws a short stretch of each fan; the rest would only be carried about.
constexpr int list_days_back = 75;
constexpr int list_days_ahead = 60;

json shortened(const json& fans, Date today) {
  json list = json::array();
  for (const json& fan : fans) {
    json part{{"quantity", fan["quantity"]},
              {"unit", fan["unit"]},
              {"dates", json::array()},
              {"levels", json::object()}};
    for (std::size_t d = 0; d < fan["dates"].size(); ++d) {
      const auto date = Date::parse(fan["dates"][d].get<std::string>());
      if (!date || *date < today - list_days_back || *date > today + list_days_ahead) continue;
      part["dates"].push_back(fan["dates"][d]);
      for (const auto& level : fan["levels"].items()) part["levels"][level.key()].push_back(level.value()[d]);
    }
    list.push_back(std::move(part));
  }
  return list;
}

json summary_json(const facts::Outlook& outlook, const Session& session) {
  const auto& colony = session.state.colonies.at(outlook.colony);
  json full = outlook_json(outlook, session.state);
  json odds = json::array();
  for (const auto& event : outlook.events) {
    if (event.course.empty()) continue;
    // A fortnight ahead: as far as one plan reaches.
    const auto& point = event.course[std::min<std::size_t>(14, event.course.size() - 1)];
    odds.push_back({{"event", event_words(event.kind)},
                    {"by", point.by.iso()},
                    {"value", point.odds.value},
                    {"low", point.odds.low},
                    {"high", point.odds.high}});
  }
  json row{{"key", outlook.colony.text()},
           {"name", colony.began.name},
           {"site", site_of_colony(session.state, colony).text()},
           {"hive", colony.hive.text()},
           {"form", "upright"},
           {"alive", outlook.alive},
           {"suspect", status_of(session, outlook.colony, colony).suspect},
           {"odds", std::move(odds)},
           {"fans", shortened(full["fans"], outlook.today)},
           {"seen", full["seen"]}};
  const auto hive = session.state.hives.find(colony.hive);
  if (hive != session.state.hives.end()) {
    row["hive_name"] = hive->second.name;
    row["form"] = entries::word_for(hive->second.form);
    const auto site = session.state.sites.find(hive->second.site);
    if (site != session.state.sites.end()) row["site_name"] = site->second.name;
  }
  return row;
}

}  // namespace

Outcome Desk::look_again() {
  const auto head = session_.book.head();
  if (!head) return head.problem();
  if (*head == head_) return Done{};
  plan_.reset();
  doubts_.reset();
  then_.reset();
  sheet_.reset();
  head_ = *head;
  return refresh(session_);
}

Expected<const PlanAnswer*> Desk::planned(int days) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  if (!plan_ || plan_days_ != days) {
    auto answer = plan_next_days(session_, days);
    if (!answer) return answer.problem();
    plan_ = *std::move(answer);
    plan_days_ = days;
  }
  return &*plan_;
}

Expected<std::string> Desk::version() {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  return head_.substr(0, 24) + "-" + session_.today.iso() + "-" + std::to_string(session_.seed) + "-" +
         std::to_string(session_.members);
}

Expected<json> Desk::book() {
  const auto etag = version();
  if (!etag) return etag.problem();
  return json{{"name", std::filesystem::path(session_.path).filename().string()},
              {"today", session_.today.iso()},
              {"seed", session_.seed},
              {"head", head_},
              {"etag", *etag},
              {"program", "beegarth 0.1.0"},
              {"counts",
               {{"entries", session_.standing.size()},
                {"sites", session_.state.sites.size()},
                {"hives", session_.state.hives.size()},
                {"colonies", session_.state.colonies.size()}}}};
}

Expected<json> Desk::plan(int days) {
  const auto answer = planned(days);
  if (!answer) return answer.problem();
  return plan_json((*answer)->plan, (*answer)->names);
}

Expected<json> Desk::colonies() {
  const auto answer = planned(plan_ ? plan_days_ : 14);
  if (!answer) return answer.problem();
  json list = json::array();
  for (const auto& outlook : (*answer)->outlooks) list.push_back(summary_json(outlook, session_));
  return json{{"today", session_.today.iso()}, {"colonies", std::move(list)}};
}

Expected<json> Desk::outlook(std::string_view colony) {
  const auto answer = planned(plan_ ? plan_days_ : 14);
  if (!answer) return answer.problem();
  const auto id = colony_named(session_.state, colony);
  if (!id) return id.problem();
  for (const auto& outlook : (*answer)->outlooks) {
    if (outlook.colony != *id) continue;
    json full = outlook_json(outlook, session_.state);
    const json row = summary_json(outlook, session_);
    for (const char* field : {"site", "site_name", "hive", "hive_name", "form", "suspect"}) {
      if (row.contains(field)) full[field] = row[field];
    }
    return full;
  }
  return bad_input("the colony has ended", std::string(colony), "name one that lives");
}

Expected<json> Desk::note(std::string_view line, bool keep) {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  const auto answer = take_note(session_, line, keep);
  if (!answer) return answer.problem();
  json entries = json::array();
  for (const auto& entry : answer->understood) entries.push_back(shown_entry(entry, session_.state));
  json remarks = json::array();
  if (!answer->left_as_text.empty()) remarks.push_back("kept as text: " + answer->left_as_text);
  for (const auto& question : answer->questions) remarks.push_back("unclear: " + question);
  const auto said = remarks_on(session_, answer->understood);
  if (!said) return said.problem();
  for (const Remark& remark : *said) remarks.push_back(remark.text());
  json told{{"kept", keep}, {"entries", std::move(entries)}, {"remarks", std::move(remarks)}};
  if (!keep) return told;
  const auto lists = checklists_for(session_, answer->understood);
  if (!lists) return lists.problem();
  for (const auto& list : *lists) told["checklists"].push_back(checklist_json(list));
  return told;
}

Expected<json> Desk::answer_need(std::string_view key, std::string_view answer, std::optional<Date> until) {
  const auto plan = planned(plan_ ? plan_days_ : 14);
  if (!plan) return plan.problem();
  entries::NeedAnswered said{.need = std::string(key), .until = until};
  const auto& words = entries::Words<entries::NeedAnswered::Answer>::list;
  const auto word = std::find(words.begin(), words.end(), answer);
  if (word == words.end())
    return bad_input("there is no answer '" + std::string(answer) + "'", "answer",
                     "give done, skipped, put_off or rained_off");
  said.answer = static_cast<entries::NeedAnswered::Answer>(word - words.begin());
  bool known = false;
  for (const auto& job : (*plan)->plan.at_home) known = known || job.need.key == key;
  for (const auto& visit : (*plan)->plan.visits) {
    for (const auto& job : visit.jobs) known = known || job.need.key == key;
  }
  for (const auto& undone : (*plan)->plan.undone) known = known || undone.need.key == key;
  if (!known)
    return bad_input("there is no need '" + std::string(key) + "' in the plan", {}, "load the plan again");
  const auto kept = keep(session_, {{.happened = session_.today, .payload = said}});
  if (!kept) return kept.problem();
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  return json{{"kept", true}, {"entries", json::array({shown_entry(kept->front(), session_.state)})}};
}

Expected<std::string> Desk::sheet(Date date, std::string_view site) {
  const auto answer = planned(plan_ ? plan_days_ : 14);
  if (!answer) return answer.problem();
  auto sheet = sheet_of(session_, **answer, {.date = date.iso(), .site = std::string(site)});
  if (!sheet) return sheet.problem();
  return std::move(sheet->pdf);
}

json Desk::calcs() {
  json list = json::array();
  for (const auto& calc : all_calcs()) {
    list.push_back({{"name", calc.name},
                    {"summary", calc.summary},
                    {"input", calc.input_schema()},
                    {"output", calc.output_schema()},
                    {"example", calc.example()}});
  }
  return json{{"calcs", std::move(list)}};
}

Expected<json> Desk::calc(std::string_view name, std::string_view input) {
  return run_calc(name, input, session_.tables);
}

}  // namespace beegarth::garth
