#include "belief/members.hpp"

#include <algorithm>
#include <numeric>

namespace beegarth::belief {
namespace {

using colony::Quantity;

// What of the states the observations ask for, read for all members at once.
struct Sightings {
  std::vector<float> alive, bees, drones, eggs, larvae, drone_eggs, drone_larvae, capped, brood, drone_brood,
      drone_cells, stores, pollen, supers, laying, drone_laying, queen, cups, charged, sealed, mites,
      mites_on_bees, infested;

  explicit Sightings(const colony::Ensemble& e)
      : alive(e.read(Quantity::alive)),
        bees(e.read(Quantity::bees)),
        drones(e.read(Quantity::drones)),
        eggs(e.read(Quantity::eggs)),
        larvae(e.read(Quantity::open_brood)),
        drone_eggs(e.read(Quantity::drone_eggs)),
        drone_larvae(e.read(Quantity::open_drone_brood)),
        capped(e.read(Quantity::capped_cells)),
        brood(e.read(Quantity::brood_cells)),
        drone_brood(e.read(Quantity::drone_brood)),
        drone_cells(e.read(Quantity::capped_drone_cells)),
        stores(e.read(Quantity::stores_kg)),
        pollen(e.read(Quantity::pollen_kg)),
        supers(e.read(Quantity::super_kg)),
        laying(e.read(Quantity::queen_laying)),
        drone_laying(e.read(Quantity::drone_laying)),
        queen(e.read(Quantity::queen_present)),
        cups(e.read(Quantity::cups_with_egg)),
        charged(e.read(Quantity::charged_cells)),
        sealed(e.read(Quantity::sealed_cells)),
        mites(e.read(Quantity::mites)),
        mites_on_bees(e.read(Quantity::mites_on_bees)),
        infested(e.read(Quantity::infested_share)) {}

  Visible of(std::size_t i, const facts::Dwelling& dwelling) const {
    Visible v;
    v.alive = alive[i] > 0.5F;
    v.bees = bees[i];
    v.drones = drones[i];
    v.eggs = eggs[i] + drone_eggs[i];
    v.larvae = larvae[i] + drone_larvae[i];
    v.capped_cells = capped[i];
    v.brood_cells = brood[i] + drone_brood[i];
    v.drone_cells = drone_cells[i];
    v.stores_kg = stores[i];
    v.pollen_kg = pollen[i];
    v.super_kg = supers[i];
    v.laying_queen = laying[i] > 0.5F;
    v.drone_layer = drone_laying[i] > 0.5F;
    v.virgin_queen = !v.laying_queen && !v.drone_layer && queen[i] > 0.5F;
    v.cups_with_egg = cups[i];
    v.charged_cells = charged[i];
    v.sealed_cells = sealed[i];
    v.mites = mites[i];
    v.mites_on_adults = mites_on_bees[i];
    v.infested_share = infested[i];
    v.dwelling = dwelling;
    return v;
  }
};

const entries::MiteCount* board_of(const Observation& seen) {
  const auto* count = std::get_if<entries::MiteCount>(&seen.sight);
  return count != nullptr && count->method == entries::MiteMethod::board ? count : nullptr;
}

void judge(Members& members, const Setting& setting, const Group& group) {
  const auto n = static_cast<std::size_t>(setting.members);
  const std::vector<Visible> there = all_visible(members.ensemble);
  std::vector<ObserverTraits> observers;
  observers.reserve(n);
  for (std::size_t i = 0; i < n; ++i) observers.push_back(observer_of(members, setting, static_cast<int>(i)));
  for (std::size_t o = group.first; o < group.last; ++o) {
    const Observation& seen = setting.timeline.observations[o];
    auto& logs = members.log_seen[o];
    logs.assign(n, 0.0);
    if (setting.is_left_out(o)) continue;
    // A board that lay longer than the colony was followed: as if it had fallen at the same pace before.
    double scale = 1;
    if (const auto* board = board_of(seen)) {
      const int days = std::min(board_days(*board), group.day);
      if (days == 0) continue;  // nothing is known of the days before the start
      scale = static_cast<double>(board_days(*board)) / days;
    }
    for (std::size_t i = 0; i < n; ++i) {
      const bool ready = there[i].charged_cells + there[i].sealed_cells >= 0.5;
      logs[i] = log_likelihood(seen.sight, there[i], members.fallen[o][i] * scale, ready, observers[i],
                               setting.errors);
    }
  }
}

void collect_boards(Members& members, const Setting& setting, int day) {
  std::vector<float> fall;
  for (const Group& group : setting.groups) {
    if (group.day <= day) continue;
    for (std::size_t o = group.first; o < group.last; ++o) {
      const auto* board = board_of(setting.timeline.observations[o]);
      if (board == nullptr || day < group.day - board_days(*board)) continue;
      if (fall.empty()) fall = members.ensemble.read(Quantity::mite_fall_per_day);
      for (std::size_t i = 0; i < fall.size(); ++i) members.fallen[o][i] += fall[i];
    }
  }
}

std::vector<Group> groups_of(const Timeline& timeline, int today) {
  std::vector<Group> groups;
  for (std::size_t o = 0; o < timeline.observations.size(); ++o) {
    const int day = timeline.observations[o].date - timeline.began;
    if (day > today) break;
    if (groups.empty() || groups.back().day != day) groups.push_back({day, o, o});
    groups.back().last = o + 1;
  }
  return groups;
}

// Luck changes at every look and at least every third day, so that a part of it can be drawn anew.
std::vector<int> pieces_of(const std::vector<Group>& groups, int today) {
  constexpr int longest = 3;  // days: luck lasts for weeks, so this moves it a little
  std::vector<int> cuts{0};
  for (const Group& group : groups) cuts.push_back(group.day);
  cuts.push_back(today);
  std::sort(cuts.begin(), cuts.end());
  cuts.erase(std::unique(cuts.begin(), cuts.end()), cuts.end());
  std::vector<int> starts;
  for (std::size_t i = 0; i < cuts.size(); ++i) {
    starts.push_back(cuts[i]);
    if (i + 1 == cuts.size()) break;
    for (int cut = cuts[i] + longest; cut < cuts[i + 1]; cut += longest) starts.push_back(cut);
  }
  return starts;
}

}  // namespace

std::vector<Visible> all_visible(const colony::Ensemble& ensemble) {
  const Sightings sightings(ensemble);
  std::vector<Visible> there;
  there.reserve(static_cast<std::size_t>(ensemble.members()));
  for (std::size_t i = 0; i < static_cast<std::size_t>(ensemble.members()); ++i)
    there.push_back(sightings.of(i, ensemble.dwelling()));
  return there;
}

bool Setting::is_left_out(std::size_t observation) const {
  return without == observation || std::find(left_out.begin(), left_out.end(), observation) != left_out.end();
}

std::size_t Setting::piece_of(int day) const {
  const auto next = std::upper_bound(piece_starts.begin(), piece_starts.end(), day);
  return static_cast<std::size_t>(next - piece_starts.begin()) - 1;
}

Expected<Setting> make_setting(const History& history, const Forcing& forcing, const Timeline& timeline,
                               const Tables& tables, const Options& options) {
  auto model = colony::Model::from(tables.colony);
  if (!model) return model.problem();
  auto start = start_prior(tables.observation, timeline, history.from_split, options.latitude_deg);
  if (!start) return start.problem();
  auto observer = read_observer_prior(tables.observation);
  if (!observer) return observer.problem();
  auto errors = read_errors(tables.observation);
  if (!errors) return errors.problem();
  auto figures = read_deed_figures(tables.observation);
  if (!figures) return figures.problem();
  Setting setting{timeline, forcing.past,     std::move(*model),   *start, std::move(*observer), *errors,
                  *figures, history.dwelling, options.latitude_deg};
  setting.seed = options.seed;
  setting.colony = stable_hash(history.colony.text());
  setting.members = options.members;
  setting.sweeps = options.sweeps;
  setting.today = options.today - history.began;
  setting.groups = groups_of(timeline, setting.today);
  setting.piece_starts = pieces_of(setting.groups, setting.today);
  return setting;
}

const facts::Dwelling& dwelling_on(const Setting& setting, Date date) {
  const facts::Dwelling* at = &setting.dwelling;
  for (const Rehoused& home : setting.timeline.rehoused) {
    if (home.date <= date) at = &home.dwelling;
  }
  return *at;
}

std::vector<colony::Action> actions_on(const Setting& setting, int day, const facts::Dwelling& dwelling) {
  std::vector<colony::Action> actions;
  for (const Rehoused& home : setting.timeline.rehoused) {
    if (home.date - setting.timeline.began != day) continue;
    actions.emplace_back(colony::Rehouse{home.dwelling, home.other_combs});
  }
  for (const Deed& deed : setting.timeline.deeds) {
    if (deed.day != day) continue;
    const auto more =
        actions_of(setting.timeline.entries[deed.entry].payload, setting.figures, setting.model, dwelling);
    actions.insert(actions.end(), more.begin(), more.end());
  }
  for (const Move& move : setting.timeline.moves) {
    if (move.date - setting.timeline.began != day) continue;
    actions.emplace_back(colony::MovedSite{setting.figures.strays_after(move.km)});
  }
  if (setting.timeline.ended && *setting.timeline.ended - setting.timeline.began == day) {
    actions.emplace_back(colony::Kill{});
  }
  return actions;
}

ObserverTraits observer_of(const Members& members, const Setting& setting, int member) {
  return observer_traits(setting.observer, members.at(member).data() + colony::trait_count + start_dims);
}

Members set_back(const Setting& setting, std::vector<double> coordinates,
                 std::vector<std::vector<std::uint32_t>> luck) {
  Members members;
  members.coordinates = std::move(coordinates);
  members.luck = std::move(luck);
  const auto n = static_cast<std::size_t>(setting.members);
  members.family.resize(n);
  std::iota(members.family.begin(), members.family.end(), 0);
  std::vector<colony::Start> starts(n);
  std::vector<colony::Traits> traits(n);
  for (std::size_t i = 0; i < n; ++i) {
    const auto at = members.at(static_cast<int>(i));
    for (std::size_t t = 0; t < colony::trait_count; ++t) traits[i].z[t] = static_cast<float>(at[t]);
    Stream queen({.seed = setting.seed,
                  .colony = setting.colony,
                  .member = members.luck[0][i],
                  .day = 0,
                  .purpose = Purpose::observation});
    starts[i] = start_at(setting.start, at.data() + colony::trait_count, queen.uniform());
  }
  members.ensemble = colony::make_ensemble(setting.model, setting.dwelling, setting.timeline.began - 1,
                                           setting.members, starts, traits);
  members.log_seen.resize(setting.timeline.observations.size());
  members.fallen.assign(setting.timeline.observations.size(), std::vector<double>(n, 0.0));
  return members;
}

Members before_seeing(const Setting& setting) {
  const auto n = static_cast<std::size_t>(setting.members);
  std::vector<double> coordinates(n * dims);
  std::vector<std::vector<std::uint32_t>> luck(setting.piece_starts.size(), std::vector<std::uint32_t>(n));
  for (std::size_t i = 0; i < n; ++i) {
    Stream prior({.seed = setting.seed, .colony = setting.colony, .member = static_cast<std::uint32_t>(i)});
    for (std::size_t d = 0; d < dims; ++d) coordinates[i * dims + d] = prior.normal();
    for (std::size_t piece = 0; piece < luck.size(); ++piece) {
      luck[piece][i] = static_cast<std::uint32_t>(piece * n + i);
    }
  }
  return set_back(setting, std::move(coordinates), std::move(luck));
}

void live_to(Members& members, const Setting& setting, int day, const OnMorning& on_morning) {
  const auto judge_morning = [&](int morning) {
    for (const Group& group : setting.groups) {
      if (group.day == morning && members.log_seen[group.first].empty()) judge(members, setting, group);
    }
  };
  judge_morning(members.day);
  const std::ptrdiff_t offset = setting.past.empty() ? 0 : setting.timeline.began - setting.past.front().date;
  for (; members.day < day; ++members.day) {
    if (on_morning) on_morning(members.day, members.ensemble);
    const auto& forcing = setting.past[static_cast<std::size_t>(offset + members.day)];
    const auto actions = actions_on(setting, members.day, members.ensemble.dwelling());
    const colony::NoiseKey noise{setting.seed, setting.colony, members.luck[setting.piece_of(members.day)]};
    colony::advance_day(members.ensemble, setting.model, forcing, actions, noise);
    collect_boards(members, setting, members.day);
    judge_morning(members.day + 1);
  }
}

std::vector<double> log_group(const Members& members, const Setting& setting, const Group& group) {
  std::vector<double> sum(static_cast<std::size_t>(setting.members), 0.0);
  for (std::size_t o = group.first; o < group.last; ++o) {
    for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += members.log_seen[o][i];
  }
  return sum;
}

}  // namespace beegarth::belief
