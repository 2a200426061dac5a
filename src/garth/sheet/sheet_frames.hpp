// The frames of a printed sheet: jobs of one colony that follow each other stand in one, and the jobs are
// numbered through.
#pragma once

#include <vector>

#include "work/plan.hpp"

namespace beegarth::garth {

struct SheetFrame {
  int first_number = 1;                   // the number of its first job
  std::vector<const facts::Need*> needs;  // of the visit, in the order in which to do them
};

std::vector<SheetFrame> frames_of(const work::Visit& visit);
// Nothing is written down of what takes no time: it is only to be left alone.
bool has_boxes(const SheetFrame& frame);

}  // namespace beegarth::garth
