// The Cholesky factor of a small symmetric matrix.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

namespace beegarth::belief {

// In place: the lower factor, row by row; the upper triangle is left as it was. Pivots below 1e-9 are lifted
// to it.
inline void factor_in_place(std::vector<double>& a, int n) {
  const auto at = [&](int i, int j) -> double& { return a[static_cast<std::size_t>(i * n + j)]; };
  for (int j = 0; j < n; ++j) {
    for (int k = 0; k < j; ++k) at(j, j) -= at(j, k) * at(j, k);
    at(j, j) = std::sqrt(std::max(at(j, j), 1e-9));
    for (int i = j + 1; i < n; ++i) {
      for (int k = 0; k < j; ++k) at(i, j) -= at(i, k) * at(j, k);
      at(i, j) /= at(j, j);
    }
  }
}

}  // namespace beegarth::belief
