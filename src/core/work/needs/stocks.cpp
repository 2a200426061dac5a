// How many stocks are wanted where by which month, and how they may be come by.
#include <cstdlib>
#include <optional>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

// The first of the month that the aim names, this year or next.
Date due_of(const StockAim& aim, Date today) {
  const Date this_year = *Date::from_ymd(today.year(), aim.month, 1);
  return this_year >= today ? this_year : *Date::from_ymd(today.year() + 1, aim.month, 1);
}

}  // namespace

std::string ways_to_more(const Asking& asking) {
  const int month = asking.month(asking.input.today);
  if (month >= 4 && month <= 6)
    return asking.ways_left({{"set bait boxes", {}},
                             {"answer swarm calls", {}},
                             {"split the strongest", {facts::Deed::artificial_swarms}},
                             {"buy nuclei", {}}});
  if (month >= 7 && month <= 8)
    return asking.ways_left({{"answer swarm calls", {}},
                             {"make up late nuclei with bought queens",
                              {facts::Deed::artificial_swarms, facts::Deed::buying_of_queens}},
                             {"buy nuclei", {}}});
  return "order nuclei now, and get bait boxes and empty hives ready for spring";
}

namespace {

std::string ways_to_fewer(const Asking& asking) {
  return asking.will(facts::Deed::uniting)
             ? "choose which to unite with another or to sell, after a look at the health of both"
             : "choose which to sell or to give away, after a look at its health";
}

// "get 2 more stocks at Withy Meadow by 1 August: ..."
std::string asked_for(const Asking& asking, int missing, const std::string& where, const std::string& by) {
  const std::string number =
      missing > 0 ? "get " + counted(missing, "more stock") : "have " + counted(-missing, "stock") + " less";
  return number + " " + where + by + ": " + (missing > 0 ? ways_to_more(asking) : ways_to_fewer(asking));
}

// What the ways that some keepers refuse would spare: the price of a nucleus, or of a queen that lays at
// once.
std::vector<facts::AskedDeed> deeds_asked(const Asking& asking, int missing) {
  if (missing < 0)
    return {{facts::Deed::uniting, false, asking.fact("uniting_saved_kg"), Asking::row("uniting_saved_kg")}};
  const int month = asking.month(asking.input.today);
  if (month < 4 || month > 8) return {};
  std::vector<facts::AskedDeed> asked{
      {facts::Deed::artificial_swarms, false, asking.fact("stock_short_kg"), Asking::row("stock_short_kg")}};
  if (month >= 7)
    asked.push_back({facts::Deed::buying_of_queens, false, asking.fact("bought_queen_kg"),
                     Asking::row("bought_queen_kg")});
  return asked;
}

std::string why_asked(const StockAim& aim, int living, const std::string& where, const std::string& by,
                      int empty_hives) {
  std::string text = counted(living, "stock") + (living == 1 ? " lives " : " live ");
  text += where;
  text += ", " + std::to_string(aim.colonies) + (aim.colonies == 1 ? " is" : " are");
  text += " wanted";
  text += by;
  if (empty_hives > 0) text += "; " + counted(empty_hives, "empty hive") + " there";
  return text;
}

// One site, or all of them together.
struct Where {
  std::string words;  // "at Withy Meadow"
  std::string key;
  int living = 0;
  int empty_hives = 0;
  bool everywhere = false;
};

// Why stocks neither come nor go for now: a suspicion; and none goes that stands in quarantine.
std::optional<std::string> bound_by(const Asking& asking, const Where& where, bool too_many) {
  for (const ColonyStatus& colony : asking.input.colonies) {
    if (!where.everywhere && colony.site != asking.site.site) continue;
    if (colony.suspect)
      return colony.name + " is suspect: no bees move to or from its site until the inspector has cleared it";
    if (too_many && colony.quarantine_until && colony.quarantine_until->date >= asking.input.today)
      return colony.name + " is in quarantine until " + day_text(colony.quarantine_until->date) +
             ": count again when that is over";
  }
  return std::nullopt;
}

facts::Need wanted(const Asking& asking, const StockAim& aim, const Where& where, Date due) {
  const int missing = aim.colonies - where.living;
  const int lead = asking.minutes("stock_lead_days");
  const std::string by = " by " + day_and_month_text(due);
  facts::Need need = asking.need("stocks", asked_for(asking, missing, where.words, by));
  need.asks = deeds_asked(asking, missing);
  need.key = (missing > 0 ? "stocks/" : "stocks-over/") + where.key + "/" + std::to_string(due.year()) + "-" +
             std::to_string(aim.month);
  need.at_home = true;
  need.minutes = asking.minutes("stock_minutes");
  need.clock = facts::Clock::any;
  const char* price = missing > 0 ? "stock_short_kg" : "stock_over_kg";
  // Nobody's stocks more than double by one date (common practice): a wish beyond that weighs no more.
  const int priced = std::min(std::abs(missing), std::max(2, where.living));
  need.loss = loss_when_late(asking, asking.input.today, lead, asking.fact(price) * priced);
  need.why.push_back(because(why_asked(aim, where.living, where.words, by, where.empty_hives), {aim.entry},
                             {asking.source("stock_lead_days"), asking.source(price)}));
  need.cautions.push_back(
      missing > 0 ? "A stock of unknown origin stands apart until its own brood has been looked through."
      : asking.will(facts::Deed::uniting) ? "Never unite a stock that shows a sign of disease."
                                          : "No stock goes to anyone that shows a sign of disease.");
  if (const auto bound = bound_by(asking, where, missing < 0)) need.held = *bound;
  return need;
}

Needs all_wanted(const Asking& asking, const std::vector<StockAim>& aims, const Where& where) {
  Needs needs;
  for (const StockAim& aim : aims) {
    const Date due = due_of(aim, asking.input.today);
    if (due - asking.input.today > asking.minutes("stock_lead_days") || where.living == aim.colonies)
      continue;
    needs.push_back(wanted(asking, aim, where, due));
  }
  return needs;
}

}  // namespace

Needs stocks_wanted(const Asking& asking) {
  const auto& colonies = asking.input.colonies;
  Where here{"at " + asking.site.name, asking.site.site.text(), 0,
             static_cast<int>(asking.site.empty_hives.size())};
  for (const ColonyStatus& colony : colonies) here.living += colony.site == asking.site.site ? 1 : 0;
  Needs needs = all_wanted(asking, asking.site.aims, here);
  if (asking.site.site != asking.input.sites.front().site) return needs;
  Where everywhere{"at all sites", "all", static_cast<int>(colonies.size()), 0, true};
  for (const SiteStatus& site : asking.input.sites)
    everywhere.empty_hives += static_cast<int>(site.empty_hives.size());
  for (facts::Need& need : all_wanted(asking, asking.input.aims, everywhere))
    needs.push_back(std::move(need));
  return needs;
}

}  // namespace beegarth::work
