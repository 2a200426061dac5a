#include "belief/deeds.hpp"

#include <array>
#include <string>

#include "entries/fields.hpp"

namespace beegarth::belief {
namespace {

namespace e = entries;
using Actions = std::vector<colony::Action>;

Actions feed(const e::Feed& p, const DeedFigures& f) {
  switch (p.form) {
    case e::FeedForm::comb:
      return {colony::Feed{.stores_kg = p.kg}};
    case e::FeedForm::pollen:
      return {colony::Feed{.pollen_kg = p.kg}};
    case e::FeedForm::syrup:
    case e::FeedForm::fondant:
      break;
  }
  const double usual = p.form == e::FeedForm::syrup ? f.syrup_sugar_pct : f.fondant_sugar_pct;
  return {colony::Feed{.stores_kg = p.kg * p.sugar_pct.value_or(usual) / 100 * f.stores_per_sugar}};
}

// The model's kind that comes nearest: its own word, then the first part of it ("oxalic" of
// "oxalic_trickle").
std::string kind_in(const colony::Model& model, e::TreatmentKind kind) {
  std::string word(e::word_for(kind));
  if (model.treatment(word) != nullptr) return word;
  std::string first = word.substr(0, word.find('_'));
  return model.treatment(first) != nullptr ? first : "other";
}

Actions treat(const e::Treatment& p, const colony::Model& model) {
  if (p.kind == e::TreatmentKind::drone_comb_removed) return {colony::RemoveDroneComb{}};
  if (p.kind == e::TreatmentKind::brood_removed) {
    return {colony::RemoveBrood{}};
  }
  return {colony::Treat{kind_in(model, p.kind), p.days.value_or(0)}};
}

Actions queen(e::QueenEvent event) {
  switch (event) {
    case e::QueenEvent::introduced:
      return {colony::IntroduceQueen{}};
    case e::QueenEvent::cell_given:
      return {colony::GiveCell{}};
    case e::QueenEvent::lost:
    case e::QueenEvent::removed:
    case e::QueenEvent::died:
      return {colony::QueenLost{}};
    case e::QueenEvent::caged:
      return {colony::CageQueen{}};
    case e::QueenEvent::released:
      return {colony::ReleaseQueen{}};
    case e::QueenEvent::marked:
    case e::QueenEvent::clipped:
    case e::QueenEvent::virgin_emerged:
    case e::QueenEvent::laying:
    case e::QueenEvent::seen:
    case e::QueenEvent::superseded:  // another lays already
      return {};
  }
  return {};
}

// All of it goes over where whole combs do, and none where the bees are shaken.
double brood_kept(const e::Transfer& p, const DeedFigures& f) {
  if (p.brood_kept) return *p.brood_kept;
  switch (p.how) {
    case e::TransferWay::shaken:
      return 0;
    case e::TransferWay::cut_and_tied:
      return f.tied_brood_kept;
    case e::TransferWay::grown_down:
    case e::TransferWay::grown_across:
    case e::TransferWay::bars_among_frames:
    case e::TransferWay::combs_lifted_over:
      break;
  }
  return 1;
}

struct Convert {
  const DeedFigures& f;
  const colony::Model& model;
  const facts::Dwelling& dwelling;

  Actions operator()(const e::Feed& p) const { return feed(p, f); }
  Actions operator()(const e::Treatment& p) const { return treat(p, model); }
  Actions operator()(const e::Queen& p) const { return queen(p.event); }
  Actions operator()(const e::Room& p) const {
    return {colony::AddRoom{p.brood_combs.value_or(0), p.super_combs.value_or(0), p.undrawn.value_or(0)}};
  }
  Actions operator()(const e::Transfer& p) const {
    const double kept = brood_kept(p, f);
    Actions actions;
    if (kept < 1) actions.emplace_back(colony::RemoveBrood{1 - kept});
    // Bees that are shaken leave their honey with the combs.
    if (p.how == e::TransferWay::shaken) actions.emplace_back(colony::SetStores{0});
    return actions;
  }
  Actions operator()(const e::Swarmed&) const { return {colony::SwarmSeen{}}; }
  Actions operator()(const e::Split& p) const {
    return {colony::SplitAway{.bees_share = p.bees_share,
                              .brood_share = p.brood_share,
                              .stores_share = p.bees_share,
                              .queen_leaves = p.queen_goes}};
  }
  Actions operator()(const e::Unite&) const {
    return {colony::UniteWith{f.united_bees, f.united_brood, f.united_stores_kg, f.united_mites}};
  }
  Actions operator()(const e::Harvest& p) const {
    const double by_combs = p.combs.value_or(0) * dwelling.honey_kg_per_comb;
    return {colony::Harvest{p.kg > 0 ? p.kg : by_combs}};
  }
  template <class Other>
  Actions operator()(const Other&) const {
    return {};
  }
};

}  // namespace

Expected<DeedFigures> read_deed_figures(const FactTable& observation) {
  DeedFigures figures{};
  struct Field {
    const char* key;
    double DeedFigures::*at;
  };
  static constexpr auto rows = std::to_array<Field>({{"united_bees", &DeedFigures::united_bees},
                                                     {"united_brood", &DeedFigures::united_brood},
                                                     {"united_stores", &DeedFigures::united_stores_kg},
                                                     {"united_mites", &DeedFigures::united_mites},
                                                     {"syrup_sugar", &DeedFigures::syrup_sugar_pct},
                                                     {"fondant_sugar", &DeedFigures::fondant_sugar_pct},
                                                     {"tied_brood_kept", &DeedFigures::tied_brood_kept},
                                                     {"move_range", &DeedFigures::move_range_km},
                                                     {"move_strays", &DeedFigures::move_strays},
                                                     {"stores_per_sugar", &DeedFigures::stores_per_sugar}});
  for (const Field& row : rows) {
    const auto value = observation.value(row.key);
    if (!value) return value.problem();
    figures.*row.at = *value;
  }
  return figures;
}

std::vector<colony::Action> actions_of(const entries::Payload& payload, const DeedFigures& figures,
                                       const colony::Model& model, const facts::Dwelling& dwelling) {
  return std::visit(Convert{figures, model, dwelling}, payload);
}

}  // namespace beegarth::belief
