// Who descends from whom, among honey bee queens. A queen has two parents; a drone hatches from an egg that
// nobody fertilised, so he is one gamete of his dam and has no father. A queen's sons therefore carry her
// genes alone, and a daughter queen descends from her mother and from one of the drones that her mother mated
// with.
#pragma once

#include <compare>
#include <cstdint>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "base/date.hpp"
#include "base/expected.hpp"
#include "base/units.hpp"

namespace beegarth::lines {

using QueenId = Id<struct QueenThing>;

// An exact part of a whole: 1/3 stays 1/3.
struct Share {
  std::int64_t part = 1;
  std::int64_t of = 1;
};

// Drones in one mating that are alike: all sons of one dam, or all of dams that nobody knows.
struct Drones {
  std::optional<QueenId>
      dam;  // nothing: unknown dams, a different one for each drone, unrelated to every queen here
  std::optional<int> number;  // nothing: so many that two daughters hardly ever share one
  Share share;                // of the daughters
  std::string name;           // for a daughter to say whose she is; may be empty
};

struct Queen {
  QueenId id;
  std::optional<QueenId> mother;  // nothing: unknown, and unrelated to every other queen of unknown mother
  std::optional<std::string>
      father;  // name of the drones of her mother's mating that she is of; nothing: any, by share
  std::vector<Drones> mating;  // empty: not mated, or with drones of which nothing is known
  std::optional<Date> born;    // emerged
  std::optional<Date> mated;
  bool living = true;
  std::string line;  // empty: that of her mother
  std::string name;  // as she is spoken of; empty: her id
};

// A mating with names looked up.
struct Suitors {
  std::optional<std::size_t> dam;
  std::optional<int> number;
  Share share;
};

// Queens whose parents are all there and all older. Queens keep the order in which they were given; the index
// of a queen is her place in it.
class Pedigree {
 public:
  // Problems name the place as queens[2].mother.
  static Expected<Pedigree> of(std::vector<Queen> queens);

  std::size_t size() const { return queens_.size(); }
  const Queen& queen(std::size_t index) const { return queens_[index]; }
  std::optional<std::size_t> find(const QueenId& id) const;
  std::optional<std::size_t> mother(std::size_t index) const { return mothers_[index]; }
  std::span<const Suitors> mating(std::size_t index) const { return matings_[index]; }
  // Which part of her mother's mating she is of, where it is known.
  std::optional<std::size_t> father(std::size_t index) const { return fathers_[index]; }
  // The dams that her father may be a son of.
  std::vector<std::size_t> fathers_dams(std::size_t index) const;
  // Every queen after her mother and after the dams of her mother's mates.
  std::span<const std::size_t> oldest_first() const { return oldest_first_; }
  // As she is spoken of in reasons and drawings.
  std::string called(std::size_t index) const;
  // Her own line, or that of the nearest foremother who has one, or the name of the first foremother.
  std::string line(std::size_t index) const;
  // A mating that is planned, checked and looked up in the same way; problems name the place as
  // `where`[0].dam.
  Expected<std::vector<Suitors>> look_up(const std::vector<Drones>& mating, const std::string& where) const;

 private:
  Outcome look_up_all();
  Outcome sort();
  Outcome check_dates() const;
  std::vector<std::size_t> parents(std::size_t index) const;

  std::vector<Queen> queens_;
  std::map<QueenId, std::size_t> index_;
  std::vector<std::optional<std::size_t>> mothers_;
  std::vector<std::vector<Suitors>> matings_;
  std::vector<std::optional<std::size_t>> fathers_;
  std::vector<std::size_t> oldest_first_;
};

}  // namespace beegarth::lines
