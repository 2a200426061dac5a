// Draws of what is common to a site and to a keeper, and how well each goes with one colony's members.
//
// Of the site: a grid over standard normal scores; its density times the spacing are the weights (the
// trapezoid rule, which for such smooth curves errs by less than a thousandth). Of the keeper, in four
// dimensions: points of an additive recurrence, spread over the normal that the colonies together point at
// (product of the normals that fit each crowd), wider by two fifths and weighed by prior over that normal.
//
// What a colony c with members z_i of weights w_i says of a draw u is, exactly,
//   p(seen | u) / p(seen) = sum_i w_i N(z_i; sqrt(s) u, 1 - s) / N(z_i; 0, 1),
// because given u the coordinate is normal about sqrt(s) u: the crowd is smoothed by the model's own width
// and by no width that was chosen. A finite crowd cannot show a ratio far below one over its size: one member
// more that knows nothing stands for what it has missed.
#pragma once

#include <span>
#include <vector>

#include "belief/shared.hpp"

namespace beegarth::belief {

struct CommonDraws {
  CommonDraws(const SharedPrior& prior, std::span<const Witness* const> of_keeper);

  std::size_t of_keeper() const { return keeper_.size(); }
  // Of all draws [site * keeper's draws + keeper], or of those of the keeper alone.
  std::vector<double> log_prior(bool at_site) const;
  std::vector<double> log_evidence(const Witness& witness, bool at_site) const;
  // Averages the site out of something said of all draws; by draw of the keeper.
  std::vector<double> over_site(std::span<const double> logs) const;
  // log of sum(odds * ratio at the draw), by member.
  std::vector<double> log_ratios(std::span<const SharedCoordinates> members, bool at_site,
                                 std::span<const double> odds) const;

 private:
  using Keeper = std::array<double, keeper_shared>;
  // Ratios of one member: at each draw of the site and of the keeper.
  void site_ratios(const SharedCoordinates& member, bool at_site, std::vector<double>& to) const;
  void keeper_ratios(const SharedCoordinates& member, std::vector<double>& to) const;

  SharedPrior prior_;
  std::vector<Keeper> keeper_;
  std::vector<double> log_keeper_;  // prior over the normal that the draws came from
};

}  // namespace beegarth::belief
