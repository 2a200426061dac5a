#include "garth/beliefs/skill_rivals.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "base/random.hpp"
#include "facts/dwelling.hpp"

namespace beegarth::garth {
namespace {

constexpr int same_look_days = 3;         // looks of different colonies so near count as the same round
constexpr int same_season_days = 10;      // either side of the day of the year
constexpr std::size_t fewest_others = 5;  // colonies that something is learnt from
constexpr double steepest_trend = 4;      // times the last value, or a quarter of it
constexpr int growth_draws = 400;
// ln 5 in 2.5 months: mites are back within that time after an 80 % kill (official handbook, as in
// tables/observation.toml).
constexpr double growth_per_day = 0.021;

double most_of(Scored what) {
  const bool share = what == Scored::infested_share || what == Scored::alive;
  return share ? 1 : std::numeric_limits<double>::infinity();
}

std::optional<std::size_t> last_with(const SeenColony& seen, std::size_t until, Scored what) {
  for (std::size_t l = until + 1; l-- > 0;) {
    if (value_of(seen.looks[l], what)) return l;
  }
  return std::nullopt;
}

Guess one_value(double value) {
  return {{value}, {1}};
}

// Values by whom they are learnt from: every colony weighs the same.
class Learnt {
 public:
  void add(const SeenColony& from, double value) { values_[from.colony].push_back(value); }
  std::optional<Guess> guess(std::size_t fewest) const {
    if (values_.size() < fewest) return std::nullopt;
    std::vector<std::pair<double, double>> pairs;
    for (const auto& [colony, values] : values_) {
      for (const double value : values)
        pairs.emplace_back(value, 1.0 / static_cast<double>(values_.size() * values.size()));
    }
    std::sort(pairs.begin(), pairs.end());
    Guess guess;
    for (const auto& [value, weight] : pairs) {
      guess.values.push_back(value);
      guess.weights.push_back(weight);
    }
    return guess;
  }

 private:
  std::map<ColonyId, std::vector<double>> values_;
};

int days_apart_in_the_year(Date a, Date b) {
  const int apart = std::abs(a.day_of_year() - b.day_of_year());
  return std::min(apart, 365 - apart);
}

}  // namespace

Rivals::Rivals(const std::vector<SeenColony>& all, const FactTable& observation, std::uint64_t seed)
    : all_(all),
      seed_(seed),
      floor_bees_(observation.value("estimate_floor_seams").value() * facts::Dwelling{}.bees_per_seam),
      floor_cells_(observation.value("estimate_floor_cells").value()),
      floor_stores_(observation.value("estimate_floor_stores").value()),
      sample_size_(observation.value("sample_size").value()),
      wash_recovery_(observation.value("wash_recovery").value()),
      roll_recovery_(observation.value("roll_recovery").value()) {
  std::set<SiteId> sites;
  for (const SeenColony& seen : all) {
    if (!seen.looks.empty()) sites.insert(seen.site);
  }
  whole_sites_ = sites.size() > 1;
}

bool Rivals::may_learn_from(const SeenColony& other, const SeenColony& own) const {
  return whole_sites_ ? other.site != own.site : other.colony != own.colony;
}

// Added before a logarithm is taken, so that none has one: the least that is told from none.
double Rivals::floor_of(Scored what) const {
  switch (what) {
    case Scored::bees:
      return floor_bees_;
    case Scored::capped_cells:
      return floor_cells_;
    case Scored::stores_kg:
    case Scored::weight_kg:
      return floor_stores_;
    case Scored::mites_per_100_bees:
      return 100.0 / 300;  // one mite in the usual sample
    case Scored::infested_share:
    case Scored::alive:
      return 0.01;  // one in a hundred cells
  }
  return 1;
}

std::optional<Guess> Rivals::guess(Rival rival, const Asked& asked) const {
  switch (rival) {
    case Rival::last_value: {
      const auto last = last_with(asked.own, asked.origin, asked.what);
      return last ? std::optional(one_value(*value_of(asked.own.looks[*last], asked.what))) : std::nullopt;
    }
    case Rival::last_value_and_changes:
      return past_changes(asked);
    case Rival::trend:
      return trend(asked);
    case Rival::climatology:
      return asked.what == Scored::alive ? survival(asked) : time_of_year(asked);
    case Rival::growth:
      return growth(asked);
    case Rival::other_colonies:
      return same_round(asked);
  }
  return std::nullopt;
}

// The last value, and by how much it changed in others over such a lead, as far as that was known on the day.
std::optional<Guess> Rivals::past_changes(const Asked& asked) const {
  const auto last = last_with(asked.own, asked.origin, asked.what);
  if (!last) return std::nullopt;
  const double from = *value_of(asked.own.looks[*last], asked.what);
  Learnt learnt;
  for (const SeenColony& other : all_) {
    if (!may_learn_from(other, asked.own)) continue;
    for (std::size_t b = 1; b < other.looks.size(); ++b) {
      if (other.looks[b].date > asked.own.looks[asked.origin].date) break;
      const auto later = value_of(other.looks[b], asked.what);
      for (std::size_t a = 0; later && a < b; ++a) {
        const auto earlier = value_of(other.looks[a], asked.what);
        if (!earlier || lead_between(other, a, b) != asked.lead) continue;
        learnt.add(other, std::clamp(from + *later - *earlier, 0.0, most_of(asked.what)));
      }
    }
  }
  return learnt.guess(fewest_others);
}

// A straight line in the logarithm.
std::optional<Guess> Rivals::trend(const Asked& asked) const {
  if (asked.what == Scored::alive) return std::nullopt;
  const auto second = last_with(asked.own, asked.origin, asked.what);
  if (!second || *second == 0) return std::nullopt;
  const auto first = last_with(asked.own, *second - 1, asked.what);
  if (!first) return std::nullopt;
  const SeenThen& a = asked.own.looks[*first];
  const SeenThen& b = asked.own.looks[*second];
  const double floor = floor_of(asked.what);
  const double now = std::log(*value_of(b, asked.what) + floor);
  const double per_day = (now - std::log(*value_of(a, asked.what) + floor)) / (b.date - a.date);
  const double most = std::log(steepest_trend);
  const double change = std::clamp(per_day * (asked.own.looks[asked.then].date - b.date), -most, most);
  return one_value(std::clamp(std::exp(now + change) - floor, 0.0, most_of(asked.what)));
}

// What others had at that time of the year, of any year: for each colony and year the look nearest to it.
std::optional<Guess> Rivals::time_of_year(const Asked& asked) const {
  const Date date = asked.own.looks[asked.then].date;
  Learnt learnt;
  for (const SeenColony& other : all_) {
    if (!may_learn_from(other, asked.own) || other.south != asked.own.south) continue;
    std::map<int, std::pair<int, double>> nearest;  // by year, counted from half a year before the day
    for (const SeenThen& look : other.looks) {
      const auto value = value_of(look, asked.what);
      const int apart = days_apart_in_the_year(look.date, date);
      if (!value || apart > same_season_days) continue;
      const int year = (look.date + (183 - date.day_of_year())).year();
      const auto at = nearest.find(year);
      if (at == nearest.end() || apart < at->second.first) nearest[year] = {apart, *value};
    }
    for (const auto& [year, best] : nearest) learnt.add(other, best.second);
  }
  return learnt.guess(fewest_others);
}

// How many of the others that lived at the forecast's time of the year lived at the later time.
std::optional<Guess> Rivals::survival(const Asked& asked) const {
  const Date from = asked.own.looks[asked.origin].date;
  const int lead = asked.own.looks[asked.then].date - from;
  Learnt learnt;
  for (const SeenColony& other : all_) {
    if (!may_learn_from(other, asked.own) || other.south != asked.own.south) continue;
    for (const SeenThen& start : other.looks) {
      if (!start.alive || days_apart_in_the_year(start.date, from) > same_season_days) continue;
      const Date end = start.date + lead;
      for (const SeenThen& later : other.looks) {
        const bool then = later.date > start.date && std::abs(later.date - end) <= same_season_days;
        const bool dead_by_then = !later.alive && later.date > start.date && later.date < end;
        if (!then && !dead_by_then) continue;
        learnt.add(other, later.alive ? 1 : 0);
        break;
      }
    }
  }
  return learnt.guess(fewest_others);
}

// Mites grow by a fixed rate from the last count, with the error of both counts. Seen were m mites on n bees:
// given Jeffreys' prior the rate in that sample is gamma(m + 1/2) / n; a sample's rate is the colony's times
// gamma(k) / k (the negative binomial of tables/observation.toml), so that the colony's is the sample's
// divided by gamma(k - 1/2) / k.
std::optional<Guess> Rivals::growth(const Asked& asked) const {
  if (asked.what != Scored::mites_per_100_bees) return std::nullopt;
  const auto last = last_with(asked.own, asked.origin, asked.what);
  if (!last) return std::nullopt;
  const SeenThen& before = asked.own.looks[*last];
  const SeenThen& then = asked.own.looks[asked.then];
  const auto recovery = [&](const SeenThen& look) { return look.rolled ? roll_recovery_ : wash_recovery_; };
  const double grown =
      std::exp(growth_per_day * (then.date - before.date)) * recovery(then) / recovery(before);
  Guess guess;
  for (int i = 0; i < growth_draws; ++i) {
    Stream stream({.seed = seed_,
                   .colony = stable_hash(asked.own.colony.text()),
                   .member = static_cast<std::uint32_t>(i),
                   .day = before.date.day_number() * 1024 + (then.date - before.date),
                   .purpose = Purpose::scoring});
    const double in_sample = stream.gamma(before.mites + 0.5) / before.examined;
    const double in_colony = in_sample / (stream.gamma(sample_size_ - 0.5) / sample_size_);
    const double mean = then.examined * in_colony * grown * stream.gamma(sample_size_) / sample_size_;
    guess.values.push_back(100.0 * stream.poisson(std::min(mean, 1e6)) / then.examined);
  }
  std::sort(guess.values.begin(), guess.values.end());
  guess.weights.assign(guess.values.size(), 1.0 / growth_draws);
  return guess;
}

// What the other colonies turned out to have in the same round of looks, the site's own included: no forecast
// can know it.
std::optional<Guess> Rivals::same_round(const Asked& asked) const {
  const Date date = asked.own.looks[asked.then].date;
  Learnt learnt;
  for (const SeenColony& other : all_) {
    if (other.colony == asked.own.colony) continue;
    for (const SeenThen& look : other.looks) {
      const auto value = value_of(look, asked.what);
      if (std::abs(look.date - date) > same_look_days || !value) continue;
      learnt.add(other, *value);
      break;
    }
  }
  return learnt.guess(1);
}

}  // namespace beegarth::garth
