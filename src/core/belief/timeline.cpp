#include "belief/timeline.hpp"

#include <algorithm>
#include <cmath>

namespace beegarth::belief {
namespace {

namespace e = entries;

template <class... Fs>
struct Overloaded : Fs... {
  using Fs::operator()...;
};
template <class... Fs>
Overloaded(Fs...) -> Overloaded<Fs...>;

void remark(Timeline& timeline, std::string text, const e::Entry& entry) {
  timeline.remarks.push_back({std::move(text), {entry.id}, {}});
}

// Sorts one entry in as something done, something seen, or both.
class Sorter {
 public:
  Sorter(Timeline& timeline, const History& history)
      : timeline_(timeline), colony_(history.colony), first_shared_(history.dwelling.two_colonies) {}

  void add(std::size_t index) {
    index_ = index;
    entry_ = &timeline_.entries[index];
    std::visit(Overloaded{
                   [&](const e::ColonyBegan& p) {
                     if (p.colony == colony_) timeline_.beginning = p;  // not of a swarm that left it
                   },
                   [&](const e::ColonyEnded& p) {
                     if (!found_dead_) end(p.how);  // told already by what was found
                   },
                   [&](const e::DeadColony&) {
                     if (!timeline_.ended) end(e::Ending::died);
                     found_dead_ = true;
                   },
                   [&](const e::Inspection& p) { see(p); },
                   [&](const e::MiteCount& p) { see(p); },
                   [&](const e::Weight& p) {
                     if (shares_hive() && p.what == e::Weighed::whole_hive)
                       remark(timeline_,
                              "of " + entry_->happened.iso() +
                                  ": the whole hive was weighed and another colony lives in it; left out",
                              *entry_);
                     else
                       see(p);
                   },
                   [&](const e::Swarmed&) {
                     see(SwarmSeen{});
                     deed();
                   },
                   [&](const e::Unite& p) {
                     if (p.from == colony_) {
                       end(e::Ending::united);
                     } else {
                       deed();
                     }
                   },
                   [&](const e::Split& p) {
                     if (p.into != colony_) deed();  // the daughter's own start is not something done to her
                   },
                   [&](const e::Queen& p) {
                     see_queen(p.event);
                     deed();
                   },
                   [&](const e::Feed&) { deed(); },
                   [&](const e::Treatment&) { deed(); },
                   [&](const e::Room&) { deed(); },
                   [&](const e::Transfer&) { deed(); },
                   [&](const e::Harvest& p) {
                     if (p.kg > 0) see(Taken{p.kg});
                     deed();
                   },
                   [](const auto&) {},
               },
               entry_->payload);
  }

 private:
  bool shares_hive() const {
    bool shared = first_shared_;
    for (const Rehoused& home : timeline_.rehoused) {
      if (home.date <= entry_->happened) shared = home.dwelling.two_colonies;
    }
    return shared;
  }
  bool over() {
    if (!timeline_.ended || entry_->happened <= *timeline_.ended) return false;
    remark(timeline_,
           "dated " + entry_->happened.iso() + ", after the colony had ended on " + timeline_.ended->iso() +
               "; left out",
           *entry_);
    return true;
  }
  void see(Sight sight) {
    if (over()) return;
    timeline_.observations.push_back({entry_->happened, index_, std::move(sight)});
  }
  // Some of what is written of a queen can only be written by someone who had her, or her eggs, before the
  // eyes.
  void see_queen(e::QueenEvent event) {
    e::Inspection look;
    if (event == e::QueenEvent::laying) look.eggs = true;
    if (event == e::QueenEvent::marked || event == e::QueenEvent::clipped || event == e::QueenEvent::caged) {
      look.queen = true;
    }
    if (look.eggs || look.queen) see(look);
  }
  void deed() {
    if (over()) return;
    timeline_.deeds.push_back({entry_->happened - timeline_.began, index_});
  }
  void end(e::Ending how) {
    if (over()) return;
    timeline_.ended = entry_->happened;
    timeline_.how_ended = how;
    const bool lost = how == e::Ending::died || how == e::Ending::absconded;
    timeline_.observations.push_back({entry_->happened, index_, lost ? Sight(DeadOut{}) : Sight(LivedOn{})});
  }

  Timeline& timeline_;
  const ColonyId& colony_;
  bool first_shared_;
  bool found_dead_ = false;
  const e::Entry* entry_ = nullptr;
  std::size_t index_ = 0;
};

std::string whole(int n) {
  return std::to_string(n);
}

// A board under a treatment shows mites killed, not the natural fall, and is not read; nor for a while after.
void drop_boards_under_treatment(Timeline& timeline) {
  constexpr int falls_on = 7;  // days that killed mites go on falling
  constexpr double usual_days = 14;
  const auto treated = [&](const Observation& seen) {
    const auto* count = std::get_if<e::MiteCount>(&seen.sight);
    if (count == nullptr || count->method != e::MiteMethod::board) return false;
    for (const Deed& deed : timeline.deeds) {
      const e::Entry& entry = timeline.entries[deed.entry];
      const auto* treatment = std::get_if<e::Treatment>(&entry.payload);
      if (treatment == nullptr || treatment->kind == e::TreatmentKind::drone_comb_removed ||
          treatment->kind == e::TreatmentKind::brood_removed) {
        continue;
      }
      const int days = static_cast<int>(std::ceil(treatment->days.value_or(usual_days))) + falls_on;
      const bool apart =
          seen.date <= entry.happened || seen.date - board_days(*count) >= entry.happened + days;
      if (!apart) return true;
    }
    return false;
  };
  std::vector<Observation> kept;
  for (Observation& seen : timeline.observations) {
    if (treated(seen)) {
      remark(timeline,
             "a board under or just after a treatment shows mites killed, not the natural fall; not used",
             timeline.entries[seen.entry]);
    } else {
      kept.push_back(std::move(seen));
    }
  }
  timeline.observations = std::move(kept);
}

bool found_empty(const Observation& seen) {
  const auto* look = std::get_if<e::Inspection>(&seen.sight);
  if (look == nullptr || look->look == e::Look::outside || !(look->seams || look->bees)) return false;
  // No seam of bees may be a handful of them; no bees at all, or no brood of any age either, is an empty
  // hive.
  const bool no_brood_said = look->eggs && look->open_brood && look->capped_brood;
  if (!look->bees && !no_brood_said) return false;
  return look->seams.value_or(0) == 0 && look->bees.value_or(0) == 0 && look->brood_combs.value_or(0) == 0 &&
         look->capped_cells.value_or(0) == 0 && !look->eggs.value_or(false) && !look->queen.value_or(false) &&
         !look->open_brood.value_or(false) && !look->capped_brood.value_or(false);
}

// A hive that was found without bees, and in which nobody saw any since, holds no colony any more.
void end_where_found_empty(Timeline& timeline) {
  if (timeline.ended) return;
  const auto last =
      std::find_if(timeline.observations.rbegin(), timeline.observations.rend(), [](const Observation& seen) {
        const auto* look = std::get_if<e::Inspection>(&seen.sight);
        return look != nullptr && (look->seams || look->bees || look->brood_combs);
      });
  if (last == timeline.observations.rend() || !found_empty(*last)) return;
  const Observation empty = *last;
  // Who counts mites on bees has bees before the eyes.
  const bool bees_since =
      std::any_of(timeline.observations.begin(), timeline.observations.end(), [&](const Observation& seen) {
        const auto* count = std::get_if<e::MiteCount>(&seen.sight);
        return seen.date > empty.date && count != nullptr && count->method != e::MiteMethod::board;
      });
  if (bees_since) return;
  const e::Entry& entry = timeline.entries[empty.entry];
  remark(timeline,
         "of " + empty.date.iso() +
             ": no bees were found, so the colony is taken for dead or gone; enter that it ended, or correct "
             "the look",
         entry);
  timeline.ended = empty.date;
  timeline.how_ended = e::Ending::died;
  std::erase_if(timeline.observations,
                [&](const Observation& seen) { return seen.date > empty.date || seen.entry == empty.entry; });
  timeline.observations.push_back({empty.date, empty.entry, DeadOut{}});
}

// Long gaps without a look, said once each.
void remark_gaps(Timeline& timeline, Date today) {
  constexpr int months_worth = 60;  // days
  Date last = timeline.began;
  const Date until = timeline.ended.value_or(today);
  const auto gap = [&](Date to) {
    if (to - last >= months_worth) {
      timeline.remarks.push_back(
          {whole(to - last) + " days without a look, from " + last.iso() + " to " + to.iso(), {}, {}});
    }
    last = to;
  };
  for (const Observation& seen : timeline.observations)
    if (!std::holds_alternative<Taken>(seen.sight)) gap(seen.date);
  gap(std::max(until, last));
}

Outcome check_path(const facts::ForcingPath& path, Date from, Date to, const std::string& name) {
  if (path.empty())
    return bad_input("no days", name, "give every day from " + from.iso() + " to " + to.iso());
  for (std::size_t i = 1; i < path.size(); ++i) {
    if (path[i].date - path[i - 1].date != 1) {
      return bad_input("days are missing or out of order after " + path[i - 1].date.iso(), name,
                       "give every day once");
    }
  }
  if (path.front().date > from || path.back().date < to) {
    return bad_input("covers " + path.front().date.iso() + " to " + path.back().date.iso() + " only", name,
                     "give every day from " + from.iso() + " to " + to.iso());
  }
  for (const facts::DayForcing& day : path) {
    for (const double x : {day.flight_hours, day.temperature_min_C, day.temperature_max_C, day.rain_mm,
                           day.daylength_h, day.nectar_kg_per_day, day.pollen_index, day.mites_in_per_day}) {
      if (!std::isfinite(x)) return bad_input("a value is not a number on " + day.date.iso(), name);
    }
  }
  return Done{};
}

}  // namespace

Timeline lay_out(const History& history, Date today) {
  Timeline timeline;
  timeline.began = history.began;
  timeline.moves = history.moves;
  timeline.rehoused = history.rehoused;
  for (const e::Entry& entry : history.entries) {
    if (entry.happened > today) continue;
    if (entry.happened < history.began) {
      remark(timeline,
             "dated " + entry.happened.iso() + ", before the colony began on " + history.began.iso() +
                 "; left out",
             entry);
      continue;
    }
    timeline.entries.push_back(entry);
  }
  std::stable_sort(timeline.entries.begin(), timeline.entries.end(),
                   [](const e::Entry& a, const e::Entry& b) {
                     return a.happened != b.happened ? a.happened < b.happened : a.written < b.written;
                   });
  Sorter sorter(timeline, history);
  for (std::size_t i = 0; i < timeline.entries.size(); ++i) sorter.add(i);
  drop_boards_under_treatment(timeline);
  end_where_found_empty(timeline);
  remark_gaps(timeline, today);
  return timeline;
}

Outcome check_request(const History& history, const Forcing& forcing, const Options& options) {
  if (options.members < 16 || options.members > 65536) {
    return bad_input("members must be 16 to 65536", "members", "512 is usual");
  }
  if (options.sweeps < 1 || options.sweeps > 1000) {
    return bad_input("sweeps must be 1 to 1000", "sweeps", "3 is usual");
  }
  if (options.today < history.began) {
    return bad_input("the colony began on " + history.began.iso() + ", after today", "today",
                     "ask for a later day");
  }
  if (options.horizon < options.today)
    return bad_input("lies before today", "horizon", "ask for a later day");
  if (options.horizon - options.today > 800 || options.today - history.began > 4000) {
    return bad_input("too long a time", "horizon", "follow at most 4000 days back and 800 ahead");
  }
  if (options.today > history.began) {
    auto past = check_path(forcing.past, history.began, options.today - 1, "past");
    if (!past) return past;
  }
  if (forcing.futures.empty())
    return bad_input("there is no course of the weather to come", "futures", "give at least one");
  if (options.horizon == options.today) return Done{};
  for (std::size_t i = 0; i < forcing.futures.size(); ++i) {
    auto future = check_path(forcing.futures[i], options.today, options.horizon - 1,
                             "futures[" + std::to_string(i) + "]");
    if (!future) return future;
  }
  return Done{};
}

}  // namespace beegarth::belief
