#include "lines/mixed_model.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cassert>
#include <cmath>

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

// The equations for group means b and independent effects v, effects of individuals being root * v:
//   [X'X        X'Z root            ] [b]   [X'y      ]
//   [root'Z'X   root'Z'Z root + r I ] [v] = [root'Z'y ],   r = residual variance / variance of v
// (Henderson 1984, chapter 5, with the relationship split so that it need not be inverted.)
struct Equations {
  MatrixXd left;
  VectorXd right;
};

Equations equations_of(const MatrixXd& root, const std::vector<Record>& records, std::size_t groups,
                       double ratio) {
  const Index q = root.rows(), g = at(groups);
  VectorXd counts = VectorXd::Zero(q), totals = VectorXd::Zero(q);
  MatrixXd met = MatrixXd::Zero(g, q);  // records by group and individual
  Equations equations{MatrixXd::Zero(g + q, g + q), VectorXd::Zero(g + q)};
  for (const Record& record : records) {
    counts(at(record.individual)) += 1;
    totals(at(record.individual)) += record.value;
    met(at(record.group), at(record.individual)) += 1;
    equations.right(at(record.group)) += record.value;
  }
  equations.left.topLeftCorner(g, g).diagonal() = met.rowwise().sum();
  equations.left.topRightCorner(g, q).noalias() = met * root;
  equations.left.bottomLeftCorner(q, g) = equations.left.topRightCorner(g, q).transpose();
  equations.left.bottomRightCorner(q, q).noalias() = root.transpose() * (counts.asDiagonal() * root);
  equations.left.bottomRightCorner(q, q).diagonal().array() += ratio;
  equations.right.tail(q) = root.transpose() * totals;
  return equations;
}

std::size_t count_of_groups(const std::vector<Record>& records) {
  std::size_t groups = 0;
  for (const Record& record : records) groups = std::max(groups, record.group + 1);
  return groups;
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
  const std::size_t groups = count_of_groups(records);
  const Index g = at(groups), q = at(relationship.size);
  const MatrixXd root = root_of(relationship);
  const Equations equations = equations_of(root, records, groups, ratio);
  const Eigen::LLT<MatrixXd> factors(equations.left);
  const VectorXd solution = factors.solve(equations.right);
  const VectorXd effects = root * solution.tail(q);
  // Variance of (estimate - truth): the lower right of the inverse, turned back by the root. With left = L L'
  // the lower right of the inverse is K'K, K the lower right of the inverse of L.
  const MatrixXd lower = factors.matrixL();
  const MatrixXd turned =
      lower.bottomRightCorner(q, q).triangularView<Eigen::Lower>().solve(root.transpose());

  MixedModel model;
  for (Index group = 0; group < g; ++group) model.group_means.push_back(solution(group));
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
