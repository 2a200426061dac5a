#include "garth/sheet/sheet_frames.hpp"

namespace beegarth::garth {

std::vector<SheetFrame> frames_of(const work::Visit& visit) {
  std::vector<SheetFrame> frames;
  int number = 0;
  for (const auto& job : visit.jobs) {
    ++number;
    const bool same = !frames.empty() && job.need.colony &&
                      frames.back().needs.front()->colony == job.need.colony &&
                      frames.back().needs.front()->last_in_round == job.need.last_in_round;
    if (!same) frames.push_back({number, {}});
    frames.back().needs.push_back(&job.need);
  }
  return frames;
}

bool has_boxes(const SheetFrame& frame) {
  int minutes = 0;
  for (const facts::Need* need : frame.needs) minutes += need->minutes;
  return minutes > 0;
}

}  // namespace beegarth::garth
