// Between which values a field may lie, and in which unit.
#pragma once

namespace beegarth::entries {

struct Limits {
  double low;
  double high;
  const char* unit;
};

namespace limits {
inline constexpr Limits latitude{-90, 90, "deg"}, longitude{-180, 180, "deg"}, elevation{-430, 6000, "m"},
    offset{-12, 14, "h"}, minutes{0, 600, "min"}, km{0, 1000, "km"}, place{1, 500, ""}, combs{0, 60, "combs"},
    comb_change{-60, 60, "combs"}, cells_per_comb{500, 20000, "cells"}, kg_per_comb{0.2, 10, "kg"},
    bees_per_seam{200, 6000, "bees"}, conductance{0.05, 10, "W/K"}, bees{0, 120000, "bees"},
    stores{0, 120, "kg"}, year{1990, 2100, ""}, seams{0, 60, "seams"}, cells{0, 200000, "cells"},
    queen_cells{0, 300, "cells"}, share{0, 1, ""}, mites{0, 100000, "mites"}, days{0, 400, "days"},
    treatment_days{0, 120, "days"}, board_days{0.2, 60, "days"}, sample{1, 5000, ""}, whole_kg{0, 300, "kg"},
    feed_kg{0.05, 40, "kg"}, pct{0, 100, "%"}, cold{-60, 45, "C"}, hot{-50, 60, "C"}, rain{0, 500, "mm"},
    month_rain{0, 2000, "mm"}, wind{0, 70, "m/s"}, gust{0, 110, "m/s"}, sun{0, 24, "h"}, month{1, 12, ""},
    month_days{0, 31, "days"}, nectar{0, 15, "kg/day"}, weekday{1, 7, ""}, hour{0, 24, "h"},
    kit{0, 10000, ""}, any{-1e9, 1e9, ""}, money{0, 1e7, ""}, metres{-5000, 5000, "m"}, size{0, 5000, "m"},
    planted{1500, 2100, ""}, stand_cm{0, 300, "cm"}, comb_mm{50, 800, "mm"}, azimuth{0, 360, "deg"},
    drones{1, 60, "drones"}, thread{0, 200, "mm"}, lot_kg{0, 5000, "kg"}, moisture{10, 35, "%"},
    index{1.46, 1.52, ""}, jars{0, 100000, "jars"}, net_g{1, 50000, "g"}, wax_kg{0, 1000, "kg"},
    build_hours{0, 1000, "h"}, area{0.01, 1e7, "m2"}, plants{0, 100000, "plants"}, watch{1, 240, "min"},
    visitors{0, 5000, "visitors"}, file_bytes{0, 2e9, "bytes"};
}  // namespace limits

}  // namespace beegarth::entries
