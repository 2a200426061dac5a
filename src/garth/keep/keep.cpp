#include "garth/keep/keep.hpp"

#include "garth/gates/gates.hpp"
#include "garth/keep/door.hpp"
#include "garth/keep/known_names.hpp"
#include "garth/tables/usable.hpp"

namespace beegarth::garth {

std::optional<Objection> objection_to(std::span<const entries::Entry> book,
                                      std::span<const book::Draft> drafts, const Tables& tables) {
  Tables tables_with_own = tables;
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    const book::Draft& draft = drafts[i];
    if (Outcome sound = entries::validate(draft.payload); !sound) return Objection{i, sound.problem()};
    if (Outcome fit = fit_for_the_door(draft.payload, draft.happened); !fit)
      return Objection{i, fit.problem()};
    const auto* own = std::get_if<entries::TableOverride>(&draft.payload);
    if (own == nullptr) continue;
    auto changed = tables_with_own.with(std::span(own, 1));
    if (!changed) return Objection{i, changed.problem()};
    if (Outcome reckoned = usable(*changed); !reckoned) return Objection{i, reckoned.problem()};
    tables_with_own = *std::move(changed);
  }
  if (auto unknown = only_known_names(book, drafts)) return unknown;
  const auto rules = GateRules::from(tables);
  if (!rules) return Objection{0, rules.problem()};
  return pass_the_gates(book, drafts, *rules);
}

Outcome may_be_kept(std::span<const entries::Entry> book, std::span<const book::Draft> drafts,
                    const Tables& tables) {
  if (const auto objection = objection_to(book, drafts, tables)) return told(*objection, drafts.size());
  return Done{};
}

Outcome likely_date(Date happened, Date today, const char* where) {
  constexpr int days_back = 100 * 366, days_ahead = 400;
  if (happened >= today - days_back && happened <= today + days_ahead) return Done{};
  return bad_input(happened.iso() + " is too far from today, " + today.iso(), where, "check the year");
}

Expected<std::vector<entries::Entry>> keep(Session& session, const std::vector<book::Draft>& drafts) {
  return session.book.append(
      drafts, [&](std::span<const entries::Entry> all) { return may_be_kept(all, drafts, session.tables); });
}

}  // namespace beegarth::garth
