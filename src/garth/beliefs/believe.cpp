#include "garth/beliefs/believe.hpp"

#include <algorithm>
#include <utility>

#include "belief/colony_fit.hpp"
#include "belief/doubts.hpp"
#include "belief/events.hpp"
#include "garth/ledgers/homes.hpp"
#include "garth/ledgers/stays.hpp"
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
  std::vector<Stay> stays;
};

// All that live at an open site.
std::vector<Task> tasks_of(const Session& session) {
  std::vector<Task> tasks;
  auto stays = stays_in(session.standing);
  for (const auto& [id, colony] : session.state.colonies) {
    if (colony.ended) continue;
    const SiteId site = site_of_colony(session.state, colony);
    if (session.state.sites.contains(site)) tasks.push_back({id, &colony, site, std::move(stays[id])});
  }
  return tasks;
}

Expected<Task> task_of(const Session& session, const Skies& skies, const ColonyId& id) {
  const auto colony = session.state.colonies.find(id);
  const SiteId site =
      colony == session.state.colonies.end() ? SiteId{} : site_of_colony(session.state, colony->second);
  if (!skies.contains(site)) {
    const Homeless why = why_homeless(session, id);
    return bad_input("the colony stands in no hive at an open site" + why.because(), id.text(), why.remedy);
  }
  return Task{id, &colony->second, site, stays_in(session.standing)[id]};
}

belief::History history_of(const Session& session, const Task& task) {
  const book::ColonyState& colony = *task.state;
  belief::History history{.colony = task.colony, .began = followed_from(colony, session.today)};
  Homes homes = homes_of(session.standing, task.colony, history.began);
  history.dwelling = homes.first;
  history.rehoused = std::move(homes.later);
  for (const auto& entry : colony.history) {
    const auto* split = std::get_if<entries::Split>(&entry.payload);
    if (split && split->into == task.colony) history.from_split = true;
    if (entry.happened >= history.began) history.entries.push_back(entry);
  }
  for (const Stay& stay : task.stays) {
    if (&stay != &task.stays.front() && stay.from >= history.began)
      history.moves.push_back({stay.from, stay.km});
  }
  if (const auto* began = std::get_if<entries::ColonyBegan>(&colony.history.front().payload); began) {
    history.from_split = history.from_split || began->how == entries::Beginning::split ||
                         began->how == entries::Beginning::swarm;
  }
  return history;
}

// The weather and forage of the sites, by site.
using Paths = std::map<SiteId, std::vector<facts::ForcingPath>>;

// Where the colony stood on a day; its site of today where that site is closed by now and its sky unknown.
SiteId stood_at(const Task& task, Date day, const Paths& paths) {
  SiteId site = task.site;
  for (const Stay& stay : task.stays) {
    if (stay.from <= day) site = stay.site;
  }
  return paths.contains(site) ? site : task.site;
}

// The part of the forcing before today is one path (days never seen are drawn once); from today on it forks.
belief::Forcing forcing_of(const Paths& paths, const Task& task, Date began, Date today) {
  belief::Forcing forcing;
  for (Date day = began; day < today; day = day + 1) {
    const facts::ForcingPath& path = paths.at(stood_at(task, day, paths)).front();
    forcing.past.push_back(path[static_cast<std::size_t>(day - path.front().date)]);
  }
  for (const auto& path : paths.at(task.site)) {
    const auto from =
        std::find_if(path.begin(), path.end(), [&](const auto& day) { return day.date >= today; });
    forcing.futures.emplace_back(from, path.end());
  }
  return forcing;
}

// Colonies fitted to their entries, each having heard those it shares a site or the keeper with.
class Fits {
 public:
  Fits(const Session& session, const Skies& skies, Date horizon, bool explain, bool doubt)
      : session_(session),
        skies_(skies),
        tables_{session.tables["colony"], session.tables["observation"]},
        horizon_(horizon),
        explain_(explain),
        doubt_(doubt) {}

  // Of the wanted ones, and of others as far as these have something to teach (belief/shared.hpp).
  Outcome fit(const std::vector<Task>& wanted) {
    const auto prior = belief::shared_prior(tables_.observation);
    if (!prior) return prior.problem();
    const std::vector<Task> tasks = asked_for(wanted);
    for (const Task& task : tasks) {
      take_path(task.site);
      for (const Stay& stay : task.stays) take_path(stay.site);
    }
    std::vector<std::optional<Expected<belief::FitHandle>>> answers(tasks.size());
    each(tasks.size(), [&](std::size_t i) { answers[i] = fit_one(tasks[i]); });
    std::vector<belief::FitHandle> fits;
    std::vector<belief::Witness> witnesses;
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      if (!*answers[i]) return answers[i]->problem();
      fits.push_back(**std::move(answers[i]));
      witnesses.push_back(belief::witness_of(*fits.back(), tasks[i].site));
    }
    std::vector<belief::Neighbours> neighbours =
        belief::listen(witnesses, *prior, [this](std::size_t count, const auto& task) { each(count, task); });
    each(wanted.size(), [&](std::size_t i) { belief::hear(*fits[i], std::move(neighbours[i])); });
    if (doubt_) {
      if (auto doubted = doubt(tasks, fits); !doubted) return doubted;
    }
    for (std::size_t i = 0; i < wanted.size(); ++i) fits_.emplace(wanted[i].colony, std::move(fits[i]));
    return Done{};
  }

  const belief::ColonyFit& of(const ColonyId& colony) const { return *fits_.at(colony); }
  const std::vector<DoubtedLook>& doubted() const { return doubted_; }
  const belief::Tables& tables() const { return tables_; }
  belief::Forcing forcing(const Task& task) const {
    return forcing_of(paths_, task, followed_from(*task.state, session_.today), session_.today);
  }
  belief::Options options(const Task& task, Date horizon) const {
    return {.members = session_.members,
            .seed = session_.seed,
            .today = session_.today,
            .horizon = horizon,
            .latitude_deg = skies_.at(task.site).place.latitude_deg,
            .explain = explain_};
  }

 private:
  template <class Each>
  void each(std::size_t count, const Each& task) const {
    for_each_index(count, session_.threads, task);
  }

  void take_path(const SiteId& site) {
    const auto sky = skies_.find(site);
    if (sky != skies_.end() && !paths_.contains(site)) {
      paths_.emplace(site, forcing_at(session_, site, sky->second));
    }
  }

  // Looks that were likelier written wrongly than true are told as remarks.
  Outcome doubt(const std::vector<Task>& tasks, const std::vector<belief::FitHandle>& fits) {
    const auto slips = belief::read_slip_odds(tables_.observation);
    if (!slips) return slips.problem();
    std::vector<belief::Standing> standing;
    for (std::size_t i = 0; i < tasks.size(); ++i) standing.push_back({fits[i].get(), tasks[i].site});
    const auto doubts = belief::doubts_about(
        standing, *slips, [this](std::size_t count, const auto& task) { each(count, task); });
    for (std::size_t i = 0; i < tasks.size(); ++i) {
      for (const belief::Doubt& one : doubts[i]) {
        const std::string other =
            one.other ? session_.state.colonies.at(*one.other).began.name : std::string();
        doubted_.push_back({tasks[i].colony, belief::told(one, *fits[i], other)});
        fits[i]->remarks.push_back(doubted_.back().reason);
      }
    }
    return Done{};
  }

  // The wanted ones come first.
  std::vector<Task> asked_for(const std::vector<Task>& wanted) const {
    const std::vector<Task> all = tasks_of(session_);
    std::vector<belief::Pupil> pupils;
    for (const Task& task : all) {
      if (skies_.contains(task.site)) pupils.push_back({task.colony, task.site, entries_of(task)});
    }
    std::vector<ColonyId> names;
    names.reserve(wanted.size());
    for (const Task& task : wanted) names.push_back(task.colony);
    const std::vector<ColonyId> fitted = belief::to_be_fitted(pupils, names);
    std::vector<Task> tasks = wanted;
    for (const Task& task : all) {
      const bool is_wanted = std::find(names.begin(), names.end(), task.colony) != names.end();
      if (!is_wanted && std::binary_search(fitted.begin(), fitted.end(), task.colony)) tasks.push_back(task);
    }
    return tasks;
  }
  std::size_t entries_of(const Task& task) const {
    const Date from = followed_from(*task.state, session_.today);
    const auto& history = task.state->history;
    return static_cast<std::size_t>(std::count_if(
        history.begin(), history.end(), [&](const entries::Entry& entry) { return entry.happened >= from; }));
  }

  Expected<belief::FitHandle> fit_one(const Task& task) const {
    return belief::fit_colony(history_of(session_, task), forcing(task), tables_, options(task, horizon_));
  }

  const Session& session_;
  const Skies& skies_;
  belief::Tables tables_;
  Date horizon_;
  bool explain_, doubt_;
  Paths paths_;
  std::map<ColonyId, belief::FitHandle> fits_;
  std::vector<DoubtedLook> doubted_;
};

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

Homeless why_homeless(const Session& session, const ColonyId& id) {
  Homeless why{{}, "enter its hive and site, or that it was moved or ended"};
  const auto colony = session.state.colonies.find(id);
  const auto all = session.book.entries();
  if (colony == session.state.colonies.end() || !all) return why;
  const auto hive = session.state.hives.find(colony->second.hive);
  for (const auto& entry : book::standing_entries(*all, *Date::from_ymd(2999, 12, 31))) {
    if (entry.happened <= session.today) continue;
    const auto* later_hive = std::get_if<entries::Hive>(&entry.payload);
    const auto* later_site = std::get_if<entries::Site>(&entry.payload);
    const bool begins = hive == session.state.hives.end()
                            ? later_hive != nullptr && later_hive->hive == colony->second.hive
                            : later_site != nullptr && later_site->site == hive->second.site;
    if (!begins) continue;
    why.begins = (later_site != nullptr ? "its site '" + later_site->name : "its hive '" + later_hive->name) +
                 "' begins only on " + entry.happened.iso();
    why.remedy = "correct the day of that entry, or ask about a later day";
    break;
  }
  return why;
}

std::string Homeless::because() const {
  return begins.empty() ? std::string() : ": " + begins;
}

Date winter_end(Date today, double latitude_deg) {
  const bool south = latitude_deg < 0;
  const auto in_year = [&](int year) { return *Date::from_ymd(year, south ? 9 : 3, south ? 30 : 31); };
  return in_year(today.year()) > today ? in_year(today.year()) : in_year(today.year() + 1);
}

Date last_followed(Date today, double latitude_deg) {
  constexpr int winter_asked_from = 70;  // days before the end of the season
  const Date season = belief::end_of_winter_brood(today, latitude_deg);
  const Date last = season - today <= winter_asked_from ? winter_end(season, latitude_deg) : season;
  return std::max(today + 60, last);
}

Expected<Skies> skies_of(const Session& session, Date horizon) {
  std::map<SiteId, Date> first;
  for (const auto& [id, site] : session.state.sites) first.emplace(id, session.today);
  for (const Task& task : tasks_of(session)) {
    const Date from = followed_from(*task.state, session.today);
    const auto reach = [&](const SiteId& site, Date day) {
      const auto at = first.find(site);
      if (at != first.end()) at->second = std::min(at->second, std::max(day, from));
    };
    reach(task.site, from);
    for (const Stay& stay : task.stays) reach(stay.site, stay.from);
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
  std::vector<Task> tasks;
  if (options.only) {
    const auto task = task_of(session, skies, *options.only);
    if (!task) return task.problem();
    if (!task->state->ended) tasks.push_back(*task);
  } else {
    tasks = tasks_of(session);
  }
  Fits fits(session, skies, options.horizon, options.explain, options.explain && options.doubt);
  if (const auto fitted = fits.fit(tasks); !fitted) return fitted.problem();
  std::vector<std::optional<Expected<facts::Outlook>>> answers(tasks.size());
  for_each_index(tasks.size(), session.threads, [&](std::size_t i) {
    const Task& task = tasks[i];
    answers[i] = belief::outlook_of(fits.of(task.colony), fits.forcing(task), fits.tables(),
                                    fits.options(task, options.horizon));
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

Expected<std::vector<DoubtedLook>> doubted_looks(const Session& session, const Skies& skies) {
  Fits fits(session, skies, session.today, false, true);
  if (const auto fitted = fits.fit(tasks_of(session)); !fitted) return fitted.problem();
  return fits.doubted();
}

Expected<std::vector<belief::Forecast>> forecasts_of(const Session& session, const Skies& skies,
                                                     const std::vector<ForecastWish>& wishes) {
  std::vector<Task> tasks;
  std::vector<Date> horizons;
  for (const ForecastWish& wish : wishes) {
    const auto task = task_of(session, skies, wish.colony);
    if (!task) return task.problem();
    tasks.push_back(*task);
    horizons.push_back(session.today);
    for (const auto& look : wish.looks) horizons.back() = std::max(horizons.back(), look.date);
  }
  Fits fits(session, skies, session.today, false, false);
  if (const auto fitted = fits.fit(tasks); !fitted) return fitted.problem();
  std::vector<std::optional<Expected<belief::Forecast>>> answers(tasks.size());
  for_each_index(tasks.size(), session.threads, [&](std::size_t i) {
    const Task& task = tasks[i];
    answers[i] = belief::forecast_of(fits.of(task.colony), fits.forcing(task),
                                     fits.options(task, horizons[i]), wishes[i].looks);
  });
  std::vector<belief::Forecast> forecasts;
  for (auto& answer : answers) {
    if (!*answer) return answer->problem();
    forecasts.push_back(**std::move(answer));
  }
  return forecasts;
}

Expected<Followed> supposed_of(const Session& session, const Skies& skies, const ColonyId& colony, Date until,
                               std::vector<belief::Way> ways) {
  const auto task = task_of(session, skies, colony);
  if (!task) return task.problem();
  Fits fits(session, skies, until, false, false);
  if (const auto fitted = fits.fit({*task}); !fitted) return fitted.problem();
  Followed followed;
  for (;;) {  // what cannot be followed is found before anything is
    auto supposed = belief::supposed_of(fits.of(colony), fits.forcing(*task), fits.tables(),
                                        fits.options(*task, until), ways);
    if (supposed) {
      followed.supposed = *std::move(supposed);
      followed.ways = std::move(ways);
      return followed;
    }
    const auto one = std::find_if(ways.begin(), ways.end(), [&](const belief::Way& way) {
      return way.name == supposed.problem().where;
    });
    if (one == ways.end()) return supposed.problem();
    followed.not_followed.push_back({one->name, supposed.problem()});
    ways.erase(one);
  }
}

}  // namespace beegarth::garth
