#include <fmt/format.h>

#include <cmath>

#include "garth/beliefs/skill.hpp"

namespace beegarth::garth {
namespace {

std::string skill_figure(double x) {
  if (std::abs(x) < 5e-5) x = 0;  // never "-0.0000"
  return fmt::format("{:.{}f}", x, std::abs(x) >= 100 ? 0 : (std::abs(x) >= 1 ? 2 : 4));
}

std::string percent(double share) {
  return fmt::format("{:.0f}", 100 * share);
}

std::string group_head(const SkillGroup& g) {
  std::string text = fmt::format(
      "\n{}, {}\n    {} cases of {} colonies; mean seen {}, mean forecast {}; score {} ({} to {})\n",
      name_of(g.what), lead_days.at(static_cast<std::size_t>(g.lead)).words, g.score.cases, g.score.colonies,
      skill_figure(g.seen), skill_figure(g.middle), skill_figure(g.score.mean), skill_figure(g.score.low),
      skill_figure(g.score.high));
  if (g.what == Scored::alive) return text;
  text += "    bands of";
  for (std::size_t b = 0; b < band_levels.size(); ++b)
    text += fmt::format("{} {}", b == 0 ? "" : ",", percent(band_levels[b]));
  text += " % hold";
  for (std::size_t b = 0; b < band_levels.size(); ++b) {
    const BandHeld& band = g.bands[b];
    text += fmt::format("{} {} % ({} to {})", b == 0 ? "" : ",", percent(band.inside.mean),
                        percent(band.inside.low), percent(band.inside.high));
  }
  // Told where it matters: a band of counts cannot be cut to its level.
  constexpr double more_than_said = 0.03;
  bool more = false;
  for (std::size_t b = 0; b < band_levels.size(); ++b)
    more = more || g.bands[b].odds > band_levels[b] + more_than_said;
  if (more)
    text += fmt::format("; by their own odds {}, {}, {} %", percent(g.bands[0].odds),
                        percent(g.bands[1].odds), percent(g.bands[2].odds));
  return text + "\n";
}

std::string line_against(const RivalName& rival, const Comparison& c, int all) {
  if (c.cases == 0) return fmt::format("    against {:<33} not enough in the book\n", rival.words);
  const std::string cases = c.cases < all ? fmt::format(", {} of the cases", c.cases) : std::string();
  return fmt::format("    against {:<33} {:>8} : {:>8}   gain {} to {}{}: {}\n", rival.words,
                     skill_figure(c.ours), skill_figure(c.other), skill_figure(c.low), skill_figure(c.high),
                     cases, c.verdict);
}

std::string odds_of(const SkillGroup& g) {
  if (g.odds.cases == 0) return {};
  std::string text = fmt::format(
      "    odds {}: Brier {:.3f} ({:.3f} to {:.3f}) = reliability {:.3f} - resolution {:.3f} + uncertainty "
      "{:.3f} + within "
      "bins {:.3f}\n",
      g.what == Scored::alive ? "of living on" : "of more than last time", g.brier.mean, g.brier.low,
      g.brier.high, g.odds.reliability, g.odds.resolution, g.odds.uncertainty, g.odds.within_bins + 0.0);
  for (const ReliabilityRow& row : g.odds.rows) {
    text += fmt::format("        odds {:>2}-{:<3} %: {:>4} cases, mean odds {:>3} %, happened {:>3} %\n",
                        percent(row.from), percent(row.to), row.cases, percent(row.mean_odds),
                        percent(row.happened));
  }
  return text;
}

// What can be guessed of the quantity at all.
bool makes_sense(const RivalName& rival, Scored what) {
  if (rival.rival == Rival::growth) return what == Scored::mites_per_100_bees;
  return rival.rival != Rival::trend || what != Scored::alive;
}

}  // namespace

std::string skill_text(const Skill& skill) {
  std::string text =
      "Forecasts from the entries up to each look, held against the looks after it.\n"
      "Score: CRPS (alive: Brier), lower is better; first the forecast's, then the guess's, over the same "
      "cases.\n"
      "Gain: mean of (guess - forecast). Intervals are of 80 %, over colonies drawn with replacement.\n"
      "\"Other colonies that day\" is what the others turned out to have, which no forecast could know.\n"
      "Autumn to spring: from a look of September to November to the first from 1 February on (in the south "
      "half a year "
      "later).\n";
  text +=
      skill.whole_sites
          ? fmt::format("{} sites: past changes and time of year are learnt from other sites alone.\n",
                        skill.sites)
          : "One site only: past changes and time of year are learnt from the other colonies of the site.\n";
  for (const SkillGroup& g : skill.groups) {
    text += group_head(g);
    for (const RivalName& rival : rivals) {
      if (makes_sense(rival, g.what))
        text += line_against(rival, g.against.at(static_cast<std::size_t>(rival.rival)), g.score.cases);
    }
    text += odds_of(g);
  }
  return text;
}

}  // namespace beegarth::garth
