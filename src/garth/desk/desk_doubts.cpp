// Looks that may have been written down wrongly. They take as long as all outlooks and more, so that they are
// asked for by themselves.
#include "garth/beliefs/believe.hpp"
#include "garth/desk/desk.hpp"

namespace beegarth::garth {

Expected<nlohmann::json> Desk::doubts() {
  if (const auto outcome = look_again(); !outcome) return outcome.problem();
  if (doubts_) return *doubts_;
  auto skies = skies_of(session_, session_.today);
  if (!skies) return skies.problem();
  const auto doubted = doubted_looks(session_, *skies);
  if (!doubted) return doubted.problem();
  nlohmann::json list = nlohmann::json::array();
  for (const DoubtedLook& one : *doubted) {
    nlohmann::json entries = nlohmann::json::array();
    for (const EntryId& id : one.reason.entries) entries.push_back(id.text());
    list.push_back(
        {{"colony", one.colony.text()},
         {"name", session_.state.colonies.at(one.colony).began.name},
         {"reason",
          {{"text", one.reason.text}, {"entries", std::move(entries)}, {"sources", one.reason.sources}}}});
  }
  doubts_ = nlohmann::json{{"doubts", std::move(list)}};
  return *doubts_;
}

}  // namespace beegarth::garth
