#include "garth/beliefs/skill.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "base/random.hpp"
#include "garth/beliefs/believe.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t looks_before = 2;  // the first forecast is made at the second look
constexpr int same_look_days = 3;        // looks of different colonies so near count as the same round
// ln 5 in 2.5 months: mites are back within that time after an 80 % kill (official handbook, as in
// tables/observation.toml).
constexpr double growth_per_day = 0.021;
constexpr int farthest_days = 300;

struct Measure {
  const char* name;
  std::optional<double> SeenThen::*value;
};
constexpr std::array<Measure, 4> measures{{{"bees", &SeenThen::bees},
                                           {"capped_cells", &SeenThen::capped_cells},
                                           {"mites_per_100_bees", &SeenThen::mites_per_100_bees},
                                           {"infested_share", &SeenThen::infested_share}}};

const belief::Predicted* find(const std::vector<belief::Predicted>& list, std::string_view quantity,
                              Date date) {
  const auto at = std::find_if(list.begin(), list.end(),
                               [&](const auto& p) { return p.quantity == quantity && p.date == date; });
  return at == list.end() ? nullptr : &*at;
}

// What a sample of so many bees or cells would show of a member's true value: the errors of
// tables/observation.toml.
class Sampler {
 public:
  Sampler(const FactTable& table, std::uint64_t seed, const ColonyId& colony)
      : seed_(seed),
        colony_(stable_hash(colony.text())),
        wash_recovery_(table.value("wash_recovery").value()),
        roll_recovery_(table.value("roll_recovery").value()),
        size_(table.value("sample_size").value()),
        correlation_(table.value("brood_sample_correlation").value()) {}

  belief::Predicted examined(belief::Predicted there, int bees, bool rolled) const {
    for (std::size_t i = 0; i < there.values.size(); ++i) {
      Stream stream = stream_of(there.date, i, 0);
      const double mean = bees * there.values[i] / 100 * (rolled ? roll_recovery_ : wash_recovery_);
      there.values[i] = 100.0 * stream.poisson(mean * stream.gamma(size_) / size_) / bees;
    }
    return in_order(std::move(there));
  }
  belief::Predicted opened(belief::Predicted there, int cells) const {
    const double strength = 1 / correlation_ - 1;
    for (std::size_t i = 0; i < there.values.size(); ++i) {
      Stream stream = stream_of(there.date, i, 1);
      const double p = std::clamp(there.values[i], 1e-4, 1 - 1e-4);
      there.values[i] =
          static_cast<double>(stream.binomial(cells, stream.beta(p * strength, (1 - p) * strength))) / cells;
    }
    return in_order(std::move(there));
  }

 private:
  Stream stream_of(Date date, std::size_t member, int kind) const {
    return Stream({.seed = seed_,
                   .colony = colony_,
                   .member = static_cast<std::uint32_t>(member),
                   .day = date.day_number() * 2 + kind,
                   .purpose = Purpose::scoring});
  }
  static belief::Predicted in_order(belief::Predicted p) {
    std::vector<std::pair<double, double>> pairs;
    for (std::size_t i = 0; i < p.values.size(); ++i) pairs.emplace_back(p.values[i], p.weights[i]);
    std::sort(pairs.begin(), pairs.end());
    for (std::size_t i = 0; i < pairs.size(); ++i) std::tie(p.values[i], p.weights[i]) = pairs[i];
    return p;
  }

  std::uint64_t seed_;
  std::uint64_t colony_;
  double wash_recovery_, roll_recovery_, size_, correlation_;
};

std::optional<belief::Predicted> shown(const belief::Forecast& forecast, std::string_view quantity,
                                       const SeenThen& then, const Sampler& sampler) {
  const bool by_sample = quantity == "mites_per_100_bees" || quantity == "infested_share";
  const auto* p = find(by_sample ? forecast.there : forecast.written, quantity, then.date);
  if (p == nullptr) return std::nullopt;
  if (quantity == "mites_per_100_bees") return sampler.examined(*p, then.examined, then.rolled);
  if (quantity == "infested_share") return sampler.opened(*p, then.opened);
  return *p;
}

// The other colonies' values in the same round of looks.
std::vector<double> others_on(const std::vector<SeenColony>& all, const ColonyId& own, Date date,
                              std::optional<double> SeenThen::*value) {
  std::vector<double> values;
  for (const SeenColony& other : all) {
    if (other.colony == own) continue;
    for (const SeenThen& then : other.looks) {
      if (std::abs(then.date - date) > same_look_days || !(then.*value)) continue;
      values.push_back(*(then.*value));
      break;
    }
  }
  return values;
}

std::optional<double> others_alive(const std::vector<SeenColony>& all, const ColonyId& own, Date date) {
  double alive = 0;
  double count = 0;
  for (const SeenColony& other : all) {
    if (other.colony == own) continue;
    for (const SeenThen& then : other.looks) {
      if (std::abs(then.date - date) > same_look_days) continue;
      alive += then.alive ? 1 : 0;
      ++count;
      break;
    }
  }
  return count > 0 ? std::optional<double>(alive / count) : std::nullopt;
}

class Scorer {
 public:
  Scorer(const Session& session, const std::vector<SeenColony>& all, std::vector<SkillCase>& cases)
      : session_(session), all_(all), cases_(cases) {}

  void score(const SeenColony& seen, std::size_t origin, const belief::Forecast& forecast) {
    const Sampler sampler(session_.tables["observation"], session_.seed, seen.colony);
    for (std::size_t l = origin + 1; l < seen.looks.size(); ++l) {
      const SeenThen& then = seen.looks[l];
      if (then.date - seen.looks[origin].date > farthest_days) break;
      for (const Measure& measure : measures) {
        if (!(then.*measure.value)) continue;
        const auto p = shown(forecast, measure.name, then, sampler);
        if (p) cases_.push_back(number_case(seen, origin, then, measure, *p));
      }
      const auto* alive = find(forecast.there, "alive", then.date);
      if (alive != nullptr)
        cases_.push_back(alive_case(seen, origin, then, std::clamp(alive->mean(), 0.0, 1.0)));
    }
  }

 private:
  SkillCase number_case(const SeenColony& seen, std::size_t origin, const SeenThen& then,
                        const Measure& measure, const belief::Predicted& p) const {
    const double value = *(then.*measure.value);
    SkillCase c{.colony = seen.colony.text(),
                .quantity = measure.name,
                .from = seen.looks[origin].date,
                .on = then.date};
    c.seen = value;
    c.middle = p.quantile(0.5);
    c.ours = crps(p.values, p.weights, value);
    c.inside = value >= p.quantile(0.1) && value <= p.quantile(0.9);
    for (std::size_t l = origin + 1; l-- > 0;) {
      const auto& last = seen.looks[l].*measure.value;
      if (!last) continue;
      c.last_value = std::abs(*last - value);
      if (c.quantity == "mites_per_100_bees")
        c.growth = std::abs(*last * std::exp(growth_per_day * (then.date - seen.looks[l].date)) - value);
      break;
    }
    auto others = others_on(all_, seen.colony, then.date, measure.value);
    if (!others.empty()) c.others = crps(std::move(others), value);
    return c;
  }

  SkillCase alive_case(const SeenColony& seen, std::size_t origin, const SeenThen& then, double p) const {
    SkillCase c{
        .colony = seen.colony.text(), .quantity = "alive", .from = seen.looks[origin].date, .on = then.date};
    c.seen = then.alive ? 1 : 0;
    c.middle = p;
    c.ours = brier(p, then.alive);
    c.inside = true;  // a yes or no has no band; not shown
    c.last_value = brier(1, then.alive);
    if (const auto share = others_alive(all_, seen.colony, then.date)) c.others = brier(*share, then.alive);
    return c;
  }

  const Session& session_;
  const std::vector<SeenColony>& all_;
  std::vector<SkillCase>& cases_;
};

struct Origin {
  const SeenColony* seen;
  std::size_t look;
};

std::map<Date, std::vector<Origin>> origins_of(const std::vector<SeenColony>& all) {
  std::map<Date, std::vector<Origin>> origins;
  for (const SeenColony& seen : all) {
    for (std::size_t l = looks_before - 1; l + 1 < seen.looks.size(); ++l) {
      if (seen.looks[l].alive) origins[seen.looks[l].date].push_back({&seen, l});
    }
  }
  return origins;
}

// The book as it stood on the day: whatever happened later is not in the session's state.
Outcome score_from(Session& session, Date day, const std::vector<Origin>& origins, Scorer& scorer) {
  session.today = day;
  if (auto outcome = refresh(session); !outcome) return outcome;
  std::vector<ForecastWish> wishes;
  std::vector<Origin> wished_for;
  Date horizon = day;
  for (const Origin& origin : origins) {
    const auto colony = session.state.colonies.find(origin.seen->colony);
    if (colony == session.state.colonies.end() || colony->second.ended) continue;
    ForecastWish wish{origin.seen->colony, {}};
    for (std::size_t l = origin.look + 1; l < origin.seen->looks.size(); ++l) {
      const Date date = origin.seen->looks[l].date;
      if (date - day <= farthest_days) wish.dates.push_back(date);
    }
    if (wish.dates.empty()) continue;
    horizon = std::max(horizon, wish.dates.back());
    wishes.push_back(std::move(wish));
    wished_for.push_back(origin);
  }
  if (wishes.empty()) return Done{};
  const auto skies = skies_of(session, horizon);
  if (!skies) return skies.problem();
  const auto forecasts = forecasts_of(session, *skies, wishes);
  if (!forecasts) return forecasts.problem();
  for (std::size_t i = 0; i < wished_for.size(); ++i)
    scorer.score(*wished_for[i].seen, wished_for[i].look, (*forecasts)[i]);
  return Done{};
}

std::string lead_of(const SkillCase& c) {
  const int days = c.on - c.from;
  return days <= 7 ? "1-7 days" : (days <= 14 ? "8-14 days" : (days <= 28 ? "15-28 days" : "over 28 days"));
}

std::vector<SkillGroup> groups_of(const std::vector<SkillCase>& cases, std::uint64_t seed) {
  std::vector<SkillGroup> groups;
  for (const char* quantity : {"bees", "capped_cells", "mites_per_100_bees", "infested_share", "alive"}) {
    for (const char* lead : {"1-7 days", "8-14 days", "15-28 days", "over 28 days"}) {
      SkillGroup group{.quantity = quantity, .lead = lead};
      std::vector<ScorePair> last, others, growth;
      for (const SkillCase& c : cases) {
        if (c.quantity != quantity || lead_of(c) != lead) continue;
        ++group.cases;
        group.seen += c.seen;
        group.middle += c.middle;
        group.covered += c.inside ? 1 : 0;
        if (c.last_value) last.push_back({c.colony, c.ours, *c.last_value});
        if (c.others) others.push_back({c.colony, c.ours, *c.others});
        if (c.growth) growth.push_back({c.colony, c.ours, *c.growth});
      }
      if (group.cases == 0) continue;
      group.seen /= group.cases;
      group.middle /= group.cases;
      group.covered /= group.cases;
      const std::string name = group.quantity + " " + group.lead;
      group.last_value = compare(last, name + " last", seed);
      group.others = compare(others, name + " others", seed);
      group.growth = compare(growth, name + " growth", seed);
      groups.push_back(std::move(group));
    }
  }
  return groups;
}

}  // namespace

Expected<Skill> skill_of(Session& session) {
  Skill skill{.today = session.today, .cases = {}, .groups = {}};
  const std::vector<SeenColony> all = seen_in(session);
  Scorer scorer(session, all, skill.cases);
  Outcome outcome = Done{};
  for (const auto& [day, origins] : origins_of(all)) {
    outcome = score_from(session, day, origins, scorer);
    if (!outcome) break;
  }
  session.today = skill.today;
  if (const auto back = refresh(session); !back) return back.problem();
  if (!outcome) return outcome.problem();
  if (skill.cases.empty()) {
    return bad_input("no colony has three looks with figures", session.path,
                     "a forecast is scored from the third look on");
  }
  skill.groups = groups_of(skill.cases, session.seed);
  return skill;
}

}  // namespace beegarth::garth
