#include "belief/ranking.hpp"

#include <algorithm>
#include <array>
#include <boost/math/distributions/students_t.hpp>
#include <cmath>
#include <numeric>
#include <set>

#include "belief/kin.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

using Values = std::vector<double>;

double mean_of(std::span<const double> values, std::span<const double> weights) {
  return std::inner_product(values.begin(), values.end(), weights.begin(), 0.0);
}
double quantile_of(std::span<const double> values, std::span<const double> weights, double level) {
  return weighted_quantile(values, weights, ascending_order(values), level);
}
template <class Read>
Values each(const WayFollowed& way, Read&& read) {
  Values values;
  for (const Came& came : way.came) values.push_back(static_cast<double>(read(came)));
  return values;
}
facts::Odds odds_of(const Values& happened, const Supposed& supposed) {
  const double share = std::clamp(mean_of(happened, supposed.weights), 0.0, 1.0);
  return facts::odds_of_share(share, effective_families(supposed.weights, supposed.family));
}
// Of those that live on the last morning.
template <class Read>
double mean_of_living(const WayFollowed& way, const Supposed& supposed, Read&& read) {
  double sum = 0, weight = 0;
  for (std::size_t i = 0; i < way.came.size(); ++i) {
    if (way.came[i].died || way.came[i].ended) continue;
    sum += supposed.weights[i] * static_cast<double>(read(way.came[i]));
    weight += supposed.weights[i];
  }
  return weight > 0 ? sum / weight : 0;
}

// Odds that the mean of the differences is above nothing in truth, by Student's t: the error is the larger of
// those that kin and shared weather give, with as many degrees of freedom as groups less one.
double odds_above_nothing(const Values& differences, const Supposed& supposed) {
  const double mean = mean_of(differences, supposed.weights);
  double odds = 1;
  for (const std::vector<int>* group : {&supposed.family, &supposed.future}) {
    const double error = share_error(supposed.weights, differences, *group);
    if (error <= 0) return mean > 0 ? 1 : 0.5;
    const double groups = effective_families(supposed.weights, *group);
    const double above = boost::math::cdf(boost::math::students_t(std::max(1.0, groups - 1)), mean / error);
    odds = std::min(odds, above);
  }
  return odds;
}

}  // namespace

Expected<Prices> Prices::from(const FactTable& choices, const FactTable& work) {
  struct Row {
    const FactTable& table;
    const char* key;
    double Prices::*at;
  };
  const auto rows = std::to_array<Row>({{work, "colony_lost_kg", &Prices::colony_lost},
                                        {work, "uniting_saved_kg", &Prices::stock_united},
                                        {work, "prime_swarm_kg", &Prices::swarm_left},
                                        {choices, "surplus_kg", &Prices::surplus},
                                        {choices, "thousand_bees_kg", &Prices::thousand_bees},
                                        {choices, "hundred_mites_kg", &Prices::hundred_mites},
                                        {choices, "visit_kg", &Prices::visit},
                                        {choices, "treatment_kg", &Prices::treatment},
                                        {choices, "feed_kg", &Prices::feed},
                                        {choices, "queen_kg", &Prices::queen},
                                        {choices, "new_stock_kg", &Prices::new_stock}});
  Prices prices;
  for (const Row& row : rows) {
    const auto value = row.table.value(row.key);
    if (!value) return value.problem();
    prices.*row.at = *value;
  }
  return prices;
}

double price_of_deeds(const Way& way, const ColonyId& colony, const Prices& prices) {
  std::set<Date> days;
  double sum = 0;
  for (const Intended& deed : way.deeds) {
    days.insert(deed.date);
    if (const auto* feed = std::get_if<entries::Feed>(&deed.payload)) sum += feed->kg * prices.feed;
    if (std::holds_alternative<entries::Treatment>(deed.payload)) sum += prices.treatment;
    if (std::holds_alternative<entries::Split>(deed.payload)) sum -= prices.new_stock;
    const auto* queen = std::get_if<entries::Queen>(&deed.payload);
    if (queen != nullptr && queen->event == entries::QueenEvent::introduced) sum += prices.queen;
    const auto* unite = std::get_if<entries::Unite>(&deed.payload);
    // The other side of a union: a stock less, for whoever keeps both.
    if (unite != nullptr && unite->colony == colony) sum += prices.colony_lost - prices.stock_united;
  }
  return sum + static_cast<double>(days.size()) * prices.visit;
}

double price_of(const Came& came, const Prices& prices) {
  double sum = -prices.surplus * came.surplus_kg;
  if (came.swarmed) sum += prices.swarm_left;
  if (came.died) return sum + prices.colony_lost;
  if (came.ended) return sum + prices.colony_lost - prices.stock_united;
  return sum - prices.thousand_bees * came.bees / 1000 + prices.hundred_mites * came.mites / 100;
}

std::vector<WayJudged> rank_ways(const Supposed& supposed, std::span<const Way> ways, const ColonyId& colony,
                                 const Prices& prices) {
  const std::span<const double> weights = supposed.weights;
  std::vector<WayJudged> judged;
  std::vector<Values> costs;
  for (std::size_t w = 0; w < ways.size(); ++w) {
    const WayFollowed& followed = supposed.ways[w];
    WayJudged one{.way = w, .deeds_kg = price_of_deeds(ways[w], colony, prices)};
    costs.push_back(each(followed, [&](const Came& came) { return one.deeds_kg + price_of(came, prices); }));
    one.cost_kg = mean_of(costs[w], weights);
    one.cost_low_kg = quantile_of(costs[w], weights, 0.1);
    one.cost_high_kg = quantile_of(costs[w], weights, 0.9);
    one.died = odds_of(each(followed, [](const Came& came) { return came.died ? 1.0 : 0.0; }), supposed);
    one.swarmed =
        odds_of(each(followed, [](const Came& came) { return came.swarmed ? 1.0 : 0.0; }), supposed);
    one.surplus_kg = mean_of(each(followed, [](const Came& came) { return came.surplus_kg; }), weights);
    one.bees = mean_of_living(followed, supposed, [](const Came& came) { return came.bees; });
    one.mites = mean_of_living(followed, supposed, [](const Came& came) { return came.mites; });
    one.least_stores_kg =
        mean_of_living(followed, supposed, [](const Came& came) { return came.least_stores_kg; });
    judged.push_back(one);
  }
  std::stable_sort(judged.begin(), judged.end(),
                   [](const WayJudged& a, const WayJudged& b) { return a.cost_kg < b.cost_kg; });
  for (WayJudged& one : judged) {
    const Values& first = costs[judged.front().way];
    Values dearer = costs[one.way], worse(dearer.size());
    for (std::size_t i = 0; i < dearer.size(); ++i) {
      dearer[i] -= first[i];
      worse[i] = dearer[i] > 0 ? 1 : dearer[i] < 0 ? 0 : 0.5;
    }
    one.dearer_kg = mean_of(dearer, weights);
    one.dearer_low_kg = quantile_of(dearer, weights, 0.1);
    one.dearer_high_kg = quantile_of(dearer, weights, 0.9);
    one.dearer_in = std::clamp(mean_of(worse, weights), 0.0, 1.0);
    one.first_better = &one == &judged.front() ? 0.5 : odds_above_nothing(dearer, supposed);
  }
  return judged;
}

}  // namespace beegarth::belief
