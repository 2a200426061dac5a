// tables/work.toml read line by line, because this suite links the room alone.
#pragma once

#include "read_rows.hpp"

namespace beegarth::work {

inline FactTable work_table() {
  return testing::rows_of("work");
}

}  // namespace beegarth::work
