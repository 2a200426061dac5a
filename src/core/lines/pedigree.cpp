#include "lines/pedigree.hpp"

#include <algorithm>
#include <boost/multiprecision/cpp_int.hpp>
#include <set>
#include <utility>

namespace beegarth::lines {
namespace {

constexpr int most_drones = 1000;
constexpr std::size_t most_kinds = 40;

std::string place(std::size_t queen, const char* field) {
  return "queens[" + std::to_string(queen) + "]" + field;
}

std::string quoted(const QueenId& id) {
  return "'" + id.text() + "'";
}

Outcome check_shares(const std::vector<Drones>& mating, const std::string& where) {
  using Fraction = boost::multiprecision::cpp_rational;
  Fraction sum = 0;
  for (std::size_t i = 0; i < mating.size(); ++i) {
    const Share& share = mating[i].share;
    if (share.part <= 0 || share.of <= 0)
      return bad_input("a share is not above nothing", where + "[" + std::to_string(i) + "].share",
                       "give a fraction such as 1/3, or leave these drones out");
    sum += Fraction(share.part) / share.of;
  }
  if (sum != 1)
    return bad_input("the shares come to " + sum.str() + " and not to 1", where,
                     "make them come to one whole");
  return Done{};
}

// The circle that was found, as "Ash, Birch, Ash".
std::string walk_of(const std::vector<std::size_t>& way, std::size_t again,
                    const std::vector<Queen>& queens) {
  std::string text;
  for (auto at = std::find(way.begin(), way.end(), again); at != way.end(); ++at)
    text += queens[*at].id.text() + ", ";
  return text + queens[again].id.text();
}

}  // namespace

Expected<Pedigree> Pedigree::of(std::vector<Queen> queens) {
  Pedigree pedigree;
  pedigree.queens_ = std::move(queens);
  for (std::size_t i = 0; i < pedigree.queens_.size(); ++i) {
    const QueenId& id = pedigree.queens_[i].id;
    if (id.empty()) return bad_input("a queen has no id", place(i, ".id"), "give her one");
    if (!pedigree.index_.emplace(id, i).second)
      return bad_input("two queens are called " + quoted(id), place(i, ".id"), "give each an id of her own");
  }
  if (const auto outcome = pedigree.look_up_all(); !outcome) return outcome.problem();
  if (const auto outcome = pedigree.sort(); !outcome) return outcome.problem();
  if (const auto outcome = pedigree.check_dates(); !outcome) return outcome.problem();
  return pedigree;
}

std::optional<std::size_t> Pedigree::find(const QueenId& id) const {
  const auto found = index_.find(id);
  return found == index_.end() ? std::nullopt : std::optional(found->second);
}

Expected<std::vector<Suitors>> Pedigree::look_up(const std::vector<Drones>& mating,
                                                 const std::string& where) const {
  std::vector<Suitors> found;
  if (mating.empty()) return found;
  if (mating.size() > most_kinds)
    return bad_input("more than " + std::to_string(most_kinds) + " kinds of drones", where, "give fewer");
  std::set<std::string> names;
  for (std::size_t i = 0; i < mating.size(); ++i) {
    const Drones& drones = mating[i];
    const std::string here = where + "[" + std::to_string(i) + "]";
    Suitors suitors{std::nullopt, drones.number, drones.share};
    if (drones.dam) {
      suitors.dam = find(*drones.dam);
      if (!suitors.dam)
        return bad_input("there is no queen " + quoted(*drones.dam), here + ".dam",
                         "add her, or leave the dam out where she is unknown");
    }
    if (drones.number && (*drones.number < 1 || *drones.number > most_drones))
      return bad_input(std::to_string(*drones.number) + " drones", here + ".drones",
                       "give 1 to " + std::to_string(most_drones) + ", or leave it out for many");
    if (!drones.name.empty() && !names.insert(drones.name).second)
      return bad_input("two kinds of drones are called '" + drones.name + "'", here + ".name",
                       "give each a name of its own");
    found.push_back(suitors);
  }
  if (const auto outcome = check_shares(mating, where); !outcome) return outcome.problem();
  return found;
}

Outcome Pedigree::look_up_all() {
  for (std::size_t i = 0; i < queens_.size(); ++i) {
    auto mating = look_up(queens_[i].mating, place(i, ".mating"));
    if (!mating) return mating.problem();
    matings_.push_back(*std::move(mating));
    mothers_.emplace_back();
    fathers_.emplace_back();
    if (const auto& mother = queens_[i].mother) {
      mothers_[i] = find(*mother);
      if (!mothers_[i])
        return bad_input("there is no queen " + quoted(*mother), place(i, ".mother"),
                         "add her, or leave the mother out where she is unknown");
    }
  }
  for (std::size_t i = 0; i < queens_.size(); ++i) {
    const auto& father = queens_[i].father;
    if (!father) continue;
    if (!mothers_[i])
      return bad_input("a father without a mother", place(i, ".father"),
                       "name the mother, or leave the father out");
    const auto& mating = queens_[*mothers_[i]].mating;
    const auto found = std::find_if(mating.begin(), mating.end(), [&](const Drones& drones) {
      return !father->empty() && drones.name == *father;
    });
    if (found == mating.end())
      return bad_input(
          "no drones called '" + *father + "' in the mating of her mother " + quoted(*queens_[i].mother),
          place(i, ".father"), "give the name that stands there");
    fathers_[i] = static_cast<std::size_t>(found - mating.begin());
  }
  return Done{};
}

std::vector<std::size_t> Pedigree::fathers_dams(std::size_t index) const {
  std::vector<std::size_t> dams;
  if (!mothers_[index]) return dams;
  const auto& mating = matings_[*mothers_[index]];
  for (std::size_t part = 0; part < mating.size(); ++part)
    if (mating[part].dam && (!fathers_[index] || *fathers_[index] == part)) dams.push_back(*mating[part].dam);
  std::sort(dams.begin(), dams.end());
  dams.erase(std::unique(dams.begin(), dams.end()), dams.end());
  return dams;
}

// All dams of her mother's mating, also those that are not her father's: the mating came before her.
std::vector<std::size_t> Pedigree::parents(std::size_t index) const {
  std::vector<std::size_t> all;
  if (!mothers_[index]) return all;
  all.push_back(*mothers_[index]);
  for (const Suitors& suitors : matings_[*mothers_[index]])
    if (suitors.dam) all.push_back(*suitors.dam);
  return all;
}

// Depth first, with a way of its own instead of the call stack: lines can be long.
Outcome Pedigree::sort() {
  enum class Mark { fresh, on_the_way, done };
  std::vector<Mark> marks(queens_.size(), Mark::fresh);
  std::vector<std::size_t> way, next;
  std::vector<std::vector<std::size_t>> above;
  const auto enter = [&](std::size_t index) {
    marks[index] = Mark::on_the_way;
    way.push_back(index);
    next.push_back(0);
    above.push_back(parents(index));
  };
  for (std::size_t start = 0; start < queens_.size(); ++start) {
    if (marks[start] != Mark::fresh) continue;
    enter(start);
    while (!way.empty()) {
      if (next.back() == above.back().size()) {
        marks[way.back()] = Mark::done;
        oldest_first_.push_back(way.back());
        way.pop_back();
        next.pop_back();
        above.pop_back();
        continue;
      }
      const std::size_t parent = above.back()[next.back()++];
      if (marks[parent] == Mark::on_the_way)
        return bad_input(
            quoted(queens_[parent].id) + " is her own ancestor: " + walk_of(way, parent, queens_),
            place(parent, ""), "one of these has a wrong mother, or her mother a wrong mating");
      if (marks[parent] == Mark::fresh) enter(parent);
    }
  }
  return Done{};
}

Outcome Pedigree::check_dates() const {
  const auto wrong = [&](std::size_t i, const char* field, const std::string& what) {
    return bad_input(what, place(i, field), "correct one of the two dates");
  };
  for (std::size_t i = 0; i < queens_.size(); ++i) {
    const Queen& queen = queens_[i];
    if (queen.born && queen.mated && *queen.mated < *queen.born)
      return wrong(i, ".mated", quoted(queen.id) + " mated before she was born");
    for (const Suitors& suitors : matings_[i])
      if (queen.mated && suitors.dam && queens_[*suitors.dam].born &&
          *queens_[*suitors.dam].born >= *queen.mated && *suitors.dam != i)
        return wrong(i, ".mated",
                     quoted(queen.id) + " mated with drones of " + quoted(queens_[*suitors.dam].id) +
                         ", who was not born yet");
    if (!queen.born) continue;
    for (const std::size_t parent : parents(i))
      if (queens_[parent].born && *queens_[parent].born >= *queen.born)
        return wrong(i, ".born",
                     quoted(queen.id) + " is not younger than " + quoted(queens_[parent].id) +
                         ", whom she descends from");
    if (mothers_[i] && queens_[*mothers_[i]].mated && *queens_[*mothers_[i]].mated > *queen.born)
      return wrong(i, ".born", quoted(queen.id) + " was born before her mother mated");
  }
  return Done{};
}

std::string Pedigree::called(std::size_t index) const {
  const Queen& queen = queens_[index];
  return queen.name.empty() ? queen.id.text() : queen.name;
}

std::string Pedigree::line(std::size_t index) const {
  while (queens_[index].line.empty() && mothers_[index]) index = *mothers_[index];
  return queens_[index].line.empty() ? called(index) : queens_[index].line;
}

}  // namespace beegarth::lines
