#include "work/refused.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "work/words.hpp"

namespace beegarth::work {
namespace {

using facts::Deed;

struct Rule {
  Deed deed;
  std::string_view name;     // as in the book
  std::string_view instead;  // what is left to do where a need is left out
};
constexpr auto rules_known = std::to_array<Rule>({
    {Deed::clipping, "no_clipping", ""},
    {Deed::cutting_of_cells, "no_cutting_of_cells", "a cast may leave; bait boxes may catch it"},
    {Deed::feeding_of_sugar, "no_sugar", "combs of your own honey can be given"},
    {Deed::synthetic_strips, "no_synthetic_strips", ""},
    {Deed::organic_acids, "no_organic_acids", "the next treatment waits for warmth and brood"},
    {Deed::artificial_swarms, "no_artificial_swarms", "more room may hold it, and bait boxes may catch it"},
    {Deed::uniting, "no_uniting", ""},
    {Deed::buying_of_queens, "no_queens_bought", ""},
    {Deed::cutting_of_drone_comb, "no_drone_comb_cut", ""},
    {Deed::holding_of_swarms, "swarms_let_go", "bait boxes may catch what leaves"},
});

std::string in_words(std::string_view rule) {
  std::string words(rule);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

double spared_by(const facts::Need& need) {
  const auto& days = need.loss.by_day;
  const double best = days.empty() ? 0 : *std::min_element(days.begin(), days.end());
  return std::max(0.0, need.loss.never - best);
}

std::string whom(const facts::Need& need) {
  return need.colony ? need.colony->text() : need.site.text();
}

// What one rule costs within this plan, and through which needs.
struct Price {
  double kg = 0;
  bool asked = false;  // some need asks for what is refused
  std::string at;
  std::vector<std::string> sources;

  void add(const facts::Need& need, double worth, const std::string& source) {
    asked = true;
    kg += worth;
    at += (at.empty() ? "" : ", ") + whom(need);
    if (!source.empty() && std::find(sources.begin(), sources.end(), source) == sources.end())
      sources.push_back(source);
  }
};

std::string told(const Rule& rule, const Price& price) {
  const std::string begin = "Your own rule " + in_words(rule.name) + " ";
  if (rule.deed == Deed::cutting_of_drone_comb)
    return begin + "is not reckoned: no plan asks for drone comb to be cut, whether the rule is kept or not.";
  if (!price.asked) return begin + "costs nothing in this plan: nothing in it asks for that.";
  std::string text = begin + "is reckoned to cost " + number_text(price.kg, 1) +
                     " kg of honey equivalent in this plan, at " + price.at;
  for (std::size_t i = 0; i < price.sources.size(); ++i)
    text += (i == 0 ? " (" : "; ") + price.sources[i] + (i + 1 == price.sources.size() ? ")" : "");
  return text + ".";
}

std::string left_out(const Rule& rule, const facts::Need& need) {
  std::string text = "By your own rule " + in_words(rule.name) + " this is left out at " + whom(need) + ": " +
                     need.what + ". It is reckoned to cost " + number_text(spared_by(need), 1) +
                     " kg of honey";
  if (!rule.instead.empty()) text += "; " + std::string(rule.instead);
  return text + ".";
}

}  // namespace

std::set<Deed> refused_by(const std::set<std::string>& rules) {
  std::set<Deed> refused;
  for (const Rule& rule : rules_known)
    if (rules.contains(std::string(rule.name))) refused.insert(rule.deed);
  return refused;
}

KeptRules keep_rules(std::vector<facts::Need> needs, const std::set<Deed>& refused) {
  KeptRules kept;
  std::array<Price, rules_known.size()> prices;
  const auto place_of = [](Deed deed) { return static_cast<std::size_t>(deed); };
  for (facts::Need& need : needs) {
    // What only one refused way could meet is counted once, under the first rule that refuses it.
    const auto broken = std::find_if(need.asks.begin(), need.asks.end(), [&](const auto& asked) {
      return asked.only_way && refused.contains(asked.deed);
    });
    if (broken != need.asks.end()) {
      const std::size_t place = place_of(broken->deed);
      prices.at(place).add(need, spared_by(need), broken->source);
      kept.remarks.push_back(left_out(rules_known.at(place), need));
      continue;
    }
    for (const facts::AskedDeed& asked : need.asks)
      if (refused.contains(asked.deed)) prices.at(place_of(asked.deed)).add(need, asked.worth, asked.source);
    kept.needs.push_back(std::move(need));
  }
  for (std::size_t place = 0; place < rules_known.size(); ++place)
    if (refused.contains(rules_known.at(place).deed))
      kept.remarks.push_back(told(rules_known.at(place), prices.at(place)));
  return kept;
}

}  // namespace beegarth::work
