// A new queen on her way: leave the hive shut, then look for eggs; and help where no eggs are seen.
#include <algorithm>

#include "work/needs/kinds.hpp"

namespace beegarth::work {

namespace {

constexpr double after_loss = 0, after_swarm = 1, after_introduction = 3;  // Sighting::value of the loss

std::string told(const Sighting& loss) {
  if (loss.value == after_introduction) return "queen introduced on ";
  if (loss.value == after_swarm) return "swarmed about ";
  return loss.value == after_loss ? "queen lost on " : "split without its queen on ";
}

const char* row_of_the_check(const Sighting& loss) {
  return loss.value == after_introduction ? "check_after_introduction_days"
         : loss.value == after_swarm      ? "check_after_swarm_days"
                                          : "check_after_loss_days";
}

Date day_to_look_for_eggs(const Asking& asking) {
  const Sighting& loss = *asking.colony->queen_lost_or_swarmed;
  return loss.date + static_cast<int>(asking.fact(row_of_the_check(loss)));
}

facts::Reason no_eggs_told(const ColonyStatus& colony) {
  std::vector<EntryId> entries{colony.no_eggs_seen->entry};
  std::string text = "no eggs on " + day_text(colony.no_eggs_seen->date);
  if (colony.no_eggs_first && colony.no_eggs_first->date < colony.no_eggs_seen->date) {
    text = "no eggs at two looks, " + day_text(colony.no_eggs_first->date) + " and " +
           day_text(colony.no_eggs_seen->date);
    entries.push_back(colony.no_eggs_first->entry);
  }
  if (colony.eggs_seen) {
    text += ", last seen " + day_text(colony.eggs_seen->date);
    entries.push_back(colony.eggs_seen->entry);
  } else {
    text += ", and none before in this book";
  }
  return because(text, entries,
                 {"common practice: a test comb shows within four days whether a queen is there"});
}

// The odds speak for a missing queen but no look does: look before a comb is given. In the swarm season the
// look for queen cells shows it as well.
Needs look_for_eggs(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  const auto odds = asking.odds_by(facts::EventKind::queen_trouble, today + 7);
  if (!odds || odds->value < asking.fact("queen_trouble_odds_to_act") || queen_awaited(asking)) return {};
  if (colony.eggs_seen && today - colony.eggs_seen->date < static_cast<int>(asking.fact("eggs_fresh_days")))
    return {};
  const bool looked_for_cells =
      asking.will(facts::Deed::holding_of_swarms) && !look_for_cells(asking).empty();
  if (cells_stand(asking) || looked_for_cells) return {};
  facts::Need need = asking.need("look-eggs", "look for eggs: two combs are enough, then close");
  need.minutes = asking.minutes("check_minutes");
  need.loss = loss_from_odds(asking, facts::EventKind::queen_trouble, asking.fact("queenless_kg"), 0.7);
  need.why.push_back(
      because(colony.eggs_seen ? "eggs were last seen on " + day_text(colony.eggs_seen->date)
                               : "eggs were never seen in this book",
              colony.eggs_seen ? std::vector<EntryId>{colony.eggs_seen->entry} : std::vector<EntryId>{},
              {asking.source("queen_trouble_odds_to_act"), asking.source("eggs_fresh_days")}));
  asking.tell_odds(need, facts::EventKind::queen_trouble, "queen trouble", today + 7, asking.last_day());
  need.take = {"smoker and fuel", "hive tool"};
  need.write_down = "quick look, ";
  return {need};
}

}  // namespace

// Eggs last three days: those seen later than that are another queen's. Who never writes of eggs is not
// waited for without end.
bool queen_awaited(const Asking& asking) {
  constexpr int eggs_outlast_a_queen_days = 3, given_up_after_days = 90;
  const auto& loss = asking.colony->queen_lost_or_swarmed;
  const auto& eggs = asking.colony->eggs_seen;
  if (!loss || asking.input.today - loss->date > given_up_after_days) return false;
  return !eggs || eggs->date - loss->date <= eggs_outlast_a_queen_days;
}

std::optional<KeptShut> kept_shut(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  if (!queen_awaited(asking)) return std::nullopt;
  const Sighting& loss = *colony.queen_lost_or_swarmed;
  if (loss.value == after_introduction) {
    const char* alone = "shut_after_introduction_days";
    const Date until = loss.date + static_cast<int>(asking.fact(alone));
    if (until < asking.input.today) return std::nullopt;
    return KeptShut{
        loss.date, until,
        because(told(loss) + day_text(loss.date) + ": disturbed in her first week she may be balled",
                {loss.entry}, {asking.source(alone)})};
  }
  const bool swarm = loss.value == after_swarm;
  const char* out = swarm ? "virgin_after_swarm_days" : "virgin_after_loss_days";
  const char* laying = swarm ? "laying_after_swarm_days" : "laying_after_loss_days";
  const KeptShut shut{
      loss.date + static_cast<int>(asking.fact(out)) - 1, loss.date + static_cast<int>(asking.fact(laying)),
      because(told(loss) + day_text(loss.date) + ": the virgin comes out about " +
                  day_text(loss.date + static_cast<int>(asking.fact(out))) + " and lays by about " +
                  day_text(loss.date + static_cast<int>(asking.fact(laying))),
              {loss.entry}, {asking.source(out), asking.source(laying)})};
  return shut.until < asking.input.today ? std::nullopt : std::optional(shut);
}

Needs queen_check(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  if (!queen_awaited(asking)) return {};
  const Sighting& loss = *colony.queen_lost_or_swarmed;
  const bool introduced = loss.value == after_introduction;
  const Date due = day_to_look_for_eggs(asking);
  const Date today = asking.input.today;
  Needs needs;
  const auto shut = kept_shut(asking);
  if (shut && shut->from <= asking.last_day()) {
    facts::Need leave = asking.need(
        "leave-shut", "do not open " + (colony.name.empty() ? colony.colony.text() : colony.name) +
                          (introduced ? ": the new queen is to be left in peace until "
                                      : ": a virgin is likely to be flying until ") +
                          day_text(shut->until));
    leave.earliest = leave.best = std::max(today, shut->from);
    leave.latest = shut->until;
    leave.minutes = 0;
    leave.clock = facts::Clock::any;
    leave.temperature_min_C = -50;
    leave.why.push_back(shut->why);
    needs.push_back(leave);
  }
  constexpr int given_up_after_days = 60;
  if (due > asking.last_day() || today - due > given_up_after_days || !asking.opening_season(due) ||
      queen_missed(asking))
    return needs;
  facts::Need look =
      asking.need("check-queen", "look for eggs of the new queen: two combs are enough, then close");
  constexpr int a_little_early_days = 2;
  look.earliest = std::max({today, shut ? shut->until + 1 : today, due - a_little_early_days});
  look.best = std::max(look.earliest, due);
  look.latest = std::max(asking.last_day(), look.best);
  look.minutes = asking.minutes("check_minutes");
  const double fails = introduced ? asking.fact("introduction_fails") : 1 - asking.fact("mated_return_share");
  look.loss = loss_when_late(asking, due, 21, fails * asking.fact("queenless_kg"));
  look.why.push_back(
      because(told(loss) + day_text(loss.date) + "; eggs are to be looked for about " + day_text(due),
              {loss.entry}, {asking.source(row_of_the_check(loss))}));
  look.why.push_back(
      introduced ? because("not every introduced queen is taken", {}, {asking.source("introduction_fails")})
                 : because("about one virgin in four does not come back mated", {},
                           {asking.source("mated_return_share")}));
  // The published 70-80 % of virgins that return; for introduced queens the keeper's own reckoning.
  look.odds.push_back({"no laying queen", look.best,
                       introduced ? facts::Odds{fails, 0.1, 0.35} : facts::Odds{fails, 0.2, 0.3}});
  look.take = {"smoker and fuel", "hive tool"};
  look.write_down = "quick look, ";
  if (!introduced)
    look.cautions.push_back(
        "No eggs yet proves nothing before four weeks in bad weather: give a comb with eggs rather than a "
        "queen.");
  needs.push_back(look);
  return needs;
}

bool queen_missed(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  if (!colony.no_eggs_seen || (colony.eggs_seen && colony.eggs_seen->date >= colony.no_eggs_seen->date))
    return false;
  if (cells_stand(asking) || kept_shut(asking)) return false;
  // Before the day on which the new queen is to be looked for, seeing no eggs says nothing.
  return !queen_awaited(asking) || colony.no_eggs_seen->date >= day_to_look_for_eggs(asking);
}

Needs comb_of_eggs(const Asking& asking) {
  const ColonyStatus& colony = *asking.colony;
  const Date today = asking.input.today;
  if (!asking.opening_season(today) || kept_shut(asking)) return {};
  if (!queen_missed(asking)) return look_for_eggs(asking);
  const bool twice = colony.no_eggs_first && colony.no_eggs_first->date < colony.no_eggs_seen->date;
  const bool unites = asking.will(facts::Deed::uniting);
  facts::Need need = asking.need(
      "comb-of-eggs",
      std::string("give a comb with eggs and young larvae") +
          (!twice   ? ": there were no eggs where there should be; "
           : unites ? " or, if it is down to a few seams or drones are laid, unite it; "
                    : "; if it is down to a few seams or drones are laid, little can be hoped for; ") +
          "look after four days for queen cells");
  if (twice)
    need.asks.push_back(
        {facts::Deed::uniting, false, asking.fact("uniting_saved_kg"), Asking::row("uniting_saved_kg")});
  if (asking.site_suspect) {
    need.key = "look-eggs/" + colony.colony.text();
    need.what = "look again for eggs; no comb may be given while this site is suspect";
  }
  need.minutes = asking.minutes("check_minutes");
  // A look without eggs is as good as even; two in a row are all but sure (own reckoning).
  const auto odds = asking.odds_by(facts::EventKind::queen_trouble, today + 7);
  const double sure = std::max(odds ? odds->value : 0.0, twice ? 0.9 : 0.5);
  need.loss = loss_when_late(asking, today - 1, 21, sure * asking.fact("queenless_kg"));
  need.why.push_back(no_eggs_told(colony));
  asking.tell_odds(need, facts::EventKind::queen_trouble, "queen trouble", today + 7, asking.last_day());
  need.take = {"smoker and fuel", "hive tool", "box for one comb"};
  need.cautions.push_back(
      "The comb comes from a colony that you have looked through and found healthy, and without its queen.");
  if (unites)
    need.cautions.push_back(
        "If it turns out queenless and weak, unite it only after both have been looked through for disease.");
  return {need};
}

}  // namespace beegarth::work
