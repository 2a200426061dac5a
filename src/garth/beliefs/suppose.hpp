// "Treat on 10 or on 24 August?": what would come of one colony under other deeds, in which order they stand
// by what they cost, and how sure that is. What a gate would refuse is told and not followed,
// and so is a way that cannot be read.
#pragma once

#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <vector>

#include "belief/ranking.hpp"
#include "garth/session.hpp"

namespace beegarth::garth {

struct SupposeWish {
  std::string colony;             // key or name
  std::vector<std::string> ways;  // see ways_said.hpp; "nothing" is always among them
  std::optional<Date> until;      // absent: the end of the coming winter
};

struct RefusedWay {
  std::string name;
  Problem why;
};

struct SupposeAnswer {
  ColonyId colony;
  belief::Supposed supposed;
  std::vector<belief::Way> ways;          // those that were followed
  std::vector<belief::WayJudged> ranked;  // the cheapest first
  std::vector<RefusedWay> refused;        // by a gate, or because nobody can read them
  belief::Prices prices;
  std::vector<std::string> remarks;  // hunger before a way begins; what a gate speaks against
};

// A Problem where the colony, the last day or every way cannot be understood.
Expected<SupposeAnswer> suppose_in(const Session& session, const SupposeWish& wish);

nlohmann::json suppose_json(const SupposeAnswer& answer, const Session& session);
std::string suppose_text(const SupposeAnswer& answer, const Session& session);

}  // namespace beegarth::garth
