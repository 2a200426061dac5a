// The published instances of orienteering with times of opening, read from the folder of benchmarks beside
// the source; each value and its source stand in the README of its folder there.
#pragma once

#include <cmath>
#include <filesystem>
#include <fstream>
#include <sstream>
#include <string>
#include <utility>
#include <vector>

#include "work/rounds/orienteering.hpp"

namespace beegarth::published {

struct Instance {
  std::string name;
  work::rounds::Question question;
  double best_known = 0;
  bool optimum = false;  // the source says that it is proven
};

using Rows = std::vector<std::vector<double>>;
using Points = std::vector<std::pair<double, double>>;

inline Rows rows_of(const std::string& path) {
  std::ifstream file(path);
  Rows rows;
  for (std::string line; std::getline(file, line);) {
    std::istringstream words(line);
    auto& row = rows.emplace_back();
    for (double value = 0; words >> value;) row.push_back(value);
    if (row.empty()) rows.pop_back();
  }
  return rows;
}

// Cut off after so many decimals, as the instances ask for (1 for Solomon's, 2 for Cordeau's); -1: as it is.
inline std::vector<std::vector<double>> ways(const Points& points, int decimals) {
  std::vector<std::vector<double>> table;
  const double power = std::pow(10.0, decimals);
  for (const auto& from : points) {
    auto& row = table.emplace_back();
    for (const auto& to : points) {
      const double far = std::hypot(from.first - to.first, from.second - to.second);
      // 1e-9: a way that is exact in decimals may come out a hair shorter.
      row.push_back(decimals < 0 ? far : std::floor(far * power + 1e-9) / power);
    }
  }
  return table;
}

inline Instance with_windows(const std::string& folder, const std::string& file, int tours, double best,
                             bool optimum) {
  const Rows rows = rows_of(folder + "toptw/" + file + ".txt");
  Instance instance{file + ", m = " + std::to_string(tours), {}, best, optimum};
  instance.question.days = tours;
  Points points;
  for (std::size_t i = 3; i < rows.size(); ++i) {
    const auto& row = rows[i];
    points.push_back({row[1], row[2]});
    work::rounds::Place place;
    place.service = row[3];
    place.score = row[4];
    place.windows = {{{}, row[row.size() - 2], row.back()}};
    instance.question.places.push_back(std::move(place));
  }
  for (int twice = 0; twice < 2; ++twice) points.push_back({rows[2][1], rows[2][2]});
  instance.question.travel = ways(points, file.starts_with("pr") ? 2 : 1);
  instance.question.length.assign(static_cast<std::size_t>(tours), rows[2].back());
  return instance;
}

// Several windows, which change from tour to tour, entrance fees, and at most so many of a type: FORMAT.txt
// there.
inline Instance with_many_windows(const std::string& folder, const std::string& file, double best) {
  const Rows rows = rows_of(folder + "mctopmtw/MCTOPMTW-" + file + ".txt");
  Instance instance{file + ", several windows", {}, best, false};
  auto& question = instance.question;
  question.days = static_cast<int>(rows[0][0]);
  for (std::size_t i = 2; i < 13; ++i) question.limits.push_back({rows[0][i], false});
  Points points;
  for (std::size_t i = 2; i < rows.size(); ++i) {
    const auto& row = rows[i];
    points.push_back({row[1], row[2]});
    work::rounds::Place place;
    place.service = row[3];
    place.score = row[4];
    for (int day = 0; day < question.days; ++day) {
      const bool odd = (row[10] != 0) == (day % 2 == 0);  // windows 1 and 3, else 2 and 4
      for (std::size_t window = odd ? 5 : 6; window < 9; window += 2)
        place.windows.push_back({day, row[window], row[window + 1]});
    }
    place.uses.assign(row.begin() + 11, row.begin() + 22);
    question.places.push_back(std::move(place));
  }
  for (int twice = 0; twice < 2; ++twice) points.push_back({rows[1][1], rows[1][2]});
  question.travel = ways(points, 1);
  question.length.assign(static_cast<std::size_t>(question.days), rows[1].back());
  return instance;
}

inline Instance without_windows(const std::string& folder, const std::string& file, double best,
                                bool optimum) {
  const Rows rows = rows_of(folder + "op_tsiligirides/tsiligirides_problem_" + file + ".txt");
  Instance instance{file + ", no windows", {}, best, optimum};
  Points points;
  for (std::size_t i = 3; i < rows.size(); ++i) {
    points.push_back({rows[i][0], rows[i][1]});
    instance.question.places.push_back({{}, 0, rows[i][2], {}});
  }
  for (std::size_t i = 1; i < 3; ++i) points.push_back({rows[i][0], rows[i][1]});
  instance.question.travel = ways(points, -1);
  instance.question.length = {rows[0][0]};
  return instance;
}

inline std::vector<Instance> instances(const std::string& folder, int most_tours = 4) {
  struct Values {
    const char* file;
    std::vector<double> best;  // of 1, 2, 3 and 4 tours
    bool first_proven;
  };
  const std::vector<Values> values{
      {"c101", {320, 590, 810, 1020}, true},    {"c105", {340, 640, 860, 1040}, true},
      {"c201", {870, 1430, 1770, 1810}, false}, {"pr01", {308, 484, 602, 654}, false},
      {"r101", {198, 349, 484, 611}, true},     {"r105", {247, 453, 619, 767}, true}};
  std::vector<Instance> all;
  for (const auto& [file, best, first_proven] : values)
    for (int tours = 1; tours <= most_tours; ++tours)
      all.push_back(with_windows(folder, file, tours, best[static_cast<std::size_t>(tours) - 1],
                                 first_proven && tours == 1));
  all.push_back(with_many_windows(folder, "1-c101", 320));
  all.push_back(with_many_windows(folder, "1-r101", 198));
  all.push_back(with_many_windows(folder, "2-c101", 590));
  all.push_back(with_many_windows(folder, "2-r105", 430));
  all.push_back(without_windows(folder, "1_budget_15", 45, true));
  all.push_back(without_windows(folder, "1_budget_40", 155, false));
  all.push_back(without_windows(folder, "2_budget_20", 200, true));
  all.push_back(without_windows(folder, "2_budget_30", 265, true));
  return all;
}

}  // namespace beegarth::published
