#include "garth/plan/status.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "entries/fields.hpp"
#include "garth/beliefs/believe.hpp"
#include "garth/plan/dwelling.hpp"

namespace beegarth::garth {
namespace {

using entries::Entry;

work::Sighting sighting(const Entry& entry, double value = 0) {
  return {entry.happened, entry.id, value};
}

// Cells of one generation stand in one row of looks: from the egg to the young queen takes 16 days, and a
// charged cell is at least three of them old.
constexpr int one_generation_of_cells_days = 13;

void take_in_cells(const entries::Inspection& look, const Entry& entry, work::ColonyStatus& status) {
  const bool cells = look.charged_cells.value_or(0) > 0 || look.sealed_cells.value_or(0) > 0;
  const bool older =
      status.cells_since && entry.happened - status.cells_since->date > one_generation_of_cells_days;
  if (older || (!cells && look.look == entries::Look::full)) status.cells_since.reset();
  if (cells && !status.cells_since) status.cells_since = sighting(entry);
}

void take_in_signs(const std::vector<std::string>& signs, const Entry& entry, work::ColonyStatus& status) {
  if (std::find(signs.begin(), signs.end(), "deformed_wings") != signs.end())
    status.crippled_wings = sighting(entry);
}

void take_in(const entries::Inspection& look, const Entry& entry, work::ColonyStatus& status) {
  status.last_any_look = sighting(entry);
  take_in_cells(look, entry, status);
  if (look.look == entries::Look::full) {
    status.last_full_look = sighting(entry);
    status.last_charged_cells.reset();
    status.last_sealed_cells.reset();
    status.last_cups_with_egg.reset();
  }
  if (look.charged_cells.value_or(0) > 0) status.last_charged_cells = sighting(entry, *look.charged_cells);
  if (look.sealed_cells.value_or(0) > 0) status.last_sealed_cells = sighting(entry, *look.sealed_cells);
  if (look.super_share) status.super_share = sighting(entry, *look.super_share);
  if (look.cups_with_egg.value_or(0) > 0) status.last_cups_with_egg = sighting(entry, *look.cups_with_egg);
  if (look.stores_kg)
    status.last_stores = sighting(entry, *look.stores_kg);
  else if (look.store_combs && status.dwelling.super_combs == 0)  // with supers on they are those of the nest
    status.last_stores = sighting(entry, *look.store_combs * status.dwelling.honey_kg_per_comb);
  const bool cells = look.charged_cells.value_or(0) > 0 || look.sealed_cells.value_or(0) > 0;
  if (cells && look.look == entries::Look::full && look.eggs == false && !status.queen_lost_or_swarmed) {
    // Cells and not one egg: the queen has been gone for the three days that an egg lasts, with a swarm or
    // without.
    status.queen_lost_or_swarmed = work::Sighting{entry.happened - 3, entry.id, 1};
  }
  if (look.eggs) {
    if (*look.eggs) {
      status.eggs_seen = sighting(entry);
      status.no_eggs_seen.reset();
      status.no_eggs_first.reset();
    } else {
      status.no_eggs_seen = sighting(entry);
      if (!status.no_eggs_first) status.no_eggs_first = status.no_eggs_seen;
    }
  }
  take_in_signs(look.signs, entry, status);
}

void take_in(const entries::Sign& sign, const Entry& entry, work::ColonyStatus& status) {
  take_in_signs(sign.signs, entry, status);
}

void take_in(const entries::MiteCount& count, const Entry& entry, work::ColonyStatus& status) {
  double rate = 0;
  if (count.method == entries::MiteMethod::board) {
    rate = count.mites / count.days.value_or(1) / count.board_share.value_or(1);
  } else if (count.method == entries::MiteMethod::brood) {
    rate = 100.0 * count.mites / count.cells.value_or(1);
  } else {
    rate = 100.0 * count.mites / count.bees.value_or(1);
  }
  status.last_mite_count = sighting(entry, rate);
  status.last_mite_method = std::string(entries::word_for(count.method));
  status.mite_counts.push_back({*status.last_mite_count, status.last_mite_method});
}

void take_in(const entries::Queen& queen, const Entry& entry, work::ColonyStatus& status) {
  using entries::QueenEvent;
  switch (queen.event) {
    case QueenEvent::lost:
    case QueenEvent::removed:
    case QueenEvent::died:
      status.queen_lost_or_swarmed = sighting(entry, 0);
      break;
    case QueenEvent::clipped:
      status.queen_clipped = true;
      break;
    case QueenEvent::laying:
      status.queen_lost_or_swarmed.reset();
      status.eggs_seen = sighting(entry);
      status.no_eggs_seen.reset();
      status.no_eggs_first.reset();
      break;
    case QueenEvent::introduced:
      status.queen_lost_or_swarmed = sighting(entry, 3);
      status.no_eggs_seen.reset();
      status.no_eggs_first.reset();
      status.queen_clipped = false;
      break;
    default:
      break;
  }
}

void take_in(const entries::Split& split, const Entry& entry, work::ColonyStatus& status) {
  const bool is_new_one = split.into == status.colony;
  status.cells_since.reset();
  if (is_new_one != split.queen_goes) status.queen_lost_or_swarmed = sighting(entry, 2);
}

void take_in(const entries::Room& room, const Entry& entry, work::ColonyStatus& status) {
  status.dwelling.brood_combs = std::max(0, status.dwelling.brood_combs + room.brood_combs.value_or(0));
  status.dwelling.super_combs = std::max(0, status.dwelling.super_combs + room.super_combs.value_or(0));
  if (status.dwelling.super_combs > 0) status.supers_on = sighting(entry, status.dwelling.super_combs);
  if (status.dwelling.super_combs == 0) status.supers_on.reset();
  if (room.super_combs.value_or(0) != 0) status.super_share.reset();
}

struct TakeIn {
  const Entry& entry;
  work::ColonyStatus& status;

  void operator()(const entries::Inspection& p) const { take_in(p, entry, status); }
  void operator()(const entries::Sign& p) const { take_in(p, entry, status); }
  void operator()(const entries::DeadColony& p) const { take_in_signs(p.signs, entry, status); }
  void operator()(const entries::MiteCount& p) const { take_in(p, entry, status); }
  void operator()(const entries::Queen& p) const { take_in(p, entry, status); }
  void operator()(const entries::Split& p) const { take_in(p, entry, status); }
  void operator()(const entries::Room& p) const { take_in(p, entry, status); }
  void operator()(const entries::Swarmed&) const {
    status.cells_since.reset();
    status.queen_lost_or_swarmed = sighting(entry, 1);
  }
  void operator()(const entries::Weight& p) const {
    if (p.what == entries::Weighed::stores) status.last_stores = sighting(entry, p.kg);
  }
  void operator()(const entries::Harvest&) const { status.super_share.reset(); }
  void operator()(const entries::Feed& p) const { status.last_feed = sighting(entry, p.kg); }
  void operator()(const entries::Treatment& p) const {
    status.last_treatment = sighting(entry, p.days.value_or(0));
    status.last_treatment_kind = std::string(entries::word_for(p.kind));
    status.treatment_withdrawal_days = p.withdrawal_days.value_or(0);
    constexpr double lies_in_the_hive_days = 7;  // what works for hours or days is gone by itself
    status.treatment_in_hive.reset();
    if (p.days.value_or(0) >= lies_in_the_hive_days) status.treatment_in_hive = status.last_treatment;
  }
  void operator()(const entries::TreatmentEnded&) const { status.treatment_in_hive.reset(); }
  void operator()(const entries::Quarantine& p) const {
    status.quarantine_until.reset();
    if (p.until) status.quarantine_until = work::Sighting{*p.until, entry.id, 0};
  }
  template <class Other>
  void operator()(const Other&) const {}
};

double middle_of(std::vector<double> values) {
  const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
  std::nth_element(values.begin(), middle, values.end());
  return *middle;
}

void take_in_warmth(const SiteWeather& weather, std::size_t from, int days, work::SiteStatus& status) {
  for (std::size_t d = from; d < from + static_cast<std::size_t>(days); ++d) {
    std::vector<double> highest, mean;
    for (const auto& member : weather.members) {
      if (d >= member.size()) continue;
      highest.push_back(member[d].temperature_max_C);
      mean.push_back((member[d].temperature_max_C + member[d].temperature_min_C) / 2);
    }
    if (highest.empty()) return;
    status.day_max_C.push_back(middle_of(std::move(highest)));
    status.day_mean_C.push_back(middle_of(std::move(mean)));
  }
}

void take_in_weather(const SiteWeather& weather, Date today, int days, work::SiteStatus& status) {
  std::vector<double> totals;
  int gusty = 0;
  const auto from = static_cast<std::size_t>(today - weather.first);
  for (const auto& member : weather.members) {
    double total = 0;
    bool gust = false;
    for (std::size_t d = from; d < member.size() && d < from + static_cast<std::size_t>(days); ++d) {
      total += member[d].rain_mm;
      gust = gust || member[d].wind_m_s * 2 > 20;  // a gust is about twice the day's mean wind (from memory)
    }
    totals.push_back(total);
    gusty += gust ? 1 : 0;
  }
  take_in_warmth(weather, from, days, status);
  if (totals.empty()) return;
  const auto members = static_cast<double>(totals.size());
  status.rain_next_days_mm = middle_of(std::move(totals));
  status.gust = facts::odds_of_share(static_cast<double>(gusty) / members, members);
}

}  // namespace

work::ColonyStatus status_of(const Session& session, const ColonyId& id, const book::ColonyState& colony) {
  work::ColonyStatus status{
      .colony = id, .name = colony.began.name, .site = site_of_colony(session.state, colony)};
  const auto hive = session.state.hives.find(colony.hive);
  if (hive != session.state.hives.end()) {
    status.dwelling = home_of(session.state, colony);
    status.place = hive->second.place.value_or(0);
  }
  if (status.dwelling.super_combs > 0) {
    status.supers_on =
        work::Sighting{colony.began_on, colony.began_entry, static_cast<double>(status.dwelling.super_combs)};
  }
  status.queen_clipped = colony.began.queen_clipped.value_or(false);
  for (const Entry& entry : colony.history) std::visit(TakeIn{entry, status}, entry.payload);
  if (const SuspectColony* suspect = session.suspects.at(id)) {
    status.suspect = true;
    for (const SuspectSign& sign : suspect->signs)
      status.signs.push_back({sign.text(), work::Sighting{sign.seen, sign.entry, 0}});
  }
  return status;
}

work::SiteStatus status_of(const Session& session, const SiteId& id, const SiteWeather& weather, int days) {
  const entries::Site& site = session.state.sites.at(id);
  work::SiteStatus status{.site = id,
                          .name = site.name,
                          .neighbours = site.neighbours.value_or(false),
                          .floods = site.floods.value_or(false),
                          .latitude_deg = site.latitude_deg};
  const int month = northern_month(session.today, site.latitude_deg);
  status.swarm_season = month >= 4 && month <= 7;  // trade facts 4.1: seven-day inspections April/May to July
  std::array<double, 12> nectar{};
  bool said = false;
  for (const auto& forage : session.state.forage) {
    if (forage.site != id && forage.site.text() != "all") continue;
    nectar[static_cast<std::size_t>(forage.month - 1)] = forage.nectar_kg_per_day;
    said = true;
  }
  if (said) status.nectar_by_month.assign(nectar.begin(), nectar.end());
  take_in_weather(weather, session.today, days, status);
  return status;
}

}  // namespace beegarth::garth
