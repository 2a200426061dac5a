// Queens who, by a slip, would descend from themselves.
#pragma once

#include <map>
#include <span>
#include <string>
#include <vector>

#include "entries/entry.hpp"

namespace beegarth::garth {

// Each queen's key, with the keys of those she descends from: her mother and the dams of her mother's mates.
using Descent = std::map<std::string, std::vector<std::string>>;

// By what the entries say last of each queen.
Descent descent_in(std::span<const entries::Entry> standing);

// The queens of one circle, in order; empty where nobody descends from herself.
std::vector<std::string> circle_in(const Descent& descent);

}  // namespace beegarth::garth
