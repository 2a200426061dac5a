#include "garth/imports/import_remarks.hpp"

#include <algorithm>
#include <tuple>

#include "garth/gates/gates.hpp"

namespace beegarth::garth {
namespace {

// Each entry is judged beside all before it, so the work grows with the square: some seconds at this many.
constexpr std::size_t most_judged_pairs = 2'000'000;

std::string remark_of(const entries::Entry& entry, bool came_in, const Problem& why) {
  return std::string(came_in ? "kept as said there: " : "kept as said here: ") +
         std::string(entries::kind_name(entry.payload)) + " of " + entry.happened.iso() + " (entry " +
         entry.id.text() + "); would have been refused: " + why.what + " (" + why.where + "); " + why.remedy;
}

// A figure may have been told in one go with the box that makes it possible, and before it.
void add_what_was_put_on(std::span<const entries::Entry> after, std::vector<book::Draft>& told) {
  const Date day = told.front().happened;
  for (const entries::Entry& one : after)
    if (one.happened == day && !one.supersedes && std::holds_alternative<entries::Room>(one.payload))
      told.push_back({one.happened, one.happened_hour, one.payload, {}});
}

}  // namespace

std::vector<std::string> what_gates_would_have_refused(std::span<const entries::Entry> all,
                                                       const std::set<EntryId>& added, const Tables& tables) {
  const auto rules = GateRules::from(tables);
  if (!rules) return {"nothing was judged: " + rules.problem().what};
  std::vector<entries::Entry> written(all.begin(), all.end());
  std::sort(written.begin(), written.end(), [](const auto& a, const auto& b) {
    return std::tie(a.written, a.device) < std::tie(b.written, b.device);
  });
  const auto first = std::find_if(written.begin(), written.end(),
                                  [&](const auto& entry) { return added.contains(entry.id); });
  const auto from = static_cast<std::size_t>(first - written.begin());
  if ((written.size() - from) * written.size() > most_judged_pairs)
    return {std::to_string(written.size() - from) +
            " entries are too many to judge one by one: suspicion, quarantine, marks and lots hold from now "
            "on as "
            "these entries add up to"};
  std::vector<std::string> remarks;
  const std::span so_far(written);
  for (std::size_t i = from; i < written.size(); ++i) {
    const entries::Entry& entry = written[i];
    std::vector<book::Draft> told{{entry.happened, entry.happened_hour, entry.payload, entry.supersedes}};
    if (has_figures(entry.payload)) add_what_was_put_on(so_far.subspan(i + 1), told);
    const auto objection = pass_the_gates(so_far.first(i), told, *rules);
    if (objection && objection->draft == 0)
      remarks.push_back(remark_of(entry, added.contains(entry.id), objection->problem));
  }
  return remarks;
}

}  // namespace beegarth::garth
