// comb-room: cells, bees and honey that a comb of any size holds.
#include "colony/comb_cells.hpp"
#include "garth/calc/calc.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {
namespace {

Json input_schema() {
  return object_schema(
      {{"length_mm", number_schema("of the comb, inside its frame", 20, 2000)},
       {"depth_mm", number_schema("of the comb", 20, 2000)},
       {"cell_mm",
        number_schema("across the flats of a cell; worker 5.4 where absent, drone about 6.9", 4, 8)}},
      {"length_mm", "depth_mm"});
}

Json output_schema() {
  return object_schema({{"area_dm2_side", number_schema("of one side", 0, 1e6)},
                        {"cells_per_dm2", number_schema("both sides", 0, 1e6)},
                        {"cells", number_schema("both sides, fully drawn", 0, 1e9)}},
                       {"area_dm2_side", "cells_per_dm2", "cells"});
}

Json example() {
  return {{"length_mm", 270}, {"depth_mm", 360}};
}

Expected<Json> run(const Json& input, const Tables&) {
  Reader reader(input);
  colony::Comb comb;
  comb.length_mm = reader.number("length_mm", 20, 2000);
  comb.depth_mm = reader.number("depth_mm", 20, 2000);
  comb.cell_mm = reader.number_or("cell_mm", 4, 8, comb.cell_mm);
  if (auto fault = reader.done()) return *std::move(fault);
  return Json{{"area_dm2_side", colony::area_dm2(comb)},
              {"cells_per_dm2", colony::cells_per_dm2_of_width(comb.cell_mm)},
              {"cells", colony::cells_of(comb)}};
}

}  // namespace

Calc comb_room_calc() {
  return {"comb-room",  "cells that a comb of any size and cell holds, for hives that stand in no table",
          input_schema, output_schema,
          example,      run};
}

}  // namespace beegarth::garth
