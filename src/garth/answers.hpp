// What the keeper answered to earlier plans: which needs rest, and which deeds were answered as done but
// written nowhere.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "garth/session.hpp"

namespace beegarth::garth {

// Needs that are not to be asked today, by key, with the day of the answer. Skipped: for two days. Put off:
// past the plan. Done: as long as tables/work.toml lets that kind rest.
std::map<std::string, Date> resting_needs(const Session& session, int days);

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
