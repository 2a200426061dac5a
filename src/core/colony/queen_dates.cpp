#include "colony/queen_dates.hpp"

#include <algorithm>
#include <cmath>

namespace beegarth::colony {
namespace {

// Days from the event, or days to add.
struct Span {
  double earliest = 0, likely = 0, latest = 0;
};
Span operator+(Span a, Span b) {
  return {a.earliest + b.earliest, a.likely + b.likely, a.latest + b.latest};
}

// Sources: stage table "Honey Bee Biology" (worker 3, 6, 12; drone 24 in all), encyclopedia page "Queen Bee -
// Development" (sealed 7.5-9, out 15.5-17), Heidinger et al. 2014 (mature 5-6 days after, mated within a
// week), queen timeline page (lays 2-3 days after mating).
constexpr Span sealed_after_egg{7.5, 8, 9};
constexpr Span out_after_egg{15.5, 16, 17};
constexpr double usual_out_after_egg = 16;
constexpr Span mature_after_out{5, 6, 7};
constexpr Span window_after_out{21, 24, 28};
constexpr Span lays_after_mating{2, 2.5, 3};
constexpr double egg_seen_within = 3;  // an egg stands three days: a look in that time finds one
constexpr double capped_after_laying = 9;
constexpr double egg_hatches = 3;
constexpr double open_brood_days = 9;
constexpr double worker_emerges = 21;
constexpr double drone_emerges = 24;
constexpr double oldest_larva_for_a_queen = 4.5;
constexpr double usual_graft_age = 4;
constexpr Span cell_age_when_swarm_leaves{9, 8, 8};  // the oldest gives the earliest virgin

class Calendar {
 public:
  explicit Calendar(Date date) : date_(date) {}

  void add(std::string_view what, Span s) {
    dates_.push_back({what, date_ + static_cast<int>(std::floor(s.earliest)),
                      date_ + static_cast<int>(std::lround(s.likely)),
                      date_ + static_cast<int>(std::ceil(s.latest))});
  }
  void add_exact(std::string_view what, double day) { add(what, {day, day, day}); }

  // A virgin that comes out: she matures, mates and lays.
  Span add_virgin_life(Span out) {
    add("mating_from", out + mature_after_out);
    add("mating_until", out + window_after_out);
    const Span laying = out + mature_after_out + lays_after_mating;
    add_laying(laying);
    return laying;
  }
  void add_laying(Span laying) {
    add("laying", laying);
    add("eggs_visible", {laying.earliest, laying.likely, laying.latest + egg_seen_within});
    add("worker_capped", laying + Span{capped_after_laying, capped_after_laying, capped_after_laying});
  }
  // The brood of a queen that stopped on day 0 runs out, unless she lays again first.
  void add_last_brood(double laying_again = 1e9) {
    if (laying_again + egg_hatches > open_brood_days) add_exact("no_open_brood", open_brood_days);
    if (laying_again >= worker_emerges) add_exact("no_worker_brood", worker_emerges);
    if (laying_again >= drone_emerges) add_exact("no_drone_brood", drone_emerges);
  }
  // No capped brood from the last old one to the first new one; nothing where the new comes first in any
  // case.
  void add_window(std::optional<Span> first_capped) {
    if (first_capped && first_capped->latest <= worker_emerges) return;
    add_exact("window_worker_only_start", worker_emerges);
    if (!first_capped || first_capped->latest > drone_emerges) add_exact("window_start", drone_emerges);
    if (first_capped) add("window_end", *first_capped);
  }

  std::vector<DateRange> in_order() {
    std::stable_sort(dates_.begin(), dates_.end(),
                     [](const DateRange& a, const DateRange& b) { return a.earliest < b.earliest; });
    return std::move(dates_);
  }

 private:
  Date date_;
  std::vector<DateRange> dates_;
};

Span first_capped(Span laying) {
  return laying + Span{capped_after_laying, capped_after_laying, capped_after_laying};
}

// Ages of the brood a queen is raised from, oldest first since it gives the earliest queen.
Span ages_of(const QueenQuestion& q) {
  if (q.brood_age_days) return {*q.brood_age_days, *q.brood_age_days, *q.brood_age_days};
  if (q.event == QueenEvent::larva_grafted) return {usual_graft_age, usual_graft_age, usual_graft_age};
  if (q.event == QueenEvent::queen_lost) return {oldest_larva_for_a_queen, usual_graft_age, 0};
  return {};
}

// From brood of these ages to a laying queen. Laying is reckoned from the usual 16 days to emergence, as the
// published sums do; the virgin's own date carries the range of that figure.
Span add_raised_queen(Calendar& calendar, Span age) {
  const Span younger{-age.earliest, -age.likely, -age.latest};
  calendar.add("cell_sealed", sealed_after_egg + younger);
  calendar.add("virgin_emerges", out_after_egg + younger);
  return calendar.add_virgin_life(Span{usual_out_after_egg, usual_out_after_egg, usual_out_after_egg} +
                                  younger);
}

std::optional<Problem> fault_of(const QueenQuestion& q) {
  const bool raised = q.event == QueenEvent::larva_grafted || q.event == QueenEvent::queen_lost;
  if (q.brood_age_days && !raised) {
    return bad_input("the age of the brood says nothing about this event", "$.brood_age_days",
                     "leave it out");
  }
  if (q.event == QueenEvent::queen_lost && q.brood_age_days && *q.brood_age_days > oldest_larva_for_a_queen) {
    return bad_input("no good queen is raised from a larva older than 4.5 days from the egg",
                     "$.brood_age_days", "give 0 to 4.5");
  }
  if (q.released && q.event != QueenEvent::queen_caged) {
    return bad_input("only a caged queen is released", "$.released_date", "leave it out");
  }
  if (q.released && *q.released < q.date) {
    return bad_input("the queen was released before she was caged", "$.released_date",
                     "give a day on or after the date");
  }
  return std::nullopt;
}

}  // namespace

Expected<std::vector<DateRange>> queen_dates(const QueenQuestion& q) {
  if (auto fault = fault_of(q)) return *std::move(fault);
  Calendar calendar(q.date);
  switch (q.event) {
    case QueenEvent::egg_laid:
    case QueenEvent::larva_grafted:
      add_raised_queen(calendar, ages_of(q));
      break;
    case QueenEvent::queen_lost:
      calendar.add_last_brood();
      calendar.add_window(first_capped(add_raised_queen(calendar, ages_of(q))));
      break;
    case QueenEvent::swarm_left: {
      const Span out{usual_out_after_egg - cell_age_when_swarm_leaves.earliest,
                     usual_out_after_egg - cell_age_when_swarm_leaves.likely,
                     usual_out_after_egg - cell_age_when_swarm_leaves.latest};
      calendar.add_last_brood();
      calendar.add("virgin_emerges", out);
      calendar.add_window(first_capped(calendar.add_virgin_life(out)));
      break;
    }
    case QueenEvent::queen_caged:
      if (q.released) {
        const double day = *q.released - q.date;
        calendar.add_last_brood(day);
        calendar.add_laying({day, day, day});
        calendar.add_window(first_capped({day, day, day}));
      } else {
        calendar.add_last_brood();
        calendar.add_window(std::nullopt);
      }
      break;
    case QueenEvent::queen_released:
      calendar.add_laying({});
      break;
    case QueenEvent::cell_sealed: {
      // Handbook page on swarm arithmetic: what was split off with a cell just sealed is moved on a day
      // before the virgin is out, so that the bees that have flown since go to the other half.
      calendar.add_exact("split_moved_again", 7);
      calendar.add("virgin_emerges", {7, 8, 9});  // 7.5-8 days capped, stage table, and out by day 17
      calendar.add_virgin_life({8, 8, 8});
      break;
    }
    case QueenEvent::virgin_emerged:
      calendar.add_virgin_life({});
      break;
  }
  return calendar.in_order();
}

}  // namespace beegarth::colony
