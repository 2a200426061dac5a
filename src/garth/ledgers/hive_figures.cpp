#include "garth/ledgers/hive_figures.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <string_view>

#include "facts/dwelling.hpp"
#include "garth/ledgers/most_combs.hpp"
#include "work/words.hpp"

namespace beegarth::garth {
namespace {

constexpr double no_limit = std::numeric_limits<double>::infinity();

std::string amount_text(double amount) {
  return work::number_text(amount, amount == std::floor(amount) ? 0 : 1);
}

// The same measure of a hive, once as the book tells it, once as it may be at the most.
struct Twofold {
  double credible = 0;
  double possible = 0;
};

class HiveBeside {
 public:
  HiveBeside(const entries::Hive& hive, const MostCombs& held, int colonies, Date day,
             const FigureRules& rules)
      : hive_(hive), held_(held), colonies_(colonies), day_(day), rules_(rules) {}

  Twofold combs() const {
    const int counted = held_.counted();
    const double told = colonies_ > 1 ? (counted + 1) / 2 : counted;
    // Where nobody counts combs, as in a skep, the number of them is itself a guess.
    if (hive_.combs_hang == entries::CombsHang::fixed) return {told, no_limit};
    const int untold = held_.boxes_told ? 0 : rules_.untold_boxes * held_.nest;
    return {told, static_cast<double>(held_.all() + untold)};
  }
  // Between combs, and at both sides of every box.
  Twofold seams() const {
    const auto with_sides = [&](double combs) {
      if (hive_.form == entries::HiveForm::horizontal || combs == no_limit) return combs + 1;
      const double nest = std::min<double>(combs, held_.nest), above = combs - nest;
      return combs + std::max(1.0, std::ceil(nest / rules_.body_combs_max)) +
             std::ceil(above / rules_.box_combs_min);
    };
    const Twofold both = combs();
    return {with_sides(both.credible), with_sides(both.possible)};
  }
  Twofold honey_kg() const {
    const facts::Dwelling usual;
    const double told = hive_.honey_kg_per_comb.value_or(usual.honey_kg_per_comb);
    const double most = hive_.honey_kg_per_comb.value_or(std::max(told, rules_.honey_comb_kg_max));
    return in_combs(told, most, rules_.stores_error);
  }
  // The other of two colonies weighs too.
  Twofold whole_kg() const {
    const double shared = colonies_ > 1 ? 2 : 1;
    const auto with_kit = [&](double combs, double honey) {
      return rules_.tare_kg_max + combs * rules_.comb_kg + honey;
    };
    return {with_kit(shared * combs().credible, shared * honey_kg().credible),
            with_kit(combs().possible, honey_kg().possible)};
  }
  Twofold cells() const {
    const facts::Dwelling usual;
    const double told = hive_.worker_cells_per_comb.value_or(usual.worker_cells_per_comb);
    const double most = hive_.worker_cells_per_comb.value_or(std::max(told, rules_.cells_per_comb_max));
    return in_combs(told, most, rules_.cells_error);
  }

  std::string holds() const {
    const int combs = held_.counted();
    std::string text = "the hive '" + hive_.name + "' holds " + work::counted(combs, "comb");
    if (colonies_ > 1) text += " for two colonies";
    text += " on " + day_.iso();
    return held_.boxes_told ? text : text + " and perhaps boxes that the book says nothing of";
  }

 private:
  // An estimate errs by its error often, by twice that seldom.
  Twofold in_combs(double told, double most, double error) const {
    return {combs().credible * told * std::exp(error), combs().possible * most * std::exp(2 * error)};
  }

  const entries::Hive& hive_;
  const MostCombs& held_;
  int colonies_;
  Date day_;
  const FigureRules& rules_;
};

class FigureFinder {
 public:
  FigureFinder(Date day, std::span<const entries::Entry> standing, std::span<const book::Draft> told_with,
               const book::State& state, const FigureRules& rules)
      : day_(day), standing_(standing), told_with_(told_with), state_(state), rules_(rules) {}

  void of(const entries::Inspection& look) {
    tell_bees(look.bees, look.seams);
    about(look.colony, 0, [&](const HiveBeside& hive) {
      add("brood_combs", look.brood_combs, " combs with brood", hive, hive.combs());
      add("seams", look.seams, " seams of bees", hive, hive.seams());
      add("store_combs", look.store_combs, " full combs of stores", hive, hive.combs());
      add("stores_kg", look.stores_kg, " kg of stores", hive, hive.honey_kg());
      add("capped_cells", look.capped_cells, " cells of capped brood", hive, hive.cells());
      add("drone_cells", look.drone_cells, " cells of drone brood", hive, hive.cells());
    });
  }
  void of(const entries::Weight& weight) {
    const bool stores = weight.what == entries::Weighed::stores;
    if (!stores && weight.kg < rules_.whole_hive_kg_min)
      list_.push_back({"kg", amount_text(weight.kg) + " kg for the whole hive",
                       "the lightest empty hive weighs " + amount_text(rules_.whole_hive_kg_min) + " kg",
                       "correct the figure; where the stores alone were weighed say what = stores", 1, 0, 0});
    about(weight.colony, 0, [&](const HiveBeside& hive) {
      add("kg", weight.kg, stores ? " kg of stores" : " kg for the whole hive", hive,
          stores ? hive.honey_kg() : hive.whole_kg());
    });
  }
  void of(const entries::Harvest& harvest) {  // written down when it was extracted, by many
    about(harvest.colony, rules_.boxes_wait_days,
          [&](const HiveBeside& hive) { add("kg", harvest.kg, " kg of honey", hive, hive.honey_kg()); });
  }
  void of(const entries::DeadColony& dead) {
    about(dead.colony, 0, [&](const HiveBeside& hive) {
      add("stores_kg", dead.stores_kg, " kg of stores", hive, hive.honey_kg());
    });
  }
  void of(const entries::ColonyBegan& began) {
    if (began.bees && *began.bees < 1)
      list_.push_back({"bees", "a colony of no bees", "no colony begins without bees",
                       "say how many they were about, or leave bees out where nobody counted", 1, 0, 0});
    tell_bees(began.bees, {});
    const auto hive = state_.hives.find(began.hive);
    if (hive == state_.hives.end() || !began.stores_kg) return;
    std::vector<book::Draft> with(1, {.happened = day_, .payload = began});
    with.insert(with.end(), told_with_.begin(), told_with_.end());
    const auto held = most_combs(standing_, with, began.colony, day_, day_);
    if (!held) return;
    const HiveBeside beside(hive->second, *held, others_in(began.hive, began.colony) + 1, day_, rules_);
    add("stores_kg", began.stores_kg, " kg of stores", beside, beside.honey_kg());
  }
  void of(const entries::MiteCount& count) {
    if (count.bees && *count.bees > 0) {
      list_.push_back(
          {"mites", std::to_string(count.mites) + " mites on " + work::counted(*count.bees, "bee"),
           "hardly a sample shows more than " + on_100(rules_.bee_mites_seldom) +
               " on 100 bees, and none more than " + on_100(rules_.bee_mites_never),
           "check mites and bees; were they exchanged?", count.mites / static_cast<double>(*count.bees),
           rules_.bee_mites_seldom, rules_.bee_mites_never});
      return;
    }
    if (count.method != entries::MiteMethod::board || !count.days) return;
    const double share = count.board_share.value_or(1);
    if (share <= 0) return;
    const double a_day = count.mites / share / *count.days;
    list_.push_back({"mites", work::number_text(a_day, 0) + " mites a day on the board",
                     "hardly a colony drops more than " + work::number_text(rules_.board_mites_seldom, 0) +
                         " a day, and none more than " + work::number_text(rules_.board_mites_never, 0),
                     "check mites, days and board_share", a_day, rules_.board_mites_seldom,
                     rules_.board_mites_never});
  }
  template <class Other>
  void of(const Other&) {}

  std::vector<Figure> list() && { return std::move(list_); }

 private:
  static std::string on_100(double a_bee) { return work::number_text(a_bee * 100, 0); }
  void tell_bees(const entries::Number& bees, const entries::Number& seams) {
    if (!bees) return;
    std::string usual = "a colony has seldom more than " + work::number_text(rules_.bees_seldom, 0) +
                        " bees, and never more than " + work::number_text(rules_.bees_never, 0);
    double credible = rules_.bees_seldom;
    if (seams && (*seams + 1) * rules_.bees_per_seam_max < credible) {
      credible = (*seams + 1) * rules_.bees_per_seam_max;
      usual = "in " + work::number_text(*seams, 1) + " seams and at their sides there is room for about " +
              work::number_text(credible, 0);
    }
    list_.push_back({"bees", work::number_text(*bees, 0) + " bees", std::move(usual),
                     "correct the figure; a count by seams needs no number of bees", *bees, credible,
                     rules_.bees_never});
  }
  int others_in(const HiveId& hive, const ColonyId& but) const {
    return static_cast<int>(std::count_if(
        state_.colonies.begin(), state_.colonies.end(),
        [&](const auto& one) { return one.first != but && !one.second.ended && one.second.hive == hive; }));
  }
  template <class Ask>
  void about(const ColonyId& colony, int days_back, const Ask& ask) {
    const auto held = most_combs(standing_, told_with_, colony, day_ - days_back, day_);
    if (!held) return;
    const auto hive = state_.hives.find(held->hive);
    if (hive == state_.hives.end()) return;
    ask(HiveBeside(hive->second, *held, others_in(held->hive, colony) + 1, day_, rules_));
  }
  void add(const char* field, const entries::Number& amount, const char* words, const HiveBeside& hive,
           const Twofold& limit) {
    if (!amount) return;
    const bool weighed = std::string_view(words).starts_with(" kg") && limit.possible < no_limit;
    list_.push_back(
        {field, amount_text(*amount) + words,
         hive.holds() + (weighed ? ", at the most " + work::number_text(limit.possible, 0) + " kg" : ""),
         "correct the figure, or enter first what was put on by then (room), or what the hive "
         "holds (hive)",
         *amount, limit.credible, limit.possible});
  }

  Date day_;
  std::span<const entries::Entry> standing_;
  std::span<const book::Draft> told_with_;
  const book::State& state_;
  const FigureRules& rules_;
  std::vector<Figure> list_;
};

}  // namespace

Expected<FigureRules> FigureRules::from(const Tables& tables) {
  std::optional<Problem> fault;
  const auto row = [&](const char* table, const char* key) {
    const auto value = tables[table].value(key);
    if (!value && !fault) fault = value.problem();
    return value ? *value : 0;
  };
  const auto whole = [&](const char* key) { return static_cast<int>(row("work", key)); };
  const FactRow* tare = tables["observation"].find("tare_kg");
  const FigureRules rules{.untold_boxes = whole("untold_boxes"),
                          .body_combs_max = std::max(1, whole("body_combs_max")),
                          .box_combs_min = std::max(1, whole("box_combs_min")),
                          .honey_comb_kg_max = row("work", "honey_comb_kg_max"),
                          .cells_per_comb_max = row("work", "cells_per_comb_max"),
                          .stores_error = row("observation", "stores_error"),
                          .cells_error = row("observation", "capped_cells_error"),
                          .tare_kg_max = tare == nullptr ? 0 : tare->high.value_or(tare->value),
                          .comb_kg = row("observation", "comb_kg"),
                          .board_mites_seldom = row("work", "board_mites_seldom_per_day"),
                          .board_mites_never = row("work", "board_mites_never_per_day"),
                          .boxes_wait_days = whole("boxes_wait_days"),
                          .bees_seldom = row("work", "bees_seldom"),
                          .bees_never = row("work", "bees_never"),
                          .bees_per_seam_max = row("work", "bees_per_seam_max"),
                          .bee_mites_seldom = row("work", "bee_mites_seldom"),
                          .bee_mites_never = row("work", "bee_mites_never"),
                          .whole_hive_kg_min = row("work", "whole_hive_kg_min")};
  if (fault) return *fault;
  if (tare == nullptr) return bad_input("there is no row tare_kg", "observation", "put the row back");
  return rules;
}

bool has_figures(const entries::Payload& payload) {
  return std::holds_alternative<entries::Inspection>(payload) ||
         std::holds_alternative<entries::Weight>(payload) ||
         std::holds_alternative<entries::Harvest>(payload) ||
         std::holds_alternative<entries::DeadColony>(payload) ||
         std::holds_alternative<entries::ColonyBegan>(payload) ||
         std::holds_alternative<entries::MiteCount>(payload);
}

std::vector<Figure> figures_in(const entries::Payload& payload, Date day,
                               std::span<const entries::Entry> standing,
                               std::span<const book::Draft> told_with, const book::State& state,
                               const FigureRules& rules) {
  if (!has_figures(payload)) return {};
  FigureFinder finder(day, standing, told_with, state, rules);
  std::visit([&](const auto& said) { finder.of(said); }, payload);
  return std::move(finder).list();
}

}  // namespace beegarth::garth
