#include "garth/beliefs/suppose.hpp"

#include <algorithm>

#include "base/utf8.hpp"
#include "garth/beliefs/believe.hpp"
#include "garth/beliefs/suppose_remarks.hpp"
#include "garth/beliefs/ways_said.hpp"
#include "garth/keep/keep.hpp"

namespace beegarth::garth {
namespace {

// By then it is known who came through; the one after it where it is less than five weeks off, so that no
// more than 400 days are followed.
Date next_spring(Date today, double latitude_deg) {
  const Date end = winter_end(today, latitude_deg);
  return end < today + 35 ? winter_end(end, latitude_deg) : end;
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

// What stands for an unreadable way: what was written, on one line and not without end.
std::string as_written(const std::string& text) {
  constexpr std::size_t longest = 120;
  if (!is_utf8(text)) return "(a way that is no UTF-8)";
  std::string name = text;
  if (name.size() > longest) {
    std::size_t end = longest;  // not in the middle of a letter
    while ((static_cast<unsigned char>(name[end]) & 0xc0) == 0x80) --end;
    name = name.substr(0, end) + " ...";
  }
  std::replace_if(
      name.begin(), name.end(), [](char c) { return static_cast<unsigned char>(c) < ' '; }, ' ');
  return name;
}

struct Wished {
  std::vector<belief::Way> ways;       // "nothing" among them
  bool nothing = false;                // and asked for
  std::vector<RefusedWay> unreadable;  // each for itself; the others are compared all the same
};

// A Problem where not one can be read.
Expected<Wished> ways_wished(const Session& session, const ColonyId& colony,
                             const std::vector<std::string>& texts) {
  Wished wished{{{"nothing", {}}}, false, {}};
  for (const std::string& text : texts) {
    auto said = ways_said(session, colony, text);
    if (!said) {
      wished.unreadable.push_back({as_written(text), about_the_way(said.problem())});
      continue;
    }
    for (belief::Way& way : *said) {
      wished.nothing = wished.nothing || way.deeds.empty();
      const bool known = std::any_of(wished.ways.begin(), wished.ways.end(),
                                     [&](const belief::Way& other) { return other.name == way.name; });
      if (!known) wished.ways.push_back(std::move(way));
    }
  }
  if (!texts.empty() && wished.unreadable.size() == texts.size())
    return Problem(wished.unreadable.front().why);
  if (wished.ways.size() > most_ways)
    return bad_input("that is more than " + std::to_string(most_ways) + " ways", "WAY",
                     "take a longer step or fewer days");
  return wished;
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
  auto wished = ways_wished(session, *colony, wish.ways);
  if (!wished) return wished.problem();
  const auto prices = belief::Prices::from(session.tables["choices"], session.tables["work"]);
  if (!prices) return prices.problem();
  const auto all = session.book.entries();
  if (!all) return all.problem();
  const std::size_t unreadable = wished->unreadable.size();
  SupposeAnswer answer{.colony = *colony, .refused = std::move(wished->unreadable), .prices = *prices};
  for (belief::Way& way : wished->ways) {
    if (auto why = refused_by_a_gate(session, *all, way))
      answer.refused.push_back({way.name, *std::move(why)});
    else
      answer.ways.push_back(std::move(way));
  }
  const auto skies = skies_of(session, *last);
  if (!skies) return skies.problem();
  const bool by_a_gate = answer.refused.size() > unreadable;
  auto followed = supposed_of(session, *skies, *colony, *last, std::move(answer.ways));
  if (!followed) return followed.problem();
  for (auto& [name, why] : followed->not_followed) answer.refused.push_back({name, std::move(why)});
  // Nobody asked for what is always there: without one way of the keeper's own there is no answer.
  if (followed->ways.size() == 1 && !by_a_gate && !wished->nothing && !answer.refused.empty())
    return answer.refused.front().why;
  answer.ways = std::move(followed->ways);
  answer.supposed = std::move(followed->supposed);
  answer.ranked = belief::rank_ways(answer.supposed, answer.ways, *colony, answer.prices);
  auto remarks = remarks_on_ways(session, answer);
  if (!remarks) return remarks.problem();
  answer.remarks = *std::move(remarks);
  return answer;
}

}  // namespace beegarth::garth
