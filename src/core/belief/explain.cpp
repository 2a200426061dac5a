#include "belief/explain.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>

#include "belief/event_odds.hpp"
#include "belief/events.hpp"
#include "belief/kin.hpp"
#include "belief/pareto.hpp"
#include "belief/settle.hpp"
#include "belief/smc.hpp"
#include "entries/fields.hpp"

namespace beegarth::belief {
namespace {

namespace e = entries;

std::string number(double x) {
  std::array<char, 32> text{};
  std::snprintf(text.data(), text.size(), "%.4g", x);
  return text.data();
}

std::string percent(double odds) {
  if (odds < 0.005) return "under 1 %";
  if (odds > 0.995) return "over 99 %";
  return number(std::round(100 * odds)) + " %";
}

// Lists what was said, "9 seams, 5 charged cells".
class Sayings {
 public:
  template <class Number>
  void add(const std::optional<Number>& value, const char* one, const char* several) {
    if (value) join(number(*value) + " " + (*value == Number{1} ? one : several));
  }
  void add(const std::optional<bool>& flag, const char* words) {
    if (flag) join((*flag ? "" : "no ") + std::string(words));
  }
  void join(const std::string& part) { text_ += (text_.empty() ? "" : ", ") + part; }
  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

std::string contents(const e::Inspection& p) {
  Sayings said;
  said.add(p.seams, "seam", "seams");
  said.add(p.bees, "bee", "bees");
  said.add(p.brood_combs, "comb with brood", "combs with brood");
  said.add(p.capped_cells, "capped cell", "capped cells");
  said.add(p.eggs, "eggs");
  said.add(p.open_brood, "open brood");
  said.add(p.capped_brood, "capped brood");
  said.add(p.queen, "queen seen");
  said.add(p.cups_with_egg, "cup with egg", "cups with egg");
  said.add(p.charged_cells, "charged cell", "charged cells");
  said.add(p.sealed_cells, "sealed cell", "sealed cells");
  said.add(p.store_combs, "comb of stores", "combs of stores");
  said.add(p.stores_kg, "kg of stores", "kg of stores");
  return said.text();
}

std::string contents(const e::MiteCount& p) {
  std::string text = (p.at_least.value_or(false) ? "at least " : "") + number(p.mites) + " mites";
  switch (p.method) {
    case e::MiteMethod::board:
      return text + " on the board in " + number(p.days.value_or(1)) + " days";
    case e::MiteMethod::sugar_roll:
    case e::MiteMethod::wash:
      return text + " on " + number(p.bees.value_or(300)) + " bees";
    case e::MiteMethod::brood:
      return text + " in " + number(p.cells.value_or(100)) + " cells";
  }
  return text;
}

std::string contents_of(const e::Payload& payload) {
  if (const auto* look = std::get_if<e::Inspection>(&payload)) return contents(*look);
  if (const auto* count = std::get_if<e::MiteCount>(&payload)) return contents(*count);
  if (const auto* weight = std::get_if<e::Weight>(&payload)) {
    return number(weight->kg) + (weight->what == e::Weighed::stores ? " kg of stores" : " kg, whole hive");
  }
  if (const auto* queen = std::get_if<e::Queen>(&payload)) return std::string(e::word_for(queen->event));
  if (const auto* ended = std::get_if<e::ColonyEnded>(&payload)) return std::string(e::word_for(ended->how));
  return {};
}

// Rows of the table of observations that a kind of sight is judged by.
std::vector<const char*> rows_behind(const Sight& sight) {
  if (const auto* look = std::get_if<e::Inspection>(&sight)) {
    std::vector<const char*> rows;
    if (look->seams) rows.push_back("seams_error");
    if (look->bees) rows.push_back("bees_error");
    if (look->brood_combs) rows.push_back("brood_combs_error");
    if (look->capped_cells) rows.push_back("capped_cells_error");
    if (look->eggs) rows.push_back("eggs_seen");
    if (look->queen) rows.push_back("queen_seen");
    if (look->charged_cells || look->sealed_cells || look->cups_with_egg) rows.push_back("cell_seen");
    if (look->stores_kg || look->store_combs) rows.push_back("stores_error");
    return rows;
  }
  if (const auto* count = std::get_if<e::MiteCount>(&sight)) {
    switch (count->method) {
      case e::MiteMethod::board:
        return {"board_size", "board_factor"};
      case e::MiteMethod::sugar_roll:
        return {"sample_size", "roll_recovery"};
      case e::MiteMethod::wash:
        return {"sample_size", "wash_recovery"};
      case e::MiteMethod::brood:
        return {"brood_sample_correlation"};
    }
  }
  if (std::holds_alternative<e::Weight>(sight)) return {"scale_error", "tare_kg"};
  return {};
}

// What an event rests on apart from entries.
struct Ground {
  const char* text;
  std::vector<const char*> colony_rows;
  std::vector<const char*> observation_rows;
};
Ground ground_of(facts::EventKind kind) {
  using facts::EventKind;
  switch (kind) {
    case EventKind::out_of_room:
      return {"how fast a queen fills the comb", {"laying_max"}, {"room_short_share"}};
    case EventKind::swarm_preparation:
      return {"how readily colonies of this size and crowding raise queens",
              {"swarming", "swarm_rate_per_day"},
              {}};
    case EventKind::stores_short:
      return {
          "what comes in and what is eaten", {"collecting", "adult_honey_g_per_day"}, {"stores_short_kg"}};
    case EventKind::queen_trouble:
      return {"how often queens fail and how often mating succeeds",
              {"queen_fails_per_day", "mating_return_odds"},
              {"queenless_days"}};
    case EventKind::supers_full:
      return {"what comes in, and how it is stored above the nest",
              {"collecting", "nest_stores_kg", "ripening_per_day"},
              {"supers_full_free_kg"}};
    case EventKind::surplus:
      return {
          "what comes in, and what is kept by the brood", {"collecting", "nest_stores_kg"}, {"surplus_kg"}};
    case EventKind::small_for_winter:
      return {"how many winter bees are reared, and how long they live",
              {"season_end", "winter_turn_light_h", "winter_loss"},
              {"winter_bees_least"}};
    case EventKind::winter_mites:
      break;
  }
  return {"how fast mites multiply", {"mite_reproduction", "mite_invasion"}, {"winter_brood_infested"}};
}

std::string cited(const FactTable& table, const char* key) {
  const FactRow* row = table.find(key);
  return row == nullptr ? std::string() : std::string(key) + ": " + row->source;
}

void cite(std::vector<std::string>& sources, const FactTable& table, std::span<const char* const> keys) {
  for (const char* key : keys) {
    const std::string text = cited(table, key);
    if (!text.empty()) sources.push_back(text);
  }
}

using ByEvent = std::array<double, event_count>;

// 1 for the members in which an event comes by the day that is asked about, else 0. That day is a week ahead,
// when the next look is due; later most odds rise whatever was seen. What is decided in autumn: then.
using Happened = std::array<std::vector<double>, event_count>;
Happened happened_in(const Setting& setting, const Projected& projected) {
  constexpr int week = 7;
  const int soon = std::min(setting.today + week, projected.horizon);
  Happened happened;
  for (std::size_t event = 0; event < event_count; ++event) {
    const int day = decided_in_autumn(event) ? projected.last : soon;
    for (const int first : projected.trace.first_day[event])
      happened[event].push_back(first <= day ? 1.0 : 0.0);
  }
  return happened;
}

double odds_of(std::span<const double> happened, std::span<const double> weights) {
  double sum = 0;
  for (std::size_t i = 0; i < weights.size(); ++i) sum += weights[i] * happened[i];
  return std::min(1.0, sum);
}

struct With {
  Happened happened;
  ByEvent odds;
  ByEvent error;    // standard error, kin counted as kin
  double families;  // how many the crowd has
};
With with_all(const Setting& setting, const Fitted& fitted, const Projected& projected) {
  With with{
      happened_in(setting, projected), {}, {}, effective_families(fitted.weights, fitted.members.family)};
  for (std::size_t event = 0; event < event_count; ++event) {
    with.odds[event] = odds_of(with.happened[event], fitted.weights);
    with.error[event] = share_error(fitted.weights, with.happened[event], fitted.members.family);
  }
  return with;
}

struct Without {
  std::size_t observation;
  ByEvent odds;
  ByEvent error;         // standard error of the change of the odds
  double beyond_chance;  // so many errors
  double shape;
  bool refitted = false;
};

std::vector<Without> reweighted(const Setting& setting, const Fitted& fitted, const With& with) {
  std::vector<Without> all;
  for (const Group& group : setting.groups) {
    for (std::size_t o = group.first; o < group.last; ++o) {
      std::vector<double> ratios(fitted.weights.size());
      for (std::size_t i = 0; i < ratios.size(); ++i) {
        ratios[i] = std::log(std::max(fitted.weights[i], 1e-300)) - fitted.members.log_seen[o][i];
      }
      const SmoothedWeights smoothed = pareto_smoothed(ratios);
      Without one{o, {}, {}, errors_beyond_chance(with.families), smoothed.shape};
      for (std::size_t event = 0; event < event_count; ++event) {
        one.odds[event] = odds_of(with.happened[event], smoothed.weights);
        one.error[event] =
            change_error(fitted.weights, smoothed.weights, with.happened[event], fitted.members.family);
      }
      all.push_back(one);
    }
  }
  return all;
}

// Members that were fitted to a decisive look all agree with it, so that no weights bring back what it ruled
// out. For the newest morning, which matters most to what comes next, the crowd is therefore taken as it
// stood before it and fitted to the rest of that morning alone.
void refit_newest(std::vector<Without>& all, const ColonyFit& fit, const Forcing& forcing, Date horizon,
                  const With& with) {
  const Setting& setting = *fit.setting;
  constexpr std::size_t most_refits = 2;  // a morning holds one look, and often a count of mites beside it
  if (setting.groups.empty()) return;
  const Group& newest = setting.groups.back();
  for (std::size_t k = 0; k < std::min(newest.last - newest.first, most_refits); ++k) {
    Without& one = all[all.size() - 1 - k];
    Setting other = setting;
    other.without = one.observation;
    Fitted again = fit_without_newest(other, fit.fitted.before_newest);
    if (!fit.neighbours.silent())
      settle(again, other, fit.neighbours);  // they say the same, whatever this colony shows
    const With rest = with_all(other, again, project(other, again, forcing, horizon, Keep::first_days));
    one.odds = rest.odds;
    one.beyond_chance = errors_beyond_chance(with.families + rest.families - 1);
    for (std::size_t event = 0; event < event_count; ++event)
      one.error[event] = std::hypot(rest.error[event], with.error[event]);
    one.refitted = true;
  }
}

// How far an entry moved the odds. A change that such a crowd could show by chance counts nothing (three
// standard errors, because some forty changes are asked about), nor does one by weights whose mean does not
// exist (k above 1); weights that are not to be trusted (k above 0.7) count half.
double moved(const Without& without, std::size_t event, double with) {
  const double change = std::abs(without.odds[event] - with);
  if (change < without.beyond_chance * without.error[event]) return 0;
  if (!without.refitted && without.shape > 1) return 0;
  return !without.refitted && without.shape > 0.7 ? 0.5 * change : change;
}

std::string sentence(const Without& without, std::size_t event, double with, const e::Entry& entry) {
  const bool rough = !without.refitted && without.shape > 0.7;  // k: Vehtari et al. 2024
  return describe(entry) + (decided_in_autumn(event) ? ": odds by autumn " : ": odds within a week ") +
         percent(with) + " with it, " + (rough ? "about " : "") + percent(without.odds[event]) + " without";
}

std::string spoken_kind(const e::Entry& entry) {
  std::string kind(e::kind_name(entry.payload));
  std::replace(kind.begin(), kind.end(), '_', ' ');
  return kind;
}

}  // namespace

std::string describe(const e::Entry& entry) {
  const std::string kind = spoken_kind(entry);
  const std::string said = contents_of(entry.payload);
  return kind + " of " + entry.happened.iso() + (said.empty() ? "" : " (" + said + ")");
}

std::vector<std::vector<facts::Reason>> why_of_events(const ColonyFit& fit, const Projected& projected,
                                                      const Forcing& forcing, Date horizon,
                                                      const Tables& tables) {
  const Setting& setting = *fit.setting;
  const Fitted& fitted = fit.fitted;
  constexpr std::size_t most_reasons = 4;
  constexpr double worth_saying = 0.02;  // two percentage points
  const With with = with_all(setting, fitted, projected);
  std::vector<Without> all = reweighted(setting, fitted, with);
  refit_newest(all, fit, forcing, horizon, with);
  std::vector<std::vector<facts::Reason>> reasons(event_count);
  for (std::size_t event = 0; event < event_count; ++event) {
    std::vector<const Without*> order;
    order.reserve(all.size());
    for (const Without& one : all) order.push_back(&one);
    std::stable_sort(order.begin(), order.end(), [&](const Without* a, const Without* b) {
      return moved(*a, event, with.odds[event]) > moved(*b, event, with.odds[event]);
    });
    for (const Without* one : order) {
      if (reasons[event].size() == most_reasons || moved(*one, event, with.odds[event]) < worth_saying) break;
      const Observation& seen = setting.timeline.observations[one->observation];
      const e::Entry& entry = setting.timeline.entries[seen.entry];
      facts::Reason reason{sentence(*one, event, with.odds[event], entry), {entry.id}, {}};
      reason.moved = facts::Moved{spoken_kind(entry), entry.happened};
      cite(reason.sources, tables.observation, rows_behind(seen.sight));
      reasons[event].push_back(std::move(reason));
    }
    const Ground ground = ground_of(event_kinds[event]);
    facts::Reason assumed{std::string("taken from tables, not from entries: ") + ground.text, {}, {}};
    assumed.assumed = true;
    cite(assumed.sources, tables.colony, ground.colony_rows);
    cite(assumed.sources, tables.observation, ground.observation_rows);
    reasons[event].push_back(std::move(assumed));
  }
  return reasons;
}

}  // namespace beegarth::belief
