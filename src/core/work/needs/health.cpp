// Signs that may be of a notifiable disease, and dead colonies.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

std::string law_of(const Asking& asking) {
  return asking.site.law.empty() ? "house rule on health: your country's law on bee diseases decides"
                                 : asking.site.law;
}

facts::Reason signs_told(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  std::string signs;
  std::vector<EntryId> entries;
  for (const auto& sign : colony.signs) {
    signs += (signs.empty() ? "" : ", ") + sign.words + " on " + day_text(sign.seen.date);
    if (std::find(entries.begin(), entries.end(), sign.seen.entry) == entries.end())
      entries.push_back(sign.seen.entry);
  }
  return because("signs that may be of a notifiable disease" + (signs.empty() ? "" : ": " + signs), entries,
                 {law_of(asking)});
}

// Told, and nothing new seen since: then the answer is waited for.
bool was_told(const ColonyStatus& colony) {
  if (!colony.told_authority) return false;
  const Date told = colony.told_authority->on.date;
  return std::none_of(colony.signs.begin(), colony.signs.end(),
                      [&](const auto& sign) { return sign.seen.date > told; });
}

std::string how_it_was_told(const ColonyStatus::Told& told) {
  return "the authority" + (told.to.empty() ? "" : " (" + told.to + ")") + " was told on " +
         day_text(told.on.date) + (told.by.empty() ? "" : " by " + told.by) +
         (told.reference.empty() ? "" : ", reference " + told.reference);
}

facts::Need wait_for_the_answer(const Asking& asking) {
  const ColonyStatus::Told& told = *asking.colony->told_authority;
  facts::Need need = asking.need(
      "await-answer",
      how_it_was_told(told) +
          ": wait for the answer, keep everything as it is, and enter it (cleared) when it comes");
  need.at_home = true;
  need.minutes = asking.minutes("notify_minutes");
  need.clock = facts::Clock::any;
  need.why.push_back(because(how_it_was_told(told), {told.on.entry}, {law_of(asking)}));
  need.why.push_back(signs_told(asking));
  need.cautions.push_back(
      "No comb, bees, feed, box or tool leaves this site until the inspector has spoken.");
  return need;
}

facts::Need call_the_inspector(const Asking& asking) {
  facts::Need call =
      asking.need("tell-inspector",
                  "telephone " + asking.site.authority +
                      " today, before any visit, and do as you are told; move nothing to or from this site");
  call.at_home = true;
  call.minutes = asking.minutes("notify_minutes");
  call.clock = facts::Clock::any;
  call.why.push_back(signs_told(asking));
  if (const auto& told = asking.colony->told_authority)
    call.why.push_back(
        because(how_it_was_told(*told) + "; what was seen since is told as well", {told->on.entry}));
  if (asking.colony->last_charged_cells || asking.colony->last_sealed_cells)
    call.cautions.push_back(
        "Say that queen cells stand in it: it may swarm, and a swarm carries the disease on.");
  call.cautions.push_back("No comb, bees, feed, box or tool leaves this site.");
  return call;
}

facts::Need close_it(const Asking& asking) {
  facts::Need need = asking.need("suspect",
                                 "close this hive, narrow its entrance, take nothing to or from it; no look "
                                 "unless the inspector asks for one");
  need.minutes = asking.minutes("check_minutes");
  need.clock = facts::Clock::daylight;
  need.temperature_min_C = -50;
  need.last_in_round = true;
  need.loss = loss_when_late(asking, asking.input.today - 1, 14, asking.fact("disease_spread_kg"));
  need.why.push_back(signs_told(asking));
  need.why.push_back(
      because("until the inspector has cleared it, looks, splits, room, feed and treatment wait here", {},
              {"house rule on health"}));
  need.take = {"clean suit and gloves", "washing soda, brush and bucket", "bag that closes"};
  need.cautions.push_back("Last of the round. Afterwards change suit and gloves, and clean every tool.");
  need.cautions.push_back("No comb, bees, feed, box or tool leaves this site.");
  return need;
}

}  // namespace

Needs suspect(const Asking& asking) {
  if (!asking.colony->suspect) return {};
  return {was_told(*asking.colony) ? wait_for_the_answer(asking) : call_the_inspector(asking),
          close_it(asking)};
}

Needs dead_out(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  if (asking.outlook == nullptr || 1 - asking.outlook->alive < asking.fact("dead_odds")) return {};
  facts::Need need = asking.need("dead-out",
                                 "likely dead: listen at the entrance and look first; if it is dead, close "
                                 "it at once, look why, take a sample, write it down");
  need.minutes = asking.minutes("dead_out_minutes");
  need.clock = facts::Clock::daylight;
  need.temperature_min_C = -5;
  need.last_in_round = colony.suspect;
  need.loss = loss_when_late(asking, asking.input.today - 1, 14, asking.fact("dead_out_robbed_kg"));
  need.odds.push_back(
      {"dead", asking.input.today,
       facts::odds_of_share(1 - asking.outlook->alive, asking.outlook->effective_sample_size)});
  need.why.push_back(because(
      "the odds that it still lives are " + percent_text(asking.outlook->alive),
      colony.last_any_look ? std::vector<EntryId>{colony.last_any_look->entry} : std::vector<EntryId>{},
      {asking.source("dead_odds"), asking.source("dead_out_robbed_kg")}));
  need.take = {"tape or foam to close the entrance",
               "bag or box for a sample of dead bees and a piece of comb"};
  if (!asking.input.at_a_dead_hive.empty()) {
    std::string steps = "if it is dead";
    for (const std::string& step : asking.input.at_a_dead_hive)
      steps += (steps.size() < 14 ? ": " : " ") + step;
    need.why.push_back(because(steps, {}, {"common practice at a dead hive"}));
  }
  need.cautions.push_back("Until you know why it died its combs go to no other colony.");
  need.cautions.push_back("Ropy or sunken brood: stop, close, and tell the bee inspector.");
  return {need};
}

}  // namespace beegarth::work
