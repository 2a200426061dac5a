// Combs in store that nobody entered as a batch. They cannot be told apart, so where marked ones were laid,
// whatever is taken out again unnamed may be one of them.
#pragma once

#include <map>
#include <optional>
#include <string>

#include "base/date.hpp"
#include "base/units.hpp"

namespace beegarth::garth {

struct HoneyMark {
  EntryId entry;  // the feeding or treatment
  Date since;
  std::string words;                // "treated with thymol on 2026-08-14"
  std::optional<Date> stored = {};  // it came with unnamed combs that were laid in store on that day
};

class CombStore {
 public:
  enum class Pile { boxes, nest };  // combs of boxes on top, and of the nest: of one pattern, not of one size

  // `type`: of hive, as the keeper writes it; empty where it is not known, which may be any.
  void lay(Pile pile, const std::string& type, HoneyMark mark, Date day);
  std::optional<HoneyMark> mark_in(Pile pile, const std::string& type) const;
  // One hive was called both: its boxes are those of either.
  void are_one_pattern(const std::string& type, const std::string& other);

 private:
  std::string pattern_of(const std::string& type) const;  // by which all its names are known

  std::map<std::string, std::string> called_like_;  // a type, in plain letters, and one it is the same as
  std::map<std::pair<Pile, std::string>, HoneyMark> marks_;  // the first of each pile and type
};

}  // namespace beegarth::garth
