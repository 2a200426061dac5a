// What the keeper answered to earlier plans: which needs rest, and which deeds were answered as done but
// written nowhere.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "garth/session.hpp"

namespace beegarth::garth {

// By the last answer to each need, by key. Done: it rests as long as tables/work.toml lets that kind rest.
// Skipped: not for two days. Put off: not before the day named.
struct Answered {
  std::map<std::string, Date> resting;     // and the day on which it was done
  std::map<std::string, Date> not_before;  // the first day on which it may be planned again
};
Answered answered_needs(const Session& session);

// A need of a living colony that was answered as done while no entry tells what was done or seen. The odds do
// not know of it.
struct Unwritten {
  ColonyId colony;
  std::string kind;  // "feed"
  const entries::Entry* answer = nullptr;
};
std::vector<Unwritten> unwritten_deeds(const Session& session);

// For the keeper: what to write, and what holds until then.
std::string remark_of(const Unwritten& deed, const std::string& colony_name);

}  // namespace beegarth::garth
