// What can be said of feed given and of honey taken.
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

FeedForm form_of(const std::string& what) {
  return what == "syrup"     ? FeedForm::syrup
         : what == "fondant" ? FeedForm::fondant
         : what == "comb"    ? FeedForm::comb
                             : FeedForm::pollen;
}
bool feed(Said& said, double kg, std::optional<double> sugar_pct, const std::string& what) {
  return add(said, Feed{.colony = said.colony, .kg = kg, .sugar_pct = sugar_pct, .form = form_of(what)});
}
bool feed_kg_first(Said& said, const PatternMatch& m) {
  return feed(said, m.numbers[0], m.numbers.size() > 1 ? Number(m.numbers[1]) : std::nullopt, m.chosen[0]);
}
bool feed_sugar_first(Said& said, const PatternMatch& m) {
  return feed(said, m.numbers[1], m.numbers[0], m.chosen[0]);
}
Write fed_from(FeedSource source) {
  return [=](Said& said, const PatternMatch& m) {
    return add(said, Feed{.colony = said.colony,
                          .kg = m.numbers[0],
                          .sugar_pct = m.numbers.size() > 1 ? Number(m.numbers[1]) : std::nullopt,
                          .form = form_of(m.chosen[0]),
                          .source = source});
  };
}
// "1:1" alone may be by weight or by measure: it is kept as it was said.
bool fed_ratio(Said& said, const PatternMatch& m) {
  return add(said, Feed{.colony = said.colony, .kg = m.numbers[0], .product = m.chosen.back()});
}
bool fed_ratio_by_weight(Said& said, const PatternMatch& m) {
  const double sugar = m.numbers[1], water = m.numbers[2];
  return add(said,
             Feed{.colony = said.colony, .kg = m.numbers[0], .sugar_pct = 100 * sugar / (sugar + water)});
}
// "another 2 kg" is a second feed of the same.
bool fed_again(Said& said, const PatternMatch& m) {
  for (std::size_t i = said.others.size(); i-- > 0;) {
    const auto* before = std::get_if<Feed>(&said.others[i]);
    if (!before) continue;
    Feed again = *before;
    again.kg = m.numbers[0];
    return add(said, again);
  }
  return false;
}
bool bought(Said& said, const PatternMatch&) {
  return change_last<Feed>(said, [](Feed& f) { return put(f.source, FeedSource::bought_feed); });
}

bool harvested(Said& said, const PatternMatch& m) {
  const Count combs_taken = m.numbers.size() > 1 ? whole(m.numbers[1]) : std::nullopt;
  if (m.numbers.size() > 1 && !combs_taken) return false;
  return add(said, Harvest{.colony = said.colony, .kg = m.numbers[0], .combs = combs_taken});
}
bool combs_first(Said& said, const PatternMatch& m) {
  const auto combs = whole(m.numbers[0]);
  return combs && add(said, Harvest{.colony = said.colony, .kg = m.numbers[1], .combs = *combs});
}
bool into_lot(Said& said, const PatternMatch& m) {
  return change_last<Harvest>(said, [&](Harvest& h) { return put(h.lot, LotId(m.chosen[0])); });
}
bool for_the_bees(Said& said, const PatternMatch&) {
  return change_last<Harvest>(said, [](Harvest& h) { return put(h.for_people, false); });
}

}  // namespace

std::vector<Item> items_fed() {
  return {
      {"fed|given #kg of? =syrup|fondant|pollen #%?", feed_kg_first},
      {"fed|given #kg of? #% sugar? =syrup", feed_kg_first},
      {"fed|given =syrup|fondant #kg #%?", feed_kg_first},
      {"fed|given sugar? =syrup #% #kg", feed_sugar_first},
      {"fed|given #% sugar? =syrup #kg", feed_sugar_first},
      {"#kg of? =syrup|fondant|pollen given|fed", feed_kg_first},
      {"fed|given #kg of? sugar =syrup|fondant #%?", fed_from(FeedSource::sugar)},
      {"fed|given sugar =syrup|fondant #kg #%?", fed_from(FeedSource::sugar)},
      {"fed|given #kg of? bought =syrup|fondant|pollen #%?", fed_from(FeedSource::bought_feed)},
      {"fed|given #kg of|in? own =comb", fed_from(FeedSource::own_combs)},
      {"bought feed?", bought},
      unclear("fed|given #kg of? sugar #ratio $", "kg of sugar or of syrup? say: fed 3 kg syrup 2:1"),
      unclear("fed|given #kg of? sugar as|in|for syrup", "kg of sugar or of syrup? say: fed 3 kg syrup 2:1"),
      {"fed|given #kg of? sugar? syrup? #ratio sugar? syrup?", fed_ratio},
      {"fed|given #kg of? sugar? syrup? #ratio by weigh sugar? syrup?", fed_ratio_by_weight},
      unclear("fed|given #kg of? sugar as|in|for #ratio syrup?",
              "kg of sugar or of syrup? say: fed 3 kg syrup 2:1"),
      {"fed|given #ratio sugar? syrup #kg",
       [](Said& s, const PatternMatch& m) {
         return add(s, Feed{.colony = s.colony, .kg = m.numbers[2], .product = m.chosen[0]});
       }},
      {"fed|given another #kg of? =syrup|fondant|pollen #%?", feed_kg_first},
      asking("fed|given another #kg", fed_again, "of what: syrup, fondant, comb or pollen?"),
      asking("another #kg", fed_again, "of what: syrup, fondant, comb or pollen?"),
      unclear("fed|given #kg $", "kg of what: syrup, fondant, comb or pollen?"),
      {"harvested #kg of? honey?", harvested},
      {"harvested #kg of? honey? from|in? # super? comb", harvested},
      {"harvested # super? comb of? honey? #kg", combs_first},
      {"taken #kg of? honey", harvested},
      {"taken #kg of? honey from|in|off # super? comb", harvested},
      {"taken off? # super? comb of? honey? #kg", combs_first},
      {"#kg of? honey taken|harvested off?", harvested},
      {"lot *", into_lot},
      {"not for people", for_the_bees},
  };
}

}  // namespace beegarth::entries
