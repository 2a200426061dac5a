#include "lines/relationship.hpp"

#include <limits>
#include <map>
#include <utility>

namespace beegarth::lines {
namespace {

double decimal(const Share& share) {
  return static_cast<double>(share.part) / static_cast<double>(share.of);
}

double two_of_one_part(const Suitors& part, double dam_with_herself) {
  if (!part.number) return dam_with_herself;
  const double same = 1.0 / *part.number;
  return same + (1 - same) * dam_with_herself;
}

constexpr std::size_t most_rows = 8000;  // half a gigabyte
constexpr std::size_t nobody = std::numeric_limits<std::size_t>::max();

// The tabular method (Emik & Terrill 1949): each bee's row is made of the rows of its parents. Drones without
// number stand to everybody as their dam does, herself included; counted drones with several daughters get a
// row of their own.
class Table {
 public:
  explicit Table(const Pedigree& pedigree) : pedigree_(pedigree), row_of_queen_(pedigree.size()) {
    count_daughters();
    size_ = rows_needed();
  }

  std::size_t size() const { return size_; }

  void fill() {
    cells_.assign(size_ * size_, 0.0);
    for (const std::size_t queen : pedigree_.oldest_first()) {
      if (const auto mother = pedigree_.mother(queen)) add_drones(*mother);
      add_queen(queen);
    }
  }

  Square of_queens() const {
    Square square{pedigree_.size(), std::vector<double>(pedigree_.size() * pedigree_.size())};
    for (std::size_t a = 0; a < square.size; ++a)
      for (std::size_t b = 0; b < square.size; ++b)
        square.at(a, b) = cells_[row_of_queen_[a] * size_ + row_of_queen_[b]];
    return square;
  }

 private:
  void count_daughters() {
    for (std::size_t queen = 0; queen < pedigree_.size(); ++queen) {
      const auto mother = pedigree_.mother(queen);
      if (!mother) continue;
      for (std::size_t part = 0; part < pedigree_.mating(*mother).size(); ++part)
        if (pedigree_.father(queen).value_or(part) == part) ++daughters_[{*mother, part}];
    }
  }

  // Only sisters can share a drone.
  bool needs_row(std::size_t mother, std::size_t part) const {
    const auto found = daughters_.find({mother, part});
    return pedigree_.mating(mother)[part].number && found != daughters_.end() && found->second > 1;
  }

  std::size_t rows_needed() const {
    std::size_t rows = pedigree_.size();
    for (const auto& [drones, daughters] : daughters_) rows += needs_row(drones.first, drones.second) ? 1 : 0;
    return rows;
  }

  void add_drones(std::size_t mother) {
    if (drone_rows_.count({mother, 0}) != 0) return;
    const auto mating = pedigree_.mating(mother);
    for (std::size_t part = 0; part < mating.size(); ++part) {
      const std::size_t dam = mating[part].dam ? row_of_queen_[*mating[part].dam] : nobody;
      std::size_t row = dam;
      if (needs_row(mother, part)) {
        row = used_++;
        add(row, dam, 1.0);
        mirror(row);
        cells_[row * size_ + row] =
            two_of_one_part(mating[part], dam == nobody ? 0 : cells_[dam * size_ + dam]);
      }
      drone_rows_[{mother, part}] = row;
    }
  }

  void add_queen(std::size_t queen) {
    const std::size_t row = used_++;
    row_of_queen_[queen] = row;
    double inbreeding = 0;
    if (const auto mother = pedigree_.mother(queen)) {
      const std::size_t mother_row = row_of_queen_[*mother];
      add(row, mother_row, 0.5);
      const auto mating = pedigree_.mating(*mother);
      const auto known = pedigree_.father(queen);
      for (std::size_t part = 0; part < mating.size(); ++part) {
        if (known && *known != part) continue;
        const double share = known ? 1.0 : decimal(mating[part].share);
        const std::size_t drone = drone_rows_[{*mother, part}];
        if (drone == nobody) continue;
        add(row, drone, 0.5 * share);
        inbreeding += share * cells_[mother_row * size_ + drone];
      }
    }
    mirror(row);
    cells_[row * size_ + row] = 0.5 * (1 + inbreeding);
  }

  void add(std::size_t row, std::size_t parent, double part) {
    if (parent == nobody) return;
    double* to = &cells_[row * size_];
    const double* from = &cells_[parent * size_];
    for (std::size_t column = 0; column < row; ++column) to[column] += part * from[column];
  }

  void mirror(std::size_t row) {
    for (std::size_t column = 0; column < row; ++column)
      cells_[column * size_ + row] = cells_[row * size_ + column];
  }

  const Pedigree& pedigree_;
  std::size_t size_ = 0, used_ = 0;
  std::vector<double> cells_;
  std::vector<std::size_t> row_of_queen_;
  using Part = std::pair<std::size_t, std::size_t>;  // queen and part of her mating
  std::map<Part, std::size_t> drone_rows_;
  std::map<Part, int> daughters_;
};

}  // namespace

Expected<Square> coancestry_table(const Pedigree& pedigree) {
  Table table(pedigree);
  if (table.size() > most_rows)
    return bad_input("more than " + std::to_string(most_rows) + " queens and counted drones together",
                     "queens",
                     "leave out queens of whom none of interest descends, or the numbers of drones");
  table.fill();
  return table.of_queens();
}

double daughters_inbreeding(const Square& coancestry, std::size_t queen, std::span<const Suitors> mating) {
  double sum = 0;
  for (const Suitors& part : mating)
    if (part.dam) sum += decimal(part.share) * coancestry.at(queen, *part.dam);
  return sum;
}

double daughters_coancestry(const Square& coancestry, std::size_t queen, std::span<const Suitors> mating,
                            std::size_t other, std::span<const Suitors> other_mating, bool same) {
  double fathers = 0;
  for (std::size_t i = 0; i < mating.size(); ++i) {
    for (std::size_t j = 0; j < other_mating.size(); ++j) {
      const auto &dam = mating[i].dam, &other_dam = other_mating[j].dam;
      double value = dam && other_dam ? coancestry.at(*dam, *other_dam) : 0;
      if (same && i == j) value = two_of_one_part(mating[i], value);
      fathers += decimal(mating[i].share) * decimal(other_mating[j].share) * value;
    }
  }
  return 0.25 * (coancestry.at(queen, other) + daughters_inbreeding(coancestry, queen, other_mating) +
                 daughters_inbreeding(coancestry, other, mating) + fathers);
}

}  // namespace beegarth::lines
