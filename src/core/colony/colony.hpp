// One colony, day by day, as an ensemble: many possible courses ("members") of the same colony, each with
// traits and luck of its own. A member holds brood by age, hive bees by age, foragers, winter bees, drones,
// the queen and her cells, stores, pollen, comb room, and mites on bees and under cappings.
//
//   Model (tables) ─ make_ensemble ─► Ensemble ─ advance_day, advance_days, ... ─► read
//
// The luck of a member on a day is a pure function of (seed, colony, noise id, day): the same bits on any
// machine, in any order, on any number of threads. All members share the day, the dwelling and the actions.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <string_view>
#include <vector>

#include "base/date.hpp"
#include "colony/actions.hpp"
#include "colony/model.hpp"
#include "colony/traits.hpp"
#include "facts/dwelling.hpp"
#include "facts/forcing.hpp"

namespace beegarth::colony {

// How a colony stands when it is first followed.
struct Start {
  double bees = 10000;
  double brood_cells = 0;  // worker cells of all ages
  double stores_kg = 15;
  double pollen_kg = 0.5;
  double mites = 100;       // on bees and under cappings
  double winter_share = 0;  // of the bees that are winter bees, 0..1
  double queen_age_days = 365;
  bool queen_laying = true;   // false: a colony without a queen, or with one that lays drones only
  bool drone_laying = false;  // such a queen; needs queen_laying == false
};

// What can be read of every member. Counts are not whole numbers: they are what is expected of so many bees.
enum class Quantity {
  bees,  // all adult workers
  hive_bees,
  foragers,
  winter_bees,
  drones,
  brood_cells,  // worker brood, all ages
  eggs,
  open_brood,    // larvae, worker
  capped_cells,  // worker
  drone_brood,
  drone_eggs,        // of a drone layer as well
  open_drone_brood,  // larvae
  capped_drone_cells,
  stores_kg,  // honey and nectar as honey
  pollen_kg,
  super_kg,  // part of the stores above or beyond the nest
  mites,     // on adults and mothers under cappings
  mites_on_bees,
  mites_under_cappings,
  mites_per_100_bees,  // on adults, as a wash would find
  infested_share,      // of the capped worker cells, with one mite or more, 0..1
  mite_fall_per_day,   // natural fall on a full board
  charged_cells,       // open queen cells with a larva
  sealed_cells,        // sealed queen cells
  swarm_cells,  // charged or sealed ones that were raised to swarm, before and after the swarm has left
  cups_with_egg,
  queen_present,      // 0 or 1, virgins too
  queen_laying,       // 0 or 1: mated and laying worker eggs
  drone_laying,       // 0 or 1: a queen that never mated, or whose sperm is spent, lays drones
  eggs_laid,          // yesterday to today, worker
  laying_room_cells,  // free drawn worker cells
  super_room_kg,      // honey that still fits
  undrawn_combs,
  infested_winter_share,  // of the winter bees reared, those from infested cells, 0..1
  alive,                  // 0 or 1
};
inline constexpr int quantity_count = static_cast<int>(Quantity::alive) + 1;
std::string_view name_of(Quantity quantity);
std::optional<Quantity> quantity_named(std::string_view name);

// The first day on which it happened since the ensemble began (or since `forget_events`).
enum class Event {
  swarm_preparation,
  swarm,        // with the old queen
  cast,         // with a virgin, after that
  queen_loss,   // of a laying queen or a virgin
  supersedure,  // cells raised beside a laying queen
  starvation,
  robbing,
  absconding,  // all that can fly leave; the colony ends
  death,
};
inline constexpr int event_count = 9;
std::string_view name_of(Event event);

// Whose luck. ids[i] is the noise id of member i; members with equal ids and states stay equal. The span may
// be empty: then member i has id i.
struct NoiseKey {
  std::uint64_t seed = 1;
  std::uint64_t colony = 0;  // stable_hash of the colony's id
  std::span<const std::uint32_t> ids;
};

struct Block;  // sixteen members side by side; private to the room

class Ensemble {
 public:
  Ensemble();
  Ensemble(const Ensemble& other);
  Ensemble(Ensemble&& other) noexcept;
  Ensemble& operator=(const Ensemble& other);
  Ensemble& operator=(Ensemble&& other) noexcept;
  ~Ensemble();

  int members() const { return members_; }
  Date date() const { return date_; }  // the state is that of the evening of this day
  const facts::Dwelling& dwelling() const { return dwelling_; }

  void read(Quantity quantity, std::span<float> out) const;  // out.size() == members()
  std::vector<float> read(Quantity quantity) const;
  std::optional<Date> first_day(Event event, int member) const;
  void forget_events();

  Traits traits(int member) const;
  void set_traits(const Model& model, int member, const Traits& traits);

  // Member i becomes a copy of member ancestors[i]; the ensemble may grow or shrink to ancestors.size().
  Ensemble take(std::span<const std::uint32_t> ancestors) const;
  // The members of `first`, then those of `second`: both must stand on the same day in the same dwelling.
  static Ensemble join(const Ensemble& first, const Ensemble& second);

  std::uint64_t hash() const;  // of every member's whole state, traits included, in order of members

 private:
  friend struct Access;
  int members_ = 0;
  Date date_;
  std::int32_t turn_ = 0;            // days since the start: turns the rings of brood
  float daylength_yesterday_h_ = 0;  // 0 where no day has been seen yet
  facts::Dwelling dwelling_;
  Rates rates_{};  // as it was made; reading needs a few of them
  struct UnderTreatment {
    TreatmentKind kind;
    float days_left = 0;
  };
  std::vector<UnderTreatment> treatments_;
  std::vector<Block> blocks_;
};

// starts and traits: one per member, or a single one for all.
Ensemble make_ensemble(const Model& model, const facts::Dwelling& dwelling, Date evening, int members,
                       std::span<const Start> starts, std::span<const Traits> traits);

// Traits drawn from the prior, member i from the stream (seed, colony, ids[i] or i, Purpose::prior).
std::vector<Traits> draw_traits(const Model& model, int members, const NoiseKey& noise);

// The actions happen in the morning of forcing.date, which is the day after ensemble.date().
void advance_day(Ensemble& ensemble, const Model& model, const facts::DayForcing& forcing,
                 std::span<const Action> actions, const NoiseKey& noise);

// Day after day without actions: the same bits as by advance_day, but quicker, since few members at a time go
// through all the days.
void advance_days(Ensemble& ensemble, const Model& model, std::span<const facts::DayForcing> days,
                  const NoiseKey& noise);

}  // namespace beegarth::colony
