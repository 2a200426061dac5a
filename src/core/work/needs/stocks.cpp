// How many stocks are wanted where by which month, and how they may be come by.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

// The first of the month that the aim names, this year or next.
Date due_of(const StockAim& aim, Date today) {
  const Date this_year = *Date::from_ymd(today.year(), aim.month, 1);
  return this_year >= today ? this_year : *Date::from_ymd(today.year() + 1, aim.month, 1);
}

std::string ways_to_more(int month) {
  if (month >= 4 && month <= 6)
    return "set bait boxes, answer swarm calls, split the strongest, or buy nuclei";
  if (month >= 7 && month <= 8)
    return "answer swarm calls, make up late nuclei with bought queens, or buy nuclei";
  return "order nuclei now, and get bait boxes and empty hives ready for spring";
}

std::string asked_for(int missing, const std::string& where, const std::string& by, int month) {
  std::string text = missing > 0 ? "get " + counted(missing, "more stock") + " for " : "have ";
  if (missing <= 0) text += counted(-missing, "stock") + " less ";
  text += where;
  text += by;
  text += ": ";
  return text + (missing > 0 ? ways_to_more(month) : "unite the weakest after a look at health, or sell");
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

Needs wanted(const Asking& asking, const std::vector<StockAim>& aims, int living, const std::string& where,
             int empty_hives, const std::string& key) {
  const Date today = asking.input.today;
  const int lead = asking.minutes("stock_lead_days");
  Needs needs;
  for (const StockAim& aim : aims) {
    const Date due = due_of(aim, today);
    if (due - today > lead || living == aim.colonies) continue;
    const int missing = aim.colonies - living;
    const std::string by = " by " + day_and_month_text(due);
    facts::Need need = asking.need("stocks", asked_for(missing, where, by, asking.month(today)));
    need.key = "stocks/" + key + "/" + std::to_string(due.year()) + "-" + std::to_string(aim.month);
    need.at_home = true;
    need.minutes = asking.minutes("stock_minutes");
    need.clock = facts::Clock::any;
    need.loss = loss_when_late(
        asking, today, lead,
        missing > 0 ? asking.fact("stock_short_kg") * missing : asking.fact("stock_over_kg") * -missing);
    need.why.push_back(because(
        why_asked(aim, living, where, by, empty_hives), {aim.entry},
        {asking.source("stock_lead_days"), asking.source(missing > 0 ? "stock_short_kg" : "stock_over_kg")}));
    need.cautions.push_back(
        missing > 0 ? "A stock of unknown origin stands apart until its own brood has been looked through."
                    : "Never unite a stock that shows a sign of disease.");
    needs.push_back(std::move(need));
  }
  return needs;
}

}  // namespace

Needs stocks_wanted(const Asking& asking) {
  const auto& colonies = asking.input.colonies;
  const auto here = std::count_if(colonies.begin(), colonies.end(),
                                  [&](const auto& colony) { return colony.site == asking.site.site; });
  Needs needs = wanted(asking, asking.site.aims, static_cast<int>(here), "at " + asking.site.name,
                       asking.site.empty_hives, asking.site.site.text());
  if (asking.site.site != asking.input.sites.front().site) return needs;
  int empty = 0;
  for (const SiteStatus& site : asking.input.sites) empty += site.empty_hives;
  for (facts::Need& need :
       wanted(asking, asking.input.aims, static_cast<int>(colonies.size()), "at all sites", empty, "all"))
    needs.push_back(std::move(need));
  return needs;
}

}  // namespace beegarth::work
