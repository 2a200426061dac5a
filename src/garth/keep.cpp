#include "garth/keep.hpp"

#include "garth/gates/gates.hpp"
#include "garth/known_names.hpp"

namespace beegarth::garth {

Outcome may_be_kept(std::span<const entries::Entry> book, std::span<const book::Draft> drafts,
                    const Tables& tables) {
  for (const auto& draft : drafts) {
    if (Outcome sound = entries::validate(draft.payload); !sound) return sound;
    const auto* own = std::get_if<entries::TableOverride>(&draft.payload);
    if (own == nullptr) continue;
    if (const auto usable = tables.with(std::span(own, 1)); !usable) return usable.problem();
  }
  if (Outcome known = only_known_names(book, drafts); !known) return known;
  const auto honey = HoneyRules::from(tables["work"]);
  if (!honey) return honey.problem();
  return pass_the_gates(book, drafts, *honey);
}

std::size_t first_unfit(std::span<const entries::Entry> book, std::span<const book::Draft> drafts,
                        const Tables& tables) {
  std::size_t sound = 0, faulty = drafts.size();
  while (sound + 1 < faulty) {
    const std::size_t middle = (sound + faulty) / 2;
    (may_be_kept(book, drafts.first(middle), tables) ? sound : faulty) = middle;
  }
  return faulty - 1;
}

Outcome likely_date(Date happened, Date today, const char* where) {
  constexpr int days_back = 100 * 366, days_ahead = 400;
  if (happened >= today - days_back && happened <= today + days_ahead) return Done{};
  return bad_input(happened.iso() + " is too far from today, " + today.iso(), where, "check the year");
}

Expected<std::vector<entries::Entry>> keep(Session& session, const std::vector<book::Draft>& drafts) {
  const auto all = session.book.entries();
  if (!all) return all.problem();
  if (Outcome fit = may_be_kept(*all, drafts, session.tables); !fit) return fit.problem();
  return session.book.append(drafts);
}

}  // namespace beegarth::garth
