// What leaves the hive and is sold, and what is bought: from the comb to the jar.
#pragma once

#include "entries/kinds/values.hpp"

namespace beegarth::entries {

struct Harvest {
  ColonyId colony;
  double kg = 0;
  Count combs;
  std::optional<LotId> lot;
  std::vector<CombsId> from;  // the batches of comb that were taken
  Flag for_people;            // absent means yes
  Text cleared;               // how the bees were got off the combs
  Text remark;
};

struct Extraction {
  LotId lot;
  Text where;
  Flag clean;           // room and tools were washed before
  Flag wet_combs_back;  // at dusk
  Number kg;
  Text remark;
};
enum class HoneyKind { blossom, heather, honeydew, bakers };
struct Lot {
  LotId lot;
  std::string name;
  HoneyKind kind = HoneyKind::blossom;
  Number moisture_pct;
  Number refractive_index;
  Number temperature_C;  // of the honey when it was read
  std::optional<Date> best_before;
  Text label_name;         // as it is sold; absent: the setting "label_name"
  Number plant_share_pct;  // where that name names a plant
  Text store;
  Text remark;
};
struct Jars {
  LotId lot;
  int jars = 0;
  double net_g = 0;
  std::optional<Date> best_before;
  Text remark;
};
enum class Goods { bees, queen, medicine, feed, kit, honey, plants, other };
struct Purchase {
  Goods what = Goods::other;
  std::string description;
  Text supplier;
  Text supplier_address;
  Text amount;
  Text batch;
  std::optional<Date> expires;
  Number price;
  Text currency;
};
struct Sale {
  Goods what = Goods::other;
  std::string description;
  std::optional<LotId> lot;
  std::optional<ColonyId> colony;
  Count jars;
  Number kg;
  Text buyer;
  Number price;
  Text currency;
};
struct MedicineDisposed {
  std::string product;
  Text batch;
  Text amount;
  std::string how;  // and where
};

}  // namespace beegarth::entries
