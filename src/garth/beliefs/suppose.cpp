#include "garth/beliefs/suppose.hpp"

#include <algorithm>

#include "garth/beliefs/believe.hpp"
#include "garth/beliefs/ways_said.hpp"
#include "garth/keep/keep.hpp"

namespace beegarth::garth {
namespace {

constexpr std::size_t most_ways = 60;

// By then it is known who came through: 1 April in the north, 1 October in the south; the one after it where
// it is less than five weeks off, so that no more than 400 days are followed.
Date next_spring(Date today, double latitude_deg) {
  const int month = latitude_deg >= 0 ? 4 : 10;
  Date spring = *Date::from_ymd(today.year(), month, 1);
  while (spring < today + 35) spring = *Date::from_ymd(spring.year() + 1, month, 1);
  return spring;
}

Expected<Date> last_day(const Session& session, const ColonyId& colony, std::optional<Date> until) {
  constexpr int farthest = 400;
  const SiteId site = site_of_colony(session.state, session.state.colonies.at(colony));
  const auto place = session.state.sites.find(site);
  const double latitude = place == session.state.sites.end() ? 52 : place->second.latitude_deg;
  const Date last = until.value_or(next_spring(session.today, latitude));
  if (last <= session.today || last > session.today + farthest)
    return bad_input(
        last.iso() + " is not within " + std::to_string(farthest) + " days from " + session.today.iso(),
        "--until", "give a later day, or a nearer one");
  return last;
}

// What reads days and notes knows nothing of ways.
Problem about_the_way(Problem problem) {
  if (problem.where == "WAY") return problem;
  if (!problem.where.empty()) problem.what = problem.where + ": " + problem.what;
  problem.where = "WAY";
  return problem;
}

Expected<std::vector<belief::Way>> ways_wished(const Session& session, const ColonyId& colony,
                                               const std::vector<std::string>& texts) {
  std::vector<belief::Way> ways{{"nothing", {}}};
  for (const std::string& text : texts) {
    auto said = ways_said(session, colony, text);
    if (!said) return about_the_way(said.problem());
    for (belief::Way& way : *said) {
      const bool known = std::any_of(ways.begin(), ways.end(),
                                     [&](const belief::Way& other) { return other.name == way.name; });
      if (!known) ways.push_back(std::move(way));
    }
  }
  if (ways.size() > most_ways)
    return bad_input("that is more than 60 ways", "WAY", "take a longer step or fewer days");
  return ways;
}

// What the door or a gate says to the deeds of a way, as if they were entered in their order.
std::optional<Problem> refused_by_a_gate(const Session& session, std::span<const entries::Entry> all,
                                         const belief::Way& way) {
  std::vector<book::Draft> drafts;
  for (const belief::Intended& deed : way.deeds)
    drafts.push_back({.happened = deed.date, .payload = deed.payload});
  std::stable_sort(drafts.begin(), drafts.end(),
                   [](const book::Draft& a, const book::Draft& b) { return a.happened < b.happened; });
  const auto objection = objection_to(all, drafts, session.tables);
  return objection ? std::optional(told(*objection, drafts.size())) : std::nullopt;
}

}  // namespace

Expected<SupposeAnswer> suppose_in(const Session& session, const SupposeWish& wish) {
  const auto colony = colony_named(session.state, wish.colony);
  if (!colony) return colony.problem();
  const auto& state = session.state.colonies.at(*colony);
  if (state.ended)
    return bad_input("the colony ended on " + state.ended_on.value_or(session.today).iso(), wish.colony,
                     "name one that lives, or give an earlier --today");
  const auto last = last_day(session, *colony, wish.until);
  if (!last) return last.problem();
  auto ways = ways_wished(session, *colony, wish.ways);
  if (!ways) return ways.problem();
  const auto prices = belief::Prices::from(session.tables["choices"], session.tables["work"]);
  if (!prices) return prices.problem();
  const auto all = session.book.entries();
  if (!all) return all.problem();
  SupposeAnswer answer{.colony = *colony, .prices = *prices};
  for (belief::Way& way : *ways) {
    if (auto why = refused_by_a_gate(session, *all, way))
      answer.refused.push_back({way.name, *std::move(why)});
    else
      answer.ways.push_back(std::move(way));
  }
  const auto skies = skies_of(session, *last);
  if (!skies) return skies.problem();
  auto supposed = supposed_of(session, *skies, *colony, *last, answer.ways);
  if (!supposed) return supposed.problem();
  answer.supposed = *std::move(supposed);
  answer.ranked = belief::rank_ways(answer.supposed, answer.ways, *colony, answer.prices);
  return answer;
}

}  // namespace beegarth::garth
