#include "garth/sheet_boxes.hpp"

#include <string_view>

namespace beegarth::garth {

namespace {

using Rows = std::vector<std::vector<scene::WriteIn>>;

Rows inspection(const facts::Dwelling* dwelling) {
  std::vector<scene::WriteIn> first;
  if (dwelling == nullptr || dwelling->can_see_seams) first.push_back({"seams of bees", 1});
  first.insert(first.end(), {{"brood combs", 1}, {"eggs  yes / no", 1}, {"queen  yes / no", 1}});
  return {first,
          {{"cups with egg", 1},
           {"open cells", 1},
           {"sealed cells", 1},
           {"store combs", 1},
           {"supers full %", 1}},
          {{"health signs", 2}, {"calm  yes / no", 1}}};
}

Rows mites(const facts::Dwelling* dwelling) {
  if (dwelling == nullptr || dwelling->can_board)
    return {{{"board in (date)", 1}, {"board out (date)", 1}, {"mites", 1}, {"share counted %", 1}}};
  return {{{"wash / roll", 1}, {"bees", 1}, {"mites", 1}}};
}

}  // namespace

std::vector<std::vector<scene::WriteIn>> boxes_of(const facts::Need& need, const facts::Dwelling* dwelling) {
  const std::string_view kind = std::string_view(need.key).substr(0, need.key.find('/'));
  if (kind == "look-cells" || kind == "first-look" || kind == "split" || kind == "check-queen" ||
      kind == "comb-of-eggs" || kind == "look-eggs")
    return inspection(dwelling);
  if (kind == "count-mites" || kind == "count-after") return mites(dwelling);
  if (kind == "room") return {{{"combs put on", 1}, {"of these undrawn", 1}, {"combs taken off", 1}}};
  if (kind == "feed") return {{{"kg given", 1}, {"sugar % by weight", 1}, {"syrup / fondant", 1}}};
  if (kind == "treat" || kind == "winter-treatment")
    return {{{"product", 2}, {"batch", 1}, {"amount, by the label", 1}},
            {{"days on", 1}, {"withdrawal, days", 1}, {"brood  yes / no", 1}}};
  if (kind == "heft") return {{{"left, kg", 1}, {"right, kg", 1}, {"by feel: light / fair / heavy", 2}}};
  if (kind == "dead-out") return {{{"likely cause", 2}, {"store combs", 1}, {"sample taken  yes / no", 1}}};
  return {};
}

}  // namespace beegarth::garth
