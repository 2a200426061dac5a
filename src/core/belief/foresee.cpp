#include <algorithm>
#include <cmath>
#include <set>

#include "belief/colony_fit.hpp"
#include "belief/doubts.hpp"
#include "belief/event_odds.hpp"
#include "belief/events.hpp"
#include "belief/explain.hpp"
#include "belief/kin.hpp"
#include "belief/project.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

std::vector<facts::EventOutlook> events_of(const Setting& setting, const Fitted& fitted,
                                           const Projected& projected, Date horizon) {
  const TraitShare traits(fitted.members.coordinates, dims, fitted.weights);
  const Date began = setting.timeline.began;
  std::vector<facts::EventOutlook> events;
  for (std::size_t event = 0; event < event_count; ++event) {
    facts::EventOutlook outlook;
    outlook.kind = event_kinds[event];
    const int last = decided_in_autumn(event) ? autumn_day(setting, projected.last) : horizon - began;
    outlook.definition = definition_of(outlook.kind, setting, began + last);
    const auto course = odds_by_day(projected.trace.first_day[event], {fitted.weights, fitted.members.family},
                                    setting.today, last, traits);
    for (std::size_t i = 0; i < course.size(); ++i) {
      outlook.course.push_back({began + setting.today + static_cast<int>(i), course[i]});
    }
    events.push_back(std::move(outlook));
  }
  return events;
}

// Whether anything stood above the nest, by what was told of hive and room.
bool boxes_on(const Setting& setting, Date day) {
  int combs = dwelling_on(setting, day).super_combs;
  for (const entries::Entry& entry : setting.timeline.entries) {
    const auto* room = std::get_if<entries::Room>(&entry.payload);
    if (room != nullptr && entry.happened < day) combs += room->super_combs.value_or(0);
  }
  return combs > 0;
}

std::vector<facts::SeenMark> marks_of(const Setting& setting) {
  std::vector<facts::SeenMark> marks;
  for (const Observation& seen : setting.timeline.observations) {
    const entries::Entry& entry = setting.timeline.entries[seen.entry];
    const auto mark = [&](const char* quantity, double value) {
      marks.push_back({seen.date, quantity, value, entry.id});
    };
    if (const auto* look = std::get_if<entries::Inspection>(&seen.sight)) {
      if (look->bees)
        mark("bees", *look->bees);
      else if (look->seams)
        mark("bees", *look->seams * dwelling_on(setting, seen.date).bees_per_seam);
      if (look->capped_cells) mark("capped_cells", *look->capped_cells);
      if (look->stores_kg)
        mark("stores_kg", *look->stores_kg);
      else if (look->store_combs && !look->super_share && !boxes_on(setting, seen.date))
        // with boxes on, the nest's combs are not all there is
        mark("stores_kg", *look->store_combs * dwelling_on(setting, seen.date).honey_kg_per_comb);
    } else if (const auto* count = std::get_if<entries::MiteCount>(&seen.sight)) {
      const bool on_bees =
          count->method == entries::MiteMethod::sugar_roll || count->method == entries::MiteMethod::wash;
      if (on_bees && !count->at_least.value_or(false))
        mark("mites_per_100_bees", 100.0 * count->mites / std::max(1, count->bees.value_or(300)));
    } else if (const auto* weight = std::get_if<entries::Weight>(&seen.sight)) {
      mark(weight->what == entries::Weighed::stores ? "stores_kg" : "weight_kg", weight->kg);
    }
  }
  return marks;
}

std::vector<facts::Learnt> learnt_of(const Fitted& fitted) {
  std::vector<std::string> names;
  for (const auto& trait : colony::all_traits()) names.emplace_back(trait.words);
  for (const char* name : start_names) names.emplace_back(name);
  for (const ObserverRow& row : observer_rows()) names.emplace_back(row.words);
  const std::size_t members = fitted.weights.size();
  std::vector<double> values(members);
  std::vector<facts::Learnt> learnt;
  constexpr double beyond =
      0.1 / dims;  // so that all intervals together hold in four cases of five (Bonferroni)
  for (int d = 0; d < dims; ++d) {
    for (std::size_t i = 0; i < members; ++i) {
      values[i] = fitted.members.coordinates[i * dims + static_cast<std::size_t>(d)];
    }
    const Spread spread = spread_of(fitted.weights, values, fitted.members.family, beyond);
    // The prior variance of every coordinate is 1.
    const auto known = [](double variance) { return std::clamp(1.0 - variance, 0.0, 1.0); };
    learnt.push_back({.parameter = names[static_cast<std::size_t>(d)],
                      .prior_sd = 1.0,
                      .posterior_sd = std::sqrt(spread.variance),
                      .contraction = known(spread.variance),
                      .contraction_low = known(spread.high),
                      .contraction_high = known(spread.low)});
  }
  return learnt;
}

const char* words_of(Surprise::Outcome outcome) {
  switch (outcome) {
    case Surprise::Outcome::let_in:
      return ": a surprise, hardly expected from everything before";
    case Surprise::Outcome::let_in_hard:
      return ": could hardly be reconciled with everything before, and pulls what is believed all the same; "
             "look again, or correct the entry";
    case Surprise::Outcome::left_out:
      return ": goes with no course of the colony, and is left out of what is believed; look again, or "
             "correct the entry";
  }
  return "";
}

void remark_surprises(std::vector<facts::Reason>& remarks, const Setting& setting, const Fitted& fitted) {
  for (const Surprise& surprise : fitted.surprises) {
    for (const std::size_t o : surprise.observations) {
      const entries::Entry& entry = setting.timeline.entries[setting.timeline.observations[o].entry];
      remarks.push_back({describe(entry) + words_of(surprise.outcome), {entry.id}, {}});
    }
  }
}

const entries::Entry* last_look_of(const Setting& setting) {
  const auto& looks = setting.timeline.entries;
  const auto last = std::find_if(looks.rbegin(), looks.rend(), [](const entries::Entry& entry) {
    return std::holds_alternative<entries::Inspection>(entry.payload);
  });
  return last == looks.rend() ? nullptr : &*last;
}

// A swarm nobody saw: the share of members in which one has left since the colony was last looked at.
double swarmed_unseen(const Setting& setting, const Fitted& fitted) {
  const entries::Entry* last_look = last_look_of(setting);
  if (last_look == nullptr) return 0;
  for (const entries::Entry& entry : setting.timeline.entries)  // that one was told
    if (std::holds_alternative<entries::Swarmed>(entry.payload) && entry.happened >= last_look->happened)
      return 0;
  double gone = 0;
  for (std::size_t i = 0; i < fitted.weights.size(); ++i) {
    const auto left = fitted.members.ensemble.first_day(colony::Event::swarm, static_cast<int>(i));
    if (left && *left >= last_look->happened) gone += fitted.weights[i];
  }
  return std::clamp(gone, 0.0, 1.0);
}

void remark_unseen_swarm(std::vector<facts::Reason>& remarks, const Setting& setting, double gone) {
  constexpr double worth_saying = 0.1;
  if (gone < worth_saying) return;
  const entries::Entry& last_look = *last_look_of(setting);
  remarks.push_back({"it may have swarmed unseen since the look of " + last_look.happened.iso() + ": " +
                         std::to_string(static_cast<int>(std::lround(100 * gone))) + " %",
                     {last_look.id},
                     {}});
}

std::vector<facts::Reason> remarks_of(const Setting& setting, const Fitted& fitted,
                                      const Projected& projected) {
  std::vector<facts::Reason> remarks = setting.timeline.remarks;
  remark_surprises(remarks, setting, fitted);
  remark_unseen_swarm(remarks, setting, swarmed_unseen(setting, fitted));
  const double ess = effective_sample_size(fitted.weights);
  if (ess < 0.1 * setting.members) {
    remarks.push_back({"only " + std::to_string(static_cast<int>(ess)) + " of " +
                           std::to_string(setting.members) + " members count: read the bands as rough",
                       {},
                       {}});
  }
  const double families = effective_families(fitted.weights, fitted.members.family);
  if (families < few_families && ess >= 0.1 * setting.members) {
    remarks.push_back(
        {"all members descend from about " + std::to_string(static_cast<int>(std::lround(families))) +
             " of those at the start, because little goes with what was seen: read odds and bands as "
             "rough, or ask with more members",
         {},
         {}});
  }
  if (setting.groups.empty()) {
    remarks.push_back(
        {"nothing was seen in the time that is followed: this is what is usual for the season", {}, {}});
  }
  if (projected.looped_from <= projected.last) {
    const Date from = setting.timeline.began + projected.looped_from;
    remarks.push_back({"weather and forage from " + from.iso() +
                           " on are those of the nearest known days of the year; "
                           "only odds that are decided in autumn go so far",
                       {},
                       {}});
  }
  return remarks;
}

std::string words_of_quantity(std::string_view quantity) {
  if (quantity == "stores_kg") return " kg of stores";
  if (quantity == "weight_kg") return " kg for the whole hive";
  if (quantity == "capped_cells") return " capped cells";
  if (quantity == "mites_per_100_bees") return " mites on 100 bees";
  return " " + std::string(quantity);
}

// A late sight far outside what is believed of its day was taken for a slip: the keeper must be told, because
// the slip may be the program's.
// What was wondered at or doubted already is not said again.
void remark_unbelieved(facts::Outlook& outlook, const std::set<EntryId>& told_already) {
  constexpr int lately_days = 21;
  constexpr double far = 2;  // times beyond the 90 % band, one unit of the quantity apart
  for (const facts::SeenMark& mark : outlook.seen) {
    if (outlook.today - mark.date > lately_days || told_already.contains(mark.entry)) continue;
    for (const facts::Fan& fan : outlook.fans) {
      if (fan.quantity != mark.quantity) continue;
      const auto at = std::find(fan.dates.begin(), fan.dates.end(), mark.date);
      if (at == fan.dates.end()) continue;
      const auto& levels = fan.levels[static_cast<std::size_t>(at - fan.dates.begin())];
      if (mark.value + 1 >= (levels.front() + 1) / far && mark.value + 1 <= (levels.back() + 1) * far)
        continue;
      const auto told = [&](double value) {
        const double tenth = std::round(value * 10) / 10;
        std::string text = std::to_string(tenth);
        const bool finely = value < 100 && tenth != std::round(tenth);
        text.erase(text.find('.') + (finely ? 2 : 0));
        return text;
      };
      outlook.remarks.push_back({told(mark.value) + words_of_quantity(mark.quantity) + " seen on " +
                                     mark.date.iso() + " was taken for a slip: about " + told(levels[3]) +
                                     " is believed of that day; look again, or correct the entry",
                                 {mark.entry},
                                 {}});
    }
  }
}

}  // namespace

Expected<facts::Outlook> outlook_of(const ColonyFit& fit, const Forcing& forcing, const Tables& tables,
                                    const Options& options) {
  const Setting& setting = *fit.setting;
  const Fitted& fitted = fit.fitted;
  const Projected projected = project(setting, fitted, forcing, options.horizon);

  facts::Outlook outlook;
  outlook.colony = fit.colony;
  outlook.today = options.today;
  outlook.members = options.members;
  outlook.effective_sample_size = effective_sample_size(fitted.weights);
  outlook.alive = 0;
  for (std::size_t i = 0; i < fitted.weights.size(); ++i)
    outlook.alive += fitted.weights[i] * projected.alive_today[i];
  outlook.alive = fit.timeline.ended ? 0.0 : std::clamp(outlook.alive, 0.0, 1.0);
  outlook.events = events_of(setting, fitted, projected, options.horizon);
  if (options.explain) {
    auto why = why_of_events(fit, projected, forcing, options.horizon, tables);
    for (std::size_t event = 0; event < event_count; ++event)
      outlook.events[event].why = std::move(why[event]);
  }
  outlook.fans = fans_of(projected.trace, fitted.weights, projected.horizon);
  outlook.seen = marks_of(setting);
  outlook.learnt = learnt_of(fitted);
  outlook.swarmed_unseen = swarmed_unseen(setting, fitted);
  outlook.remarks = remarks_of(setting, fitted, projected);
  for (const std::size_t o : fitted.left_out)
    outlook.left_out.push_back(setting.timeline.entries[setting.timeline.observations[o].entry].id);
  outlook.remarks.insert(outlook.remarks.end(), fit.remarks.begin(), fit.remarks.end());
  std::set<EntryId> told_already;
  for (const Surprise& surprise : fitted.surprises)
    for (const std::size_t o : surprise.observations)
      told_already.insert(setting.timeline.entries[setting.timeline.observations[o].entry].id);
  for (const facts::Reason& remark : fit.remarks)
    told_already.insert(remark.entries.begin(), remark.entries.end());
  remark_unbelieved(outlook, told_already);
  return outlook;
}

Expected<facts::Outlook> foresee(const History& history, const Forcing& forcing, const Tables& tables,
                                 const Options& options) {
  const auto fit = fit_colony(history, forcing, tables, options);
  if (!fit) return fit.problem();
  auto outlook = outlook_of(**fit, forcing, tables, options);
  if (!outlook || !options.explain) return outlook;
  const auto slips = read_slip_odds(tables.observation);
  if (!slips) return slips.problem();
  const std::vector<Standing> alone{{fit->get(), {}}};
  const auto doubts = doubts_about(alone, *slips);
  for (const Doubt& doubt : doubts[0]) outlook->remarks.push_back(told(doubt, **fit, ""));
  return outlook;
}

}  // namespace beegarth::belief
