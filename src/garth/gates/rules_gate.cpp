// What this keeper will not do.
#include <map>
#include <string>

#include "entries/fields.hpp"
#include "garth/gates/gates.hpp"

namespace beegarth::garth {
namespace {

using entries::Refusal;

// The rule that a deed would break, if any.
std::optional<Refusal> broken_by(const entries::Queen& queen) {
  return queen.event == entries::QueenEvent::clipped ? std::optional(Refusal::no_clipping) : std::nullopt;
}
std::optional<Refusal> broken_by(const entries::Feed& feed) {
  const bool sugar = feed.form == entries::FeedForm::syrup || feed.form == entries::FeedForm::fondant;
  const bool own =
      feed.source == entries::FeedSource::own_honey || feed.source == entries::FeedSource::own_combs;
  return sugar && !own ? std::optional(Refusal::no_sugar) : std::nullopt;
}
std::optional<Refusal> broken_by(const entries::Treatment& treatment) {
  switch (treatment.kind) {
    case entries::TreatmentKind::amitraz:
    case entries::TreatmentKind::pyrethroid:
      return Refusal::no_synthetic_strips;
    case entries::TreatmentKind::oxalic_trickle:
    case entries::TreatmentKind::oxalic_vapour:
    case entries::TreatmentKind::formic:
      return Refusal::no_organic_acids;
    case entries::TreatmentKind::drone_comb_removed:
      return Refusal::no_drone_comb_cut;
    default:
      return std::nullopt;
  }
}
std::optional<Refusal> broken_by(const entries::Split&) {
  return Refusal::no_artificial_swarms;
}
std::optional<Refusal> broken_by(const entries::Unite&) {
  return Refusal::no_uniting;
}
std::optional<Refusal> broken_by(const entries::Purchase& purchase) {
  return purchase.what == entries::Goods::queen ? std::optional(Refusal::no_queens_bought) : std::nullopt;
}
template <class Other>
std::optional<Refusal> broken_by(const Other&) {
  return std::nullopt;
}

const entries::Entry* kept_rule(const Known& known, Refusal rule) {
  const entries::Entry* last = nullptr;
  for (const auto& entry : known.standing) {
    const auto* said = std::get_if<entries::KeeperRule>(&entry.payload);
    if (said && said->rule == rule) last = said->kept ? &entry : nullptr;
  }
  return last;
}

}  // namespace

Outcome rules_gate(const Known& known, const book::Draft& draft) {
  const auto rule = std::visit([](const auto& said) { return broken_by(said); }, draft.payload);
  const entries::Entry* kept = rule ? kept_rule(known, *rule) : nullptr;
  if (kept == nullptr) return Done{};
  return bad_input(
      "that breaks your own rule '" + std::string(entries::word_for(*rule)) + "' of " + kept->happened.iso(),
      "entry " + kept->id.text(), "enter keeper_rule with kept = false if you have given it up");
}

}  // namespace beegarth::garth
