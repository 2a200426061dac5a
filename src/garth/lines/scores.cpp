#include "garth/lines/scores.hpp"

#include <map>
#include <optional>
#include <set>

namespace beegarth::garth {
namespace {

using entries::Entry;

// Follows hives to their sites, colonies to their hives and queens to their colonies, entry by entry.
class Follower {
 public:
  void follow(const Entry& entry) {
    if (const auto* hive = std::get_if<entries::Hive>(&entry.payload)) site_of_[hive->hive] = hive->site;
    if (const auto* began = std::get_if<entries::ColonyBegan>(&entry.payload)) {
      hive_of_[began->colony] = began->hive;
      name_of_[began->colony] = began->name;
    }
    if (const auto* split = std::get_if<entries::Split>(&entry.payload)) hive_of_[split->into] = split->hive;
    if (const auto* moved = std::get_if<entries::ColonyMoved>(&entry.payload))
      hive_of_[moved->colony] = moved->hive;
    if (const auto* moved = std::get_if<entries::Transfer>(&entry.payload))
      hive_of_[moved->colony] = moved->hive;
    if (const auto* seen = std::get_if<entries::Queen>(&entry.payload)) follow_queen(*seen);
  }
  std::optional<SiteId> site_of(const ColonyId& colony) const {
    const auto hive = hive_of_.find(colony);
    if (hive == hive_of_.end()) return std::nullopt;
    const auto site = site_of_.find(hive->second);
    return site == site_of_.end() ? std::nullopt : std::optional(site->second);
  }
  std::optional<QueenId> queen_of(const ColonyId& colony) const {
    const auto queen = queen_of_.find(colony);
    return queen == queen_of_.end() ? std::nullopt : std::optional(queen->second);
  }
  std::string name_of(const ColonyId& colony) const {
    const auto name = name_of_.find(colony);
    return name == name_of_.end() || name->second.empty() ? colony.text() : name->second;
  }

 private:
  void follow_queen(const entries::Queen& seen) {
    using entries::QueenEvent;
    const bool gone = seen.event == QueenEvent::lost || seen.event == QueenEvent::removed ||
                      seen.event == QueenEvent::died || seen.event == QueenEvent::superseded;
    if (gone)
      queen_of_.erase(seen.colony);
    else if (seen.which)
      queen_of_[seen.colony] = *seen.which;
  }

  std::map<HiveId, SiteId> site_of_;
  std::map<ColonyId, HiveId> hive_of_;
  std::map<ColonyId, std::string> name_of_;
  std::map<ColonyId, QueenId> queen_of_;
};

}  // namespace

std::vector<lines::Score> scores_in(std::span<const Entry> standing, const lines::Pedigree& pedigree,
                                    std::vector<std::string>& remarks) {
  std::vector<lines::Score> scores;
  Follower then;
  std::map<std::string, int> of_nobody;
  for (const Entry& entry : standing) {
    then.follow(entry);
    const auto* said = std::get_if<entries::Score>(&entry.payload);
    if (said == nullptr) continue;
    const auto id = said->queen ? said->queen : then.queen_of(said->colony);
    const auto queen = id ? pedigree.find(lines::QueenId(id->text())) : std::nullopt;
    const auto site = then.site_of(said->colony);
    if (queen && site)
      scores.push_back({*queen, said->trait, site->text(), entry.happened.year(), said->score});
    else
      ++of_nobody[then.name_of(said->colony)];
  }
  for (const auto& [colony, number] : of_nobody)
    remarks.push_back(
        std::to_string(number) + (number == 1 ? " score of " : " scores of ") + colony +
        (number == 1 ? " names" : " name") +
        " no queen, and the book does not say which was there then: enter the queen, and that she "
        "was seen in the colony (queen ... which).");
  return scores;
}

}  // namespace beegarth::garth
