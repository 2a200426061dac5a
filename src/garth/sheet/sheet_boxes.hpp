// The boxes to write in by hand, told once: the printed sheet draws them and the keying-in reads them, in the
// same order.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "facts/dwelling.hpp"
#include "facts/need.hpp"
#include "scene/layout.hpp"

namespace beegarth::garth {

enum class BoxReads { yes_no, number, whole, percent, choice, signs, day, text, answer };

struct Box {
  std::string name;   // what it is called when it is keyed in: "brood combs"
  std::string label;  // what is printed in it; the same where it is empty
  double share = 1;   // of the row's width
  BoxReads reads = BoxReads::text;
  std::vector<std::string> choices = {};  // the words of a choice
  bool operator==(const Box&) const = default;

  const std::string& printed() const { return label.empty() ? name : label; }
};

// Boxes that together tell of one thing seen or done.
struct BoxSet {
  std::string key;    // "look"
  std::string words;  // "a look into the hive"
  std::vector<std::vector<Box>> rows;
};

// The sets for several jobs in one frame, each once, in the order of the jobs. A null `dwelling` says
// nothing of the hive: every box is offered.
std::vector<BoxSet> sets_of(const std::vector<const facts::Need*>& needs, const facts::Dwelling* dwelling);
// Every set that can be filled in at such a hive.
std::vector<BoxSet> every_set(const facts::Dwelling* dwelling);
// What became of the jobs of a frame, and room for a note: the last boxes of each frame.
BoxSet closing_set(bool has_jobs = true);

std::vector<scene::WriteIn> printed_boxes(const std::vector<Box>& row);

}  // namespace beegarth::garth
