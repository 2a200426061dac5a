// Empty hives of unlike kinds wait for bees: what may fill them at this time of year, where no aim was said.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

Needs empty_hives(const Asking& asking) {
  const auto& hives = asking.site.empty_hives;
  if (hives.empty() || !asking.site.aims.empty() || !asking.input.aims.empty()) return {};
  constexpr std::size_t most_named = 4;
  std::string named;
  for (std::size_t i = 0; i < std::min(hives.size(), most_named); ++i)
    named += (i == 0 ? "" : ", ") + hives[i];
  if (hives.size() > most_named) named += " and others";
  const bool one = hives.size() == 1;
  facts::Need need =
      asking.need("empty-hives",
                  std::string("say whether you want bees in the ") +
                      (one ? "empty hive" : counted(static_cast<double>(hives.size()), "empty hive")) +
                      " at " + asking.site.name + " (" + named +
                      "), and by which month (a stock_aim); at this time of year: " + ways_to_more(asking));
  need.at_home = true;
  need.clock = facts::Clock::any;
  need.minutes = asking.minutes("stock_minutes");
  need.loss = loss_when_late(asking, asking.input.today, 60,
                             asking.fact("empty_hive_kg") * static_cast<double>(hives.size()));
  need.why.push_back(because(std::string(one ? "a hive stands" : "hives stand") +
                                 " empty and no entry says how many stocks are wanted",
                             {}, {asking.source("empty_hive_kg")}));
  need.cautions.push_back(
      "Old and unknown kit is cleaned or kept out first; a stock of unknown origin stands apart until its "
      "own "
      "brood has been looked through.");
  if (asking.site_suspect)
    need.held =
        "a stock at this site is suspect: no bees move to or from it until the inspector has cleared it";
  return {need};
}

}  // namespace beegarth::work
