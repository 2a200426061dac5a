#include "lines/mixed_model.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cassert>
#include <cmath>
#include <map>

namespace beegarth::lines {
namespace {

using Eigen::Index;
using Eigen::MatrixXd;
using Eigen::VectorXd;

Index at(std::size_t index) {
  return static_cast<Index>(index);
}

// A square root of the relationship, root * root' = relationship. By the pivoted factors, because queens
// without any segregation left make it singular and then it has no inverse.
MatrixXd root_of(const Square& relationship) {
  using RowMajor = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;
  const Index n = at(relationship.size);
  const MatrixXd a = Eigen::Map<const RowMajor>(relationship.cells.data(), n, n);
  const Eigen::LDLT<MatrixXd> factors(a);
  const VectorXd scale = factors.vectorD().cwiseMax(0.0).cwiseSqrt();
  const MatrixXd lower = factors.matrixL();
  return factors.transpositionsP().transpose() * (lower * scale.asDiagonal()).eval();
}

// Records of one group: how many of each individual, and their sum.
struct Group {
  std::map<std::size_t, double> counts;
  double records = 0, total = 0;
};

std::vector<Group> groups_of(const std::vector<Record>& records) {
  std::vector<Group> groups;
  for (const Record& record : records) {
    if (record.group >= groups.size()) groups.resize(record.group + 1);
    Group& group = groups[record.group];
    group.counts[record.individual] += 1;
    group.records += 1;
    group.total += record.value;
  }
  return groups;
}

// The mixed-model equations for group means b and independent effects v, effects of individuals being root *
// v:
//   [X'X        X'Z root            ] [b]   [X'y      ]
//   [root'Z'X   root'Z'Z root + r I ] [v] = [root'Z'y ],   r = residual variance / variance of v
// (Henderson 1984, chapter 5, with the relationship split so that it need not be inverted). X'X is diagonal,
// the number of records in each group, so that the means are put in terms of the effects first:
//   (root'(Z'Z - Z'X (X'X)^-1 X'Z) root + r I) v = root'(Z'y - Z'X (X'X)^-1 X'y)
struct Equations {
  MatrixXd left;
  VectorXd right;
};

Equations equations_of(const MatrixXd& root, const std::vector<Record>& records,
                       const std::vector<Group>& groups, double ratio) {
  const Index q = root.rows();
  MatrixXd within = MatrixXd::Zero(q, q);
  VectorXd totals = VectorXd::Zero(q);
  for (const Record& record : records) totals(at(record.individual)) += record.value;
  for (const Group& group : groups) {
    for (const auto& [one, count] : group.counts) {
      within(at(one), at(one)) += count;
      totals(at(one)) -= count * group.total / group.records;
      for (const auto& [other, others] : group.counts)
        within(at(one), at(other)) -= count * others / group.records;
    }
  }
  Equations equations{root.transpose() * (within * root), root.transpose() * totals};
  equations.left.diagonal().array() += ratio;
  return equations;
}

// y'(y - Xb - Zu) / (records - groups): restricted maximum likelihood where the ratio of the variances is
// given.
void estimate_variance(MixedModel& model, const std::vector<Record>& records) {
  model.differences = static_cast<int>(records.size()) - static_cast<int>(model.group_means.size());
  if (model.differences < 1) return;
  double sum = 0;
  for (const Record& record : records) {
    // Against the group's mean, so that large numbers do not cancel; the residuals of a group sum to nothing.
    const double above = record.value - model.group_means[record.group];
    sum += above * (above - model.individuals[record.individual].estimate);
  }
  model.residual_variance = std::max(0.0, sum) / model.differences;
}

}  // namespace

MixedModel solve_mixed_model(const Square& relationship, const std::vector<Record>& records, double share) {
  assert(share > 0 && share < 1);
  const double ratio = (1 - share) / share;
  const std::vector<Group> groups = groups_of(records);
  const MatrixXd root = root_of(relationship);
  const Equations equations = equations_of(root, records, groups, ratio);
  const Eigen::LLT<MatrixXd> factors(equations.left);
  const VectorXd effects = root * factors.solve(equations.right);
  // Variance of (estimate - truth): root * inverse of left * root', of which the diagonal is wanted.
  const MatrixXd turned = factors.matrixL().solve(root.transpose());

  MixedModel model;
  for (const Group& group : groups) {
    double rest = group.total;
    for (const auto& [individual, count] : group.counts) rest -= count * effects(at(individual));
    model.group_means.push_back(rest / group.records);
  }
  for (std::size_t i = 0; i < relationship.size; ++i) {
    const double error = turned.col(at(i)).squaredNorm();
    const double own = relationship.at(i, i);
    const double reliability = own > 0 ? std::clamp(1 - error * ratio / own, 0.0, 1.0) : 0.0;
    model.individuals.push_back({effects(at(i)), error, reliability});
  }
  estimate_variance(model, records);
  return model;
}

}  // namespace beegarth::lines
