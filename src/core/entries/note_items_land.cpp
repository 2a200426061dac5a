// What can be said of a site's plants, and of the wild pollinators that share it.
#include <algorithm>
#include <utility>

#include "entries/note_items.hpp"
#include "entries/note_values.hpp"

namespace beegarth::entries {
namespace {

Write bloom(BloomStage stage) {
  return [=](Said& said, const PatternMatch& m) {
    return add(said, Bloom{.site = said.site, .plant = m.chosen[0], .stage = stage});
  };
}
bool cut(Said& said, const PatternMatch& m) {
  return add(said, Cut{.site = said.site,
                       .what = m.chosen[0],
                       .how = m.chosen.size() > 1 ? Text(m.chosen[1]) : std::nullopt});
}
bool planted(Said& said, const PatternMatch& m) {
  const auto count = m.numbers.empty() ? std::nullopt : whole(m.numbers[0]);
  return count && add(said, Planted{.site = said.site, .plant = m.chosen[0], .count = *count});
}
Write cared(PlantDeed deed) {
  return [=](Said& said, const PatternMatch& m) {
    const Count count = m.numbers.empty() ? std::nullopt : whole(m.numbers[0]);
    if (!m.numbers.empty() && !count) return false;
    return add(said, PlantCare{.site = said.site, .plant = m.chosen[0], .deed = deed, .count = count});
  };
}

NestOf nest_of(const std::string& word) {
  return word == "bumblebee" ? NestOf::bumblebee
         : word == "wasp"    ? NestOf::wasp
         : word == "hornet"  ? NestOf::hornet
         : word == "bird"    ? NestOf::bird
                             : NestOf::hedgehog;
}
bool nest(Said& said, const PatternMatch& m) {
  return add(said, Nest{.site = said.site, .of = nest_of(m.chosen[0]), .place = m.chosen[1]});
}
bool nest_of_bees(Said& said, const PatternMatch& m) {
  const NestOf of = m.chosen[0] == "mining" ? NestOf::mining_bee : NestOf::cavity_bee;
  return add(said, Nest{.site = said.site, .of = of, .place = m.chosen[1]});
}

bool watch(Said& said, const PatternMatch& m) {
  return add(said, FlowerWatch{.site = said.site, .plant = m.chosen[0], .minutes = m.numbers[0]});
}
Write visitors(Count FlowerWatch::*field) {
  return [=](Said& said, const PatternMatch& m) {
    const auto count = whole(m.numbers[0]);
    return count && change_last<FlowerWatch>(said, [&](FlowerWatch& w) { return put(w.*field, *count); });
  };
}
Write no_visitors(Count FlowerWatch::*field) {
  return [=](Said& said, const PatternMatch&) {
    return change_last<FlowerWatch>(said, [&](FlowerWatch& w) { return put(w.*field, 0); });
  };
}
bool square_metres(Said& said, const PatternMatch& m) {
  return change_last<FlowerWatch>(said, [&](FlowerWatch& w) { return put(w.area_m2, m.numbers[0]); });
}

std::vector<Item> flower_watch() {
  using F = FlowerWatch;
  std::vector<Item> items{
      {"^ watch|watched + for? #min", watch},
      {"^ flower watch of|on? + for? #min", watch},
      {"# m2|sqm", square_metres},
  };
  for (const auto& [words, field] :
       std::initializer_list<std::pair<const char*, Count F::*>>{{"honey bee", &F::honey_bees},
                                                                 {"honeybee|honeybees", &F::honey_bees},
                                                                 {"bumblebee", &F::bumblebees},
                                                                 {"solitary bee", &F::solitary_bees},
                                                                 {"wasp", &F::wasps},
                                                                 {"hoverfly", &F::hoverflies},
                                                                 {"other fly", &F::other_flies},
                                                                 {"butterfly", &F::butterflies},
                                                                 {"beetle", &F::beetles},
                                                                 {"other visitor", &F::others}}) {
    items.emplace_back(("# " + std::string(words)).c_str(), visitors(field));
    items.emplace_back(("no " + std::string(words)).c_str(), no_visitors(field));
  }
  return items;
}

}  // namespace

std::vector<Item> items_of_land() {
  std::vector<Item> items = flower_watch();
  for (Item& item : std::vector<Item>{
           {"^ the? + first in flower|bloom $", bloom(BloomStage::first)},
           {"^ the? + first flower $", bloom(BloomStage::first)},
           {"^ the? + coming|starting in|into|to flower $", bloom(BloomStage::first)},
           {"^ first + flower $", bloom(BloomStage::first)},
           {"^ the? + in full flower|bloom $", bloom(BloomStage::full)},
           {"^ the? + full out $", bloom(BloomStage::full)},
           unclear("^ the? + over|finished $", "is its flower over? say: ... flower over"),
           {"^ the? + gone over $", bloom(BloomStage::over)},
           {"^ the? + flower|bloom over|finished $", bloom(BloomStage::over)},
           unclear("^ the? + in flower|bloom $", "first flowers, full flower or over?"),
           {"^ the? + cut $", cut},
           {"^ the? + cut with|by a|the? ~", cut},
           {"^ cut the? + $", cut},
           {"^ the? + mown|mowed|scythed $", cut},
           {"^ planted # + $", planted},
           {"^ planted the? + $", planted},
           {"^ # + planted $", planted},
           {"^ watered the? + $", cared(PlantDeed::watered)},
           {"^ watered # + $", cared(PlantDeed::watered)},
           {"^ mulched the? + $", cared(PlantDeed::mulched)},
           {"^ mulched # + $", cared(PlantDeed::mulched)},
           {"^ weeded the? + $", cared(PlantDeed::weeded)},
           {"^ guarded # + $", cared(PlantDeed::guarded)},
           {"^ guards on # + $", cared(PlantDeed::guarded)},
           {"^ a? =bumblebee|wasp|hornet|bird|hedgehog nest found|seen? ~ $", nest},
           {"^ a? =mining|mason|leafcutter bee nest found|seen? ~ $", nest_of_bees},
       })
    items.push_back(std::move(item));
  return items;
}

}  // namespace beegarth::entries
