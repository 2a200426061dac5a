#include "garth/beliefs/believe.hpp"

#include <algorithm>
#include <utility>

#include "belief/belief.hpp"
#include "garth/plan/dwelling.hpp"
#include "garth/threads.hpp"

namespace beegarth::garth {
namespace {

// Belief starts with the colony, or with the last 400 days where it is older: enough to hold one whole
// winter.
constexpr int longest_past_days = 400;

Date followed_from(const book::ColonyState& colony, Date today) {
  return std::max(colony.began_on, today - longest_past_days);
}

struct Task {
  ColonyId colony;
  const book::ColonyState* state;
  SiteId site;
};

std::vector<Task> tasks_of(const Session& session, const BelieveOptions& options) {
  std::vector<Task> tasks;
  for (const auto& [id, colony] : session.state.colonies) {
    if (colony.ended || (options.only && *options.only != id)) continue;
    const SiteId site = site_of_colony(session.state, colony);
    // One asked for by name is refused below; among all it is left out, and homeless_colonies() names it.
    if (!options.only && !session.state.sites.contains(site)) continue;
    tasks.push_back({id, &colony, site});
  }
  return tasks;
}

Expected<Task> task_of(const Session& session, const Skies& skies, const ColonyId& id) {
  const auto colony = session.state.colonies.find(id);
  const SiteId site =
      colony == session.state.colonies.end() ? SiteId{} : site_of_colony(session.state, colony->second);
  if (!skies.contains(site)) {
    return bad_input("the colony stands in no hive at an open site", id.text(),
                     "enter its hive and site, or that it was moved or ended");
  }
  return Task{id, &colony->second, site};
}

belief::History history_of(const Session& session, const Task& task) {
  const book::ColonyState& colony = *task.state;
  belief::History history{.colony = task.colony, .began = followed_from(colony, session.today)};
  const auto hive = session.state.hives.find(colony.hive);
  if (hive != session.state.hives.end()) history.dwelling = dwelling_of(hive->second);
  for (const auto& entry : colony.history) {
    const auto* split = std::get_if<entries::Split>(&entry.payload);
    if (split && split->into == task.colony) history.from_split = true;
    if (entry.happened >= history.began) history.entries.push_back(entry);
  }
  if (const auto* began = std::get_if<entries::ColonyBegan>(&colony.history.front().payload); began) {
    history.from_split = history.from_split || began->how == entries::Beginning::split ||
                         began->how == entries::Beginning::swarm;
  }
  return history;
}

// The part of the forcing before today is one path (days never seen are drawn once); from today on it forks.
belief::Forcing forcing_of(const std::vector<facts::ForcingPath>& paths, Date began, Date today) {
  belief::Forcing forcing;
  for (const auto& day : paths.front()) {
    if (day.date >= began && day.date < today) forcing.past.push_back(day);
  }
  for (const auto& path : paths) {
    const auto from =
        std::find_if(path.begin(), path.end(), [&](const auto& day) { return day.date >= today; });
    forcing.futures.emplace_back(from, path.end());
  }
  return forcing;
}

// Said where entries of the colony are too old to be weighed.
std::optional<facts::Reason> older_entries_remark(const book::ColonyState& colony, Date today) {
  const Date from = followed_from(colony, today);
  const auto older = std::count_if(colony.history.begin(), colony.history.end(),
                                   [&](const entries::Entry& entry) { return entry.happened < from; });
  if (older == 0) return std::nullopt;
  return facts::Reason{
      "followed from " + from.iso() + " on: " + std::to_string(older) +
          (older == 1 ? " older entry is kept and not weighed" : " older entries are kept and not weighed"),
      {},
      {}};
}

}  // namespace

SiteId site_of_colony(const book::State& state, const book::ColonyState& colony) {
  const auto hive = state.hives.find(colony.hive);
  return hive == state.hives.end() ? SiteId{} : hive->second.site;
}

std::vector<ColonyId> homeless_colonies(const book::State& state) {
  std::vector<ColonyId> homeless;
  for (const auto& [id, colony] : state.colonies) {
    if (!colony.ended && !state.sites.contains(site_of_colony(state, colony))) homeless.push_back(id);
  }
  return homeless;
}

Date season_end(Date today, double latitude_deg) {
  const int month = latitude_deg >= 0 ? 10 : 4;
  const Date end = Date::from_ymd(today.year(), month, month == 10 ? 31 : 30).value_or(today);
  return end > today ? end : Date::from_ymd(today.year() + 1, month, month == 10 ? 31 : 30).value_or(today);
}

Expected<Skies> skies_of(const Session& session, Date horizon) {
  std::map<SiteId, Date> first;
  for (const auto& [id, site] : session.state.sites) first.emplace(id, session.today);
  for (const auto& [id, colony] : session.state.colonies) {
    if (colony.ended) continue;
    const auto at = first.find(site_of_colony(session.state, colony));
    if (at != first.end()) at->second = std::min(at->second, followed_from(colony, session.today));
  }
  Skies skies;
  for (const auto& [site, from] : first) {
    auto weather = weather_at(session, site, from, horizon);
    if (!weather) return weather.problem();
    skies.emplace(site, *std::move(weather));
  }
  return skies;
}

Expected<std::vector<facts::Outlook>> outlooks_of(const Session& session, const Skies& skies,
                                                  const BelieveOptions& options) {
  const std::vector<Task> tasks = tasks_of(session, options);
  for (const Task& task : tasks) {
    if (!skies.contains(task.site)) {
      return bad_input("the colony stands in no hive at an open site", task.colony.text(),
                       "enter its hive and site, or that it was moved or ended");
    }
  }
  std::map<SiteId, std::vector<facts::ForcingPath>> paths;
  for (const auto& [site, sky] : skies) paths.emplace(site, forcing_at(session, site, sky));

  const belief::Tables tables{session.tables["colony"], session.tables["observation"]};
  std::vector<std::optional<Expected<facts::Outlook>>> answers(tasks.size());
  for_each_index(tasks.size(), session.threads, [&](std::size_t i) {
    const Task& task = tasks[i];
    const belief::History history = history_of(session, task);
    const belief::Options settings{.members = session.members,
                                   .seed = session.seed,
                                   .today = session.today,
                                   .horizon = options.horizon,
                                   .latitude_deg = skies.at(task.site).place.latitude_deg,
                                   .explain = options.explain};
    answers[i] = belief::foresee(history, forcing_of(paths.at(task.site), history.began, session.today),
                                 tables, settings);
  });
  std::vector<facts::Outlook> outlooks;
  for (std::size_t i = 0; i < answers.size(); ++i) {
    if (!*answers[i]) return answers[i]->problem();
    outlooks.push_back(**std::move(answers[i]));
    if (auto remark = older_entries_remark(*tasks[i].state, session.today))
      outlooks.back().remarks.insert(outlooks.back().remarks.begin(), *std::move(remark));
  }
  return outlooks;
}

Expected<std::vector<belief::Forecast>> forecasts_of(const Session& session, const Skies& skies,
                                                     const std::vector<ForecastWish>& wishes) {
  std::vector<Task> tasks;
  for (const ForecastWish& wish : wishes) {
    const auto task = task_of(session, skies, wish.colony);
    if (!task) return task.problem();
    tasks.push_back(*task);
  }
  std::map<SiteId, std::vector<facts::ForcingPath>> paths;
  for (const auto& [site, sky] : skies) paths.emplace(site, forcing_at(session, site, sky));

  const belief::Tables tables{session.tables["colony"], session.tables["observation"]};
  std::vector<std::optional<Expected<belief::Forecast>>> answers(tasks.size());
  for_each_index(tasks.size(), session.threads, [&](std::size_t i) {
    Date horizon = session.today;
    for (const auto& look : wishes[i].looks) horizon = std::max(horizon, look.date);
    const belief::History history = history_of(session, tasks[i]);
    const belief::Options settings{.members = session.members,
                                   .seed = session.seed,
                                   .today = session.today,
                                   .horizon = horizon,
                                   .latitude_deg = skies.at(tasks[i].site).place.latitude_deg,
                                   .explain = false};
    answers[i] = belief::forecast(history, forcing_of(paths.at(tasks[i].site), history.began, session.today),
                                  tables, settings, wishes[i].looks);
  });
  std::vector<belief::Forecast> forecasts;
  for (auto& answer : answers) {
    if (!*answer) return answer->problem();
    forecasts.push_back(**std::move(answer));
  }
  return forecasts;
}

Expected<belief::Supposed> supposed_of(const Session& session, const Skies& skies, const ColonyId& colony,
                                       Date until, const std::vector<belief::Way>& ways) {
  const auto task = task_of(session, skies, colony);
  if (!task) return task.problem();
  const belief::History history = history_of(session, *task);
  const belief::Options settings{.members = session.members,
                                 .seed = session.seed,
                                 .today = session.today,
                                 .horizon = until,
                                 .latitude_deg = skies.at(task->site).place.latitude_deg,
                                 .explain = false};
  const belief::Tables tables{session.tables["colony"], session.tables["observation"]};
  const auto paths = forcing_at(session, task->site, skies.at(task->site));
  return belief::suppose(history, forcing_of(paths, history.began, session.today), tables, settings, ways);
}

}  // namespace beegarth::garth
