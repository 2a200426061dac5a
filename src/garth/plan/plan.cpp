#include "garth/plan/plan.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

#include "entries/fields.hpp"
#include "garth/ledgers/dead_colony.hpp"
#include "garth/plan/answers.hpp"
#include "garth/plan/crop_waiting.hpp"
#include "garth/plan/husbandry.hpp"
#include "garth/plan/mip_cbc.hpp"
#include "garth/plan/quarantined.hpp"
#include "garth/plan/status.hpp"
#include "garth/plan/suspicion.hpp"
#include "garth/plan/treatment_weather.hpp"
#include "garth/reports_due.hpp"
#include "work/needs.hpp"
#include "work/refused.hpp"

namespace beegarth::garth {
namespace {

constexpr int most_days = 28;

// How one gets in: as said of the site, and what was agreed about gate, lock and stock.
std::string way_in(const Session& session, const SiteId& id, const entries::Site& site) {
  std::string gate;  // the last word on it
  for (const auto& entry : session.standing) {
    const auto* land = std::get_if<entries::Land>(&entry.payload);
    if (land != nullptr && land->site == id) gate = land->gate.value_or("");
  }
  std::string way = site.access.value_or("");
  if (!gate.empty()) way += (way.empty() ? "gate: " : "; gate: ") + gate;
  return way;
}

std::vector<work::SiteFacts> site_facts(const Session& session) {
  std::vector<work::SiteFacts> list;
  for (const auto& [id, site] : session.state.sites) {
    list.push_back({id, site.name, site.grid_reference.value_or(""), way_in(session, id, site),
                    site.neighbours.value_or(false)});
  }
  return list;
}

std::optional<double> said_minutes(const book::State& state, const std::string& a, const std::string& b) {
  for (const auto& pair : {std::pair{a, b}, std::pair{b, a}}) {
    if (const auto at = state.travel.find(pair); at != state.travel.end()) return at->second.minutes;
  }
  return std::nullopt;
}

// Two sites whose distance was never said are reached by way of home.
work::TravelTable travel_table(const Session& session, const std::vector<work::SiteFacts>& sites) {
  std::vector<std::string> stops{"home"};
  for (const auto& site : sites) stops.push_back(site.site.text());
  work::TravelTable table;
  table.minutes.assign(stops.size(), std::vector<std::optional<double>>(stops.size()));
  for (std::size_t i = 0; i < stops.size(); ++i) {
    for (std::size_t j = 0; j < stops.size(); ++j) {
      auto minutes = i == j ? std::optional<double>(0) : said_minutes(session.state, stops[i], stops[j]);
      if (!minutes) {
        const auto there = said_minutes(session.state, "home", stops[i]);
        const auto on = said_minutes(session.state, "home", stops[j]);
        if (there && on) minutes = *there + *on;
      }
      table.minutes[i][j] = minutes;
    }
  }
  return table;
}

std::vector<work::Availability> working_hours(const Session& session, int days,
                                              std::vector<std::string>& remarks) {
  std::vector<work::Availability> list(static_cast<std::size_t>(days));
  if (session.state.hours.empty()) {
    remarks.emplace_back("no working hours are in the book: 10:00 to 16:00 on every day was assumed");
    return list;
  }
  for (int d = 0; d < days; ++d) {
    const Date date = session.today + d;
    work::Availability& day = list[static_cast<std::size_t>(d)];
    day = {10, 10};  // no hours said for this weekday: none
    // A date said by name wins over its weekday; of two alike the later said wins.
    for (const bool by_date : {false, true}) {
      for (const auto& said : session.state.hours) {
        const bool fits = by_date ? said.date == date : said.weekday == date.weekday();
        if (fits) day = {said.start_hour, said.end_hour};
      }
    }
  }
  return list;
}

double setting_number(const Session& session, const std::string& name, double otherwise, double low,
                      double high) {
  const auto at = session.state.settings.find(name);
  if (at == session.state.settings.end()) return otherwise;
  char* end = nullptr;
  const double value = std::strtod(at->second.c_str(), &end);
  return end != at->second.c_str() && std::isfinite(value) ? std::clamp(value, low, high) : otherwise;
}

// Until product and days are written a treatment counts as the longest kind, so that it is not done twice and
// no comb for people goes on under it.
void count_unwritten_treatments(const Session& session, work::NeedsInput& input) {
  const double days = session.tables["work"].find("rest_treat_days")->value;
  for (const Unwritten& deed : unwritten_deeds(session)) {
    if (deed.kind != "treat") continue;
    for (auto& status : input.colonies)
      if (status.colony == deed.colony)
        status.last_treatment = work::Sighting{deed.answer->happened, deed.answer->id, days};
  }
}

// What was answered rests; a sign of disease seen since wakes it.
std::set<std::string> keys_at_rest(const Answered& answered, const work::NeedsInput& input) {
  std::set<std::string> keys;
  for (const auto& answer : answered.resting) {
    const std::string& key = answer.first;  // clang 14 captures no structured binding
    const auto colony = std::find_if(input.colonies.begin(), input.colonies.end(), [&](const auto& one) {
      return key == "tell-inspector/" + one.colony.text() || key == "suspect/" + one.colony.text();
    });
    const Date day = answer.second;
    const bool woken =
        colony != input.colonies.end() && std::any_of(colony->signs.begin(), colony->signs.end(),
                                                      [&](const auto& sign) { return sign.seen.date > day; });
    if (!woken) keys.insert(key);
  }
  return keys;
}

std::set<std::string> rules_kept(const Session& session) {
  std::set<std::string> rules;
  for (const auto& entry : session.standing) {
    const auto* said = std::get_if<entries::KeeperRule>(&entry.payload);
    if (said == nullptr) continue;
    const std::string word(entries::word_for(said->rule));
    if (said->kept)
      rules.insert(word);
    else
      rules.erase(word);
  }
  return rules;
}

// A count that belief has left out, because no course of the colony goes with it, asks for no treatment
// either.
void forget_left_out(const std::vector<facts::Outlook>& outlooks, work::ColonyStatus& colony) {
  const auto outlook = std::find_if(outlooks.begin(), outlooks.end(),
                                    [&](const facts::Outlook& one) { return one.colony == colony.colony; });
  if (outlook == outlooks.end() || outlook->left_out.empty()) return;
  const auto left_out = [&](const EntryId& entry) {
    return std::find(outlook->left_out.begin(), outlook->left_out.end(), entry) != outlook->left_out.end();
  };
  std::erase_if(colony.mite_counts,
                [&](const work::MiteSighting& seen) { return left_out(seen.count.entry); });
  if (!colony.last_mite_count || !left_out(colony.last_mite_count->entry)) return;
  colony.last_mite_count.reset();
  colony.last_mite_method.clear();
  if (colony.mite_counts.empty()) return;
  colony.last_mite_count = colony.mite_counts.back().count;
  colony.last_mite_method = colony.mite_counts.back().method;
}

work::NeedsInput needs_input(const Session& session, const Skies& skies, std::vector<facts::Outlook> outlooks,
                             int days) {
  work::NeedsInput input{.today = session.today, .days = days, .outlooks = std::move(outlooks)};
  for (const auto& [id, site] : session.state.sites)
    input.sites.push_back(status_of(session, id, skies.at(id), days));
  for (const auto& [id, colony] : session.state.colonies) {
    const bool housed = session.state.sites.contains(site_of_colony(session.state, colony));
    if (colony.ended || !housed) continue;
    input.colonies.push_back(status_of(session, id, colony));
    forget_left_out(input.outlooks, input.colonies.back());
  }
  add_suspects_left_behind(session, input);
  take_husbandry(session.standing, session.state, input);
  take_crop_waiting(session.standing, input);
  count_unwritten_treatments(session, input);
  input.answered = keys_at_rest(answered_needs(session), input);
  input.at_a_dead_hive = steps_at_a_dead_hive();
  input.refused = work::refused_by(rules_kept(session));
  input.price_per_hour = setting_number(session, "price_per_hour", input.price_per_hour, 0, 1000);
  for (const auto& [what, kit] : session.state.kit) {
    input.kit[what] = kit.count;
    if (kit.where) input.kit_where[what] = *kit.where;
  }
  return input;
}

// Skipped or put off: planned again from the day on that the answer leaves it for.
void put_off(std::vector<facts::Need>& needs, const Answered& answered) {
  for (facts::Need& need : needs) {
    const auto day = answered.not_before.find(need.key);
    if (day == answered.not_before.end()) continue;
    need.earliest = std::max(need.earliest, day->second);
    need.best = std::max(need.best, need.earliest);
    need.latest = std::max(need.latest, need.earliest);
  }
}

// What a keeper has to enter before more can be said.
void remark_what_is_missing(const Session& session, std::vector<std::string>& remarks) {
  if (session.state.sites.empty()) {
    remarks.emplace_back(
        "no site is in the book yet: enter a site, a hive at it and the colony in the hive first");
  }
  remarks.insert(remarks.end(), session.faulty_overrides.begin(), session.faulty_overrides.end());
  for (const Unwritten& deed : unwritten_deeds(session))
    remarks.push_back(remark_of(deed, session.state.colonies.at(deed.colony).began.name));
  for (const ColonyId& id : homeless_colonies(session.state)) {
    const Homeless why = why_homeless(session, id);
    remarks.push_back(session.state.colonies.at(id).began.name +
                      " is left out: it stands in no hive at an open site" + why.because() + "; " +
                      why.remedy);
  }
}

}  // namespace

PlanNames names_of(const Session& session) {
  PlanNames names;
  for (const auto& [id, site] : session.state.sites) names.sites[id] = site.name;
  for (const auto& [id, colony] : session.state.colonies) names.colonies[id] = colony.began.name;
  return names;
}

Expected<PlanAnswer> plan_next_days(const Session& session, int days) {
  if (days < 1 || days > most_days)
    return bad_input(std::to_string(days) + " days cannot be planned", "--days", "give 1 to 28");
  double latitude = 52;
  if (!session.state.sites.empty()) latitude = session.state.sites.begin()->second.latitude_deg;
  const Date horizon = last_followed(session.today, latitude);

  auto skies = skies_of(session, horizon);
  if (!skies) return skies.problem();
  auto outlooks = outlooks_of(session, *skies, {.horizon = horizon, .doubt = false});
  if (!outlooks) return outlooks.problem();

  PlanAnswer answer;
  answer.sites = site_facts(session);
  work::NeedsInput wanted = needs_input(session, *skies, *outlooks, days);
  if (Outcome told = take_reports_due(session.standing, session.state, session.tables, wanted); !told)
    return told.problem();
  if (const Outcome taken = take_quarantines(session.standing, session.tables["work"], wanted); !taken)
    return taken.problem();
  answer.names = names_of(session);

  work::PlanInput input{.from = session.today, .days = days, .sites = answer.sites};
  for (const auto& colony : wanted.colonies)
    input.colonies.push_back({colony.colony, colony.name, colony.site, colony.place});
  std::vector<facts::Need> needs = work::needs_from(wanted, session.tables["work"]);
  if (const Outcome judged = judge_treatments(needs, wanted, session.tables); !judged)
    return judged.problem();
  auto kept = work::keep_rules(std::move(needs), wanted.refused);
  input.needs = std::move(kept.needs);
  put_off(input.needs, answered_needs(session));
  input.travel = travel_table(session, answer.sites);
  for (const auto& site : answer.sites)
    input.weather.push_back(site_days(skies->at(site.site), session.today, days));
  std::vector<std::string> remarks = std::move(kept.remarks);
  remark_what_is_missing(session, remarks);
  input.hours = working_hours(session, days, remarks);
  input.people = static_cast<int>(setting_number(session, "people", 1, 1, 10));
  input.price_per_hour = wanted.price_per_hour;
  input.price_of_opening = session.tables["work"].find("opening_kg")->value;
  auto plan = work::plan_days(input, cbc_solver());
  if (!plan) return plan.problem();
  answer.plan = *std::move(plan);
  answer.input = std::move(input);
  for (const auto& [site, sky] : *skies) {
    for (const auto& remark : sky.remarks) {
      if (std::find(remarks.begin(), remarks.end(), remark) == remarks.end()) remarks.push_back(remark);
    }
  }
  if (session.state.forage.empty()) {
    remarks.emplace_back(
        "nectar and pollen on offer: a stand-in yearly course, because the keeper has not reckoned it yet");
  } else {
    remarks.emplace_back("nectar and pollen on offer: the keeper's own reckoning by month");
  }
  answer.plan.remarks.insert(answer.plan.remarks.end(), remarks.begin(), remarks.end());
  answer.outlooks = *std::move(outlooks);
  return answer;
}

}  // namespace beegarth::garth
