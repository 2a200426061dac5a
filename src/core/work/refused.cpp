#include "work/refused.hpp"

#include <algorithm>
#include <array>
#include <string_view>

#include "work/words.hpp"

namespace beegarth::work {
namespace {

struct Refusal {
  std::string_view rule;
  std::string_view needs_of;  // the kind of need that would break it
  std::string_view instead;   // what is left to do
};
constexpr auto refusals = std::to_array<Refusal>({
    {"no_sugar", "feed", "combs of your own honey can be given, or the colony united in time"},
    {"no_artificial_swarms", "split", "more room may hold it, and bait boxes may catch the swarm"},
    {"no_cutting_of_cells", "thin-cells", "a cast may leave; bait boxes may catch it"},
});

bool is_of_kind(const facts::Need& need, std::string_view kind) {
  return need.key.size() > kind.size() && need.key.compare(0, kind.size(), kind) == 0 &&
         need.key[kind.size()] == '/';
}

std::string in_words(std::string_view rule) {
  std::string words(rule);
  std::replace(words.begin(), words.end(), '_', ' ');
  return words;
}

double price_of(const facts::Need& need) {
  const auto& days = need.loss.by_day;
  const double best = days.empty() ? 0 : *std::min_element(days.begin(), days.end());
  return std::max(0.0, need.loss.never - best);
}

void narrow_stocks(facts::Need& need, const std::set<std::string>& rules) {
  if (is_of_kind(need, "stocks-over") && rules.contains("no_uniting"))
    need.cautions.push_back("By your own rule no uniting: to sell or give away is left.");
}

// Which of the classes of treatment are left; both refused leaves heat, brood breaks and combs cut out.
void narrow_treatment(facts::Need& need, const std::set<std::string>& rules) {
  if (!is_of_kind(need, "treat")) return;
  if (rules.contains("no_synthetic_strips"))
    need.cautions.push_back(
        "By your own rule no synthetic strips: thymol, formic or oxalic acid, or a brood break are left.");
  if (rules.contains("no_organic_acids"))
    need.cautions.push_back("By your own rule no organic acids: thymol, strips or a brood break are left.");
}

}  // namespace

KeptRules keep_rules(std::vector<facts::Need> needs, const std::set<std::string>& rules) {
  KeptRules kept;
  for (facts::Need& need : needs) {
    narrow_treatment(need, rules);
    narrow_stocks(need, rules);
    const auto broken = std::find_if(refusals.begin(), refusals.end(), [&](const Refusal& one) {
      return rules.contains(std::string(one.rule)) && is_of_kind(need, one.needs_of);
    });
    if (broken == refusals.end()) {
      kept.needs.push_back(std::move(need));
      continue;
    }
    const std::string whom = need.colony ? need.colony->text() : need.site.text();
    kept.remarks.push_back("By your own rule " + in_words(broken->rule) + " this is left out at " + whom +
                           ": " + need.what + ". It is reckoned to cost " + number_text(price_of(need), 1) +
                           " kg of honey; " + std::string(broken->instead) + ".");
  }
  return kept;
}

}  // namespace beegarth::work
