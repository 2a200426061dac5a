// What colonies share. Those of one site have the forage and the mites carried in in common, those of one
// keeper the keeper's eyes. A coordinate z of a colony that is shared is
//   z = sqrt(1 - s) * own + sqrt(s) * common,
// both standard normal, where s (rows ..._shared of tables/observation.toml) is the part of the variance that
// is common: by itself every colony is as before, and is fitted by itself. Afterwards draws of what is common
// are weighed by what every colony says of them, and each colony's members are weighed anew by what the
// others say.
#pragma once

#include <array>
#include <functional>
#include <memory>
#include <span>
#include <vector>

#include "base/expected.hpp"
#include "base/fact_table.hpp"
#include "base/units.hpp"

namespace beegarth::belief {

inline constexpr std::size_t site_shared = 2;    // forage, mites carried in
inline constexpr std::size_t keeper_shared = 4;  // the factors on bees, brood, stores and board
struct SharedPrior {
  std::array<double, site_shared> site;  // s of each, 0 < s < 1
  std::array<double, keeper_shared> keeper;
};
Expected<SharedPrior> shared_prior(const FactTable& observation);

// The shared ones among the coordinates of one member.
struct SharedCoordinates {
  std::array<double, site_shared> site{};
  std::array<double, keeper_shared> keeper{};
};
SharedCoordinates shared_of(std::span<const double> coordinates);

// What one colony, fitted by itself, shows of what is common.
struct Witness {
  ColonyId colony;
  SiteId site;  // empty: it stands with no others
  std::size_t entries = 0;
  std::vector<SharedCoordinates> shared;  // by member
  std::vector<double> weights;            // normalised
};

struct CommonDraws;  // the draws of what is common to site and keeper

// What the others say of one colony's shared coordinates: how much likelier each value has become.
class Neighbours {
 public:
  Neighbours() = default;
  Neighbours(std::shared_ptr<const CommonDraws> draws, bool at_site, std::vector<double> odds)
      : draws_(std::move(draws)), at_site_(at_site), odds_(std::move(odds)) {}

  bool silent() const { return odds_.empty(); }
  // Logarithms of the ratio, by member; zero where nobody is heard.
  std::vector<double> log_ratios(std::span<const SharedCoordinates> members) const;

 private:
  std::shared_ptr<const CommonDraws> draws_;
  bool at_site_ = false;
  std::vector<double> odds_;  // [draw of the site * keeper's draws + draw of the keeper], sum 1
};

// Does a task for every index below a count, in any order, perhaps on several threads.
using ForEachIndex = std::function<void(std::size_t count, const std::function<void(std::size_t)>& task)>;
void one_after_another(std::size_t count, const std::function<void(std::size_t)>& task);

// At most so many colonies of a site teach the others there, and of a keeper likewise: those that were looked
// at most. It keeps the cost of asking for one colony within bounds.
inline constexpr std::size_t most_teachers = 12;
struct Pupil {
  ColonyId colony;
  SiteId site;
  std::size_t entries = 0;
};
// Those of `all` that must be fitted so that `wanted` hear what they would hear if all were: in order of key.
std::vector<ColonyId> to_be_fitted(std::span<const Pupil> all, std::span<const ColonyId> wanted);

// For each witness what the others say, in the order given. That order changes nothing.
std::vector<Neighbours> listen(std::span<const Witness> witnesses, const SharedPrior& prior,
                               const ForEachIndex& each = one_after_another);

}  // namespace beegarth::belief
