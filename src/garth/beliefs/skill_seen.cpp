#include "garth/beliefs/skill_seen.hpp"

#include <algorithm>

#include "garth/beliefs/believe.hpp"
#include "garth/plan/dwelling.hpp"

namespace beegarth::garth {
namespace {

// Puts one colony's entries together, day by day.
class LookBook {
 public:
  explicit LookBook(const facts::Dwelling& dwelling) : dwelling_(dwelling) {
    super_was_on_ = dwelling.super_combs > 0;
  }

  void add(Date date, const entries::Inspection& look) {
    SeenThen& then = on(date);
    if (look.bees) {
      then.bees = *look.bees;
      then.by_seams = false;
    } else if (look.seams) {
      then.bees = *look.seams * dwelling_.bees_per_seam;
      then.by_seams = true;
    }
    if (look.capped_cells) then.capped_cells = *look.capped_cells;
    if (look.stores_kg)
      then.stores_kg = *look.stores_kg;
    else if (look.store_combs && !super_was_on_)
      then.stores_kg = *look.store_combs * dwelling_.honey_kg_per_comb;
  }
  void add(Date date, const entries::MiteCount& count) {
    if (count.method == entries::MiteMethod::brood && count.cells.value_or(0) > 0) {
      SeenThen& then = on(date);
      then.opened = *count.cells;
      then.infested_share = static_cast<double>(count.mites) / *count.cells;
    } else if ((count.method == entries::MiteMethod::wash ||
                count.method == entries::MiteMethod::sugar_roll) &&
               count.bees.value_or(0) > 0) {
      SeenThen& then = on(date);
      then.examined = *count.bees;
      then.rolled = count.method == entries::MiteMethod::sugar_roll;
      then.mites = count.mites;
      then.mites_per_100_bees = 100.0 * count.mites / *count.bees;
    }
  }
  void add(Date date, const entries::Weight& weight) {
    (weight.what == entries::Weighed::stores ? on(date).stores_kg : on(date).weight_kg) = weight.kg;
  }
  void add(Date, const entries::Room& room) {
    if (room.super_combs.value_or(0) > 0) super_was_on_ = true;
  }
  void add(Date date, const entries::ColonyEnded& end) {
    if (end.how != entries::Ending::died && end.how != entries::Ending::absconded) return;
    on(date) = {.date = date, .alive = false, .bees = 0.0, .capped_cells = 0.0};
  }
  template <class Other>
  void add(Date, const Other&) {}

  std::vector<SeenThen> looks() && {
    std::sort(looks_.begin(), looks_.end(),
              [](const SeenThen& a, const SeenThen& b) { return a.date < b.date; });
    return std::move(looks_);
  }

 private:
  SeenThen& on(Date date) {
    const auto at =
        std::find_if(looks_.begin(), looks_.end(), [&](const SeenThen& s) { return s.date == date; });
    if (at != looks_.end()) return *at;
    looks_.push_back({.date = date});
    return looks_.back();
  }

  facts::Dwelling dwelling_;
  bool super_was_on_ = false;
  std::vector<SeenThen> looks_;
};

}  // namespace

std::optional<double> value_of(const SeenThen& then, Scored what) {
  switch (what) {
    case Scored::bees:
      return then.bees;
    case Scored::capped_cells:
      return then.capped_cells;
    case Scored::mites_per_100_bees:
      return then.mites_per_100_bees;
    case Scored::infested_share:
      return then.infested_share;
    case Scored::stores_kg:
      return then.stores_kg;
    case Scored::weight_kg:
      return then.weight_kg;
    case Scored::alive:
      return then.alive ? 1.0 : 0.0;
  }
  return std::nullopt;
}

std::vector<SeenColony> seen_in(const Session& session) {
  std::vector<SeenColony> all;
  for (const auto& [id, colony] : session.state.colonies) {
    LookBook book(home_of(session.state, colony));
    for (const auto& entry : colony.history)
      std::visit([&](const auto& payload) { book.add(entry.happened, payload); }, entry.payload);
    SeenColony seen{
        .colony = id, .site = site_of_colony(session.state, colony), .looks = std::move(book).looks()};
    const auto site = session.state.sites.find(seen.site);
    seen.south = site != session.state.sites.end() && site->second.latitude_deg < 0;
    all.push_back(std::move(seen));
  }
  return all;
}

}  // namespace beegarth::garth
