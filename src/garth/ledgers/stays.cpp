#include "garth/ledgers/stays.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace beegarth::garth {
namespace {

class Stays {
 public:
  void take(const entries::Entry& entry) {
    std::visit([&](const auto& said) { take(entry.happened, said); }, entry.payload);
  }
  std::map<ColonyId, std::vector<Stay>> told() && { return std::move(stays_); }

 private:
  void take(Date, const entries::Site& site) { sites_[site.site] = site; }
  void take(Date day, const entries::Hive& hive) {
    hives_[hive.hive] = hive.site;
    for (const auto& [colony, home] : homes_) {
      if (home == hive.hive) stand(day, colony);
    }
  }
  void take(Date day, const entries::ColonyBegan& began) { house(day, began.colony, began.hive); }
  void take(Date day, const entries::ColonyMoved& moved) { house(day, moved.colony, moved.hive); }
  void take(Date day, const entries::Transfer& moved) { house(day, moved.colony, moved.hive); }
  void take(Date day, const entries::Split& split) { house(day, split.into, split.hive); }
  void take(Date, const entries::Unite& unite) { homes_.erase(unite.from); }
  void take(Date, const entries::ColonyEnded& ended) { homes_.erase(ended.colony); }
  template <class Other>
  void take(Date, const Other&) {}

  void house(Date day, const ColonyId& colony, const HiveId& hive) {
    homes_[colony] = hive;
    stand(day, colony);
  }
  void stand(Date day, const ColonyId& colony) {
    const auto hive = hives_.find(homes_.at(colony));
    if (hive == hives_.end()) return;
    std::vector<Stay>& stays = stays_[colony];
    if (!stays.empty() && stays.back().from == day) stays.pop_back();  // the last word of a day counts
    if (!stays.empty() && stays.back().site == hive->second) return;
    stays.push_back({day, hive->second, stays.empty() ? 0 : km(stays.back().site, hive->second)});
  }
  double km(const SiteId& from, const SiteId& to) const {
    const auto one = sites_.find(from);
    const auto other = sites_.find(to);
    return one == sites_.end() || other == sites_.end() ? 0 : km_between(one->second, other->second);
  }

  std::map<SiteId, entries::Site> sites_;
  std::map<HiveId, SiteId> hives_;
  std::map<ColonyId, HiveId> homes_;
  std::map<ColonyId, std::vector<Stay>> stays_;
};

}  // namespace

std::map<ColonyId, std::vector<Stay>> stays_in(std::span<const entries::Entry> standing) {
  Stays stays;
  for (const entries::Entry& entry : standing) stays.take(entry);
  return std::move(stays).told();
}

double km_between(const entries::Site& one, const entries::Site& other) {
  constexpr double radius_km = 6371.009;  // mean radius of the earth (IUGG)
  constexpr double radian = std::numbers::pi / 180;
  const double north = std::sin((other.latitude_deg - one.latitude_deg) * radian / 2);
  const double east = std::sin((other.longitude_deg - one.longitude_deg) * radian / 2);
  // Haversine: good for short ways too.
  const double half = north * north + std::cos(one.latitude_deg * radian) *
                                          std::cos(other.latitude_deg * radian) * east * east;
  return 2 * radius_km * std::asin(std::sqrt(std::min(1.0, half)));
}

}  // namespace beegarth::garth
