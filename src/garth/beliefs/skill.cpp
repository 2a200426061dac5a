#include "garth/beliefs/skill.hpp"

#include <algorithm>
#include <map>
#include <set>

#include "garth/beliefs/believe.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t looks_before = 2;  // the first forecast is made at the second look

const belief::Predicted* find_predicted(const std::vector<belief::Predicted>& list, std::string_view quantity,
                                        Date date) {
  const auto at = std::find_if(list.begin(), list.end(),
                               [&](const auto& p) { return p.quantity == quantity && p.date == date; });
  return at == list.end() ? nullptr : &*at;
}

double weight_within(const belief::Predicted& p, double low, double high) {
  double sum = 0;
  for (std::size_t i = 0; i < p.values.size(); ++i) {
    if (p.values[i] >= low && p.values[i] <= high) sum += p.weights[i];
  }
  return sum;
}

// Those equal to the last figure may be either.
double odds_above(const belief::Predicted& p, double last) {
  double sum = 0;
  for (std::size_t i = 0; i < p.values.size(); ++i)
    sum += p.weights[i] * (p.values[i] > last ? 1.0 : (p.values[i] == last ? 0.5 : 0.0));
  return std::min(1.0, sum);
}

class Scorer {
 public:
  Scorer(const Rivals& plain, std::vector<SkillCase>& cases) : rivals_(plain), cases_(cases) {}

  void score(const SeenColony& seen, std::size_t origin, const belief::Forecast& forecast) {
    for (std::size_t l = origin + 1; l < seen.looks.size(); ++l) {
      const auto lead = lead_between(seen, origin, l);
      if (!lead) continue;
      for (const Scored what : all_scored) {
        const auto value = value_of(seen.looks[l], what);
        if (!value) continue;
        const auto* p = find_predicted(what == Scored::alive ? forecast.there : forecast.written,
                                       name_of(what), seen.looks[l].date);
        if (p != nullptr) cases_.push_back(scored({seen, origin, l, *lead, what}, *value, *p));
      }
    }
  }

 private:
  SkillCase scored(const Asked& asked, double value, const belief::Predicted& p) const {
    SkillCase c{.colony = asked.own.colony.text(),
                .site = asked.own.site.text(),
                .what = asked.what,
                .lead = asked.lead,
                .from = asked.own.looks[asked.origin].date,
                .on = asked.own.looks[asked.then].date};
    c.seen = value;
    c.ours = crps(p.values, p.weights, value);
    for (std::size_t b = 0; b < band_levels.size(); ++b) {
      const double low = p.quantile(0.5 - band_levels[b] / 2);
      const double high = p.quantile(0.5 + band_levels[b] / 2);
      c.bands[b] = {value >= low && value <= high, weight_within(p, low, high)};
    }
    const auto last = rivals_.guess(Rival::last_value, asked);
    if (asked.what == Scored::alive) {
      c.middle = std::clamp(p.mean(), 0.0, 1.0);
      c.odds = c.middle;
      c.happened = value > 0.5;
    } else {
      c.middle = p.quantile(0.5);
      if (last && last->values[0] != value) {
        c.odds = odds_above(p, last->values[0]);
        c.happened = value > last->values[0];
      }
    }
    for (const RivalName& rival : rivals) {
      if (const auto guess = rivals_.guess(rival.rival, asked))
        c.others.at(static_cast<std::size_t>(rival.rival)) = crps(guess->values, guess->weights, value);
    }
    return c;
  }

  const Rivals& rivals_;
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

std::vector<belief::LookToCome> looks_to_come(const Origin& origin) {
  std::vector<belief::LookToCome> looks;
  for (std::size_t l = origin.look + 1; l < origin.seen->looks.size(); ++l) {
    const SeenThen& then = origin.seen->looks[l];
    if (lead_between(*origin.seen, origin.look, l))
      looks.push_back({then.date, then.by_seams, then.examined, then.rolled, then.opened});
  }
  return looks;
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
    ForecastWish wish{origin.seen->colony, looks_to_come(origin)};
    if (wish.looks.empty()) continue;
    horizon = std::max(horizon, wish.looks.back().date);
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

}  // namespace

Expected<Skill> skill_of(Session& session) {
  Skill skill{.today = session.today};
  const std::vector<SeenColony> all = seen_in(session);
  const Rivals plain(all, session.tables["observation"], session.seed);
  skill.whole_sites = plain.whole_sites();
  Scorer scorer(plain, skill.cases);
  Outcome outcome = Done{};
  for (const auto& [day, origins] : origins_of(all)) {
    outcome = score_from(session, day, origins, scorer);
    if (!outcome) break;
  }
  session.today = skill.today;
  if (const auto back = refresh(session); !back) return back.problem();
  if (!outcome) return outcome.problem();
  if (skill.cases.empty()) {
    return bad_input(
        "no colony has three looks with figures", session.path,
        "a forecast is made at the second look and scored at a later one, 4 to 300 days after it");
  }
  std::set<std::string> sites;
  for (const SkillCase& c : skill.cases) sites.insert(c.site);
  skill.sites = static_cast<int>(sites.size());
  skill.groups = skill_groups(skill.cases, session.seed);
  return skill;
}

}  // namespace beegarth::garth
