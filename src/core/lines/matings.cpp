#include "lines/matings.hpp"

#include <algorithm>
#include <cstdio>
#include <map>
#include <set>

#include "lines/ancestry.hpp"
#include "lines/choose_matings.hpp"

namespace beegarth::lines {
namespace {

std::string number(double value) {
  char text[32];
  std::snprintf(text, sizeof text, "%.4g", value);
  return text;
}

class Adviser {
 public:
  Adviser(const Pedigree& pedigree, const MatingQuestion& question, const FactTable& table, Square coancestry)
      : pedigree_(pedigree), question_(question), table_(table), coancestry_(std::move(coancestry)) {}

  Expected<MatingAdvice> advise() {
    for (std::size_t virgin = 0; virgin < question_.virgins.size(); ++virgin) {
      for (std::size_t set = 0; set < question_.sets.size(); ++set) {
        auto cross = weigh(virgin, set);
        if (!cross) return cross.problem();
        advice_.crosses.push_back(*std::move(cross));
      }
    }
    number_lines();
    keep_ = question_.keep ? static_cast<std::size_t>(*question_.keep) : virgins_that_may();
    if (question_.keep && keep_ < lines_.size())
      return bad_input(
          std::to_string(keep_) + " matings cannot keep " + std::to_string(lines_.size()) + " lines", "keep",
          "keep at least one for each line, or leave out the virgins of a line");
    if (lines_can_be_kept()) make_choice();
    return std::move(advice_);
  }

 private:
  std::string name_of(std::size_t virgin) const { return pedigree_.called(question_.virgins[virgin]); }

  Expected<Cross> weigh(std::size_t virgin, std::size_t set) const {
    const std::size_t queen = question_.virgins[virgin];
    const auto& mating = question_.sets[set].mating;
    Cross cross{virgin, set};
    cross.inbreeding = daughters_inbreeding(coancestry_, queen, mating);
    cross.kinship = kinship_with_living(queen, mating);
    cross.score = expected_score(queen, mating);
    const auto lost = diploid_drones(cross.inbreeding, table_);
    if (!lost) return lost.problem();
    cross.brood_lost = *lost;
    // Sums of halves and quarters are exact, those of thirds are not: a limit just met must not be missed by
    // rounding.
    cross.allowed = cross.inbreeding <= question_.inbreeding_limit + 1e-12;
    cross.reasons = reasons_for(queen, mating);
    return cross;
  }

  double share(const Suitors& part) const {
    return static_cast<double>(part.share.part) / static_cast<double>(part.share.of);
  }

  double expected_score(std::size_t queen, const std::vector<Suitors>& mating) const {
    double score = question_.scores[queen];
    for (const Suitors& part : mating)
      if (part.dam) score += share(part) * question_.scores[*part.dam];
    return score / 2;
  }

  double kinship_with_living(std::size_t queen, const std::vector<Suitors>& mating) const {
    double sum = 0, living = 0;
    for (std::size_t other = 0; other < pedigree_.size(); ++other) {
      if (!pedigree_.queen(other).living) continue;
      living += 1;
      sum += coancestry_.at(queen, other) / 2;
      for (const Suitors& part : mating)
        if (part.dam) sum += share(part) * coancestry_.at(*part.dam, other) / 2;
    }
    return living > 0 ? sum / living : 0;
  }

  std::vector<std::string> reasons_for(std::size_t queen, const std::vector<Suitors>& mating) const {
    std::vector<std::string> reasons;
    bool unknown = mating.empty();
    for (const Suitors& part : mating) {
      if (!part.dam) {
        unknown = true;
        continue;
      }
      for (const SharedAncestor& shared : shared_ancestors(pedigree_, queen, *part.dam)) {
        const std::string words = in_words(pedigree_, queen, *part.dam, shared);
        if (std::find(reasons.begin(), reasons.end(), words) == reasons.end()) reasons.push_back(words);
      }
    }
    if (reasons.empty()) reasons.emplace_back("no shared ancestor is written down");
    if (unknown)
      reasons.emplace_back(
          "drones of unknown dams count as unrelated; at a site with her kin they may not be");
    return reasons;
  }

  void number_lines() {
    for (const std::size_t queen : question_.virgins) lines_.emplace(pedigree_.line(queen), lines_.size());
  }

  std::size_t virgins_that_may() const {
    std::set<std::size_t> virgins;
    for (const Cross& cross : advice_.crosses)
      if (cross.allowed) virgins.insert(cross.virgin);
    return virgins.size();
  }

  std::size_t line_of(std::size_t virgin) const {
    return lines_.at(pedigree_.line(question_.virgins[virgin]));
  }

  bool lines_can_be_kept() {
    for (const auto& [line, place] : lines_) {
      const Cross* least = nullptr;
      for (const Cross& cross : advice_.crosses)
        if (line_of(cross.virgin) == place && (!least || cross.inbreeding < least->inbreeding))
          least = &cross;
      if (least->allowed) continue;
      advice_.reasons.push_back("line " + line + " cannot be kept within the limit of " +
                                number(question_.inbreeding_limit) + ": its least akin mating is " +
                                name_of(least->virgin) + " with " + question_.sets[least->set].name + " at " +
                                number(least->inbreeding) + "; find drones from outside");
    }
    return advice_.reasons.empty();
  }

  void make_choice() {
    ChoiceProblem problem;
    std::vector<std::size_t> place;
    for (std::size_t i = 0; i < advice_.crosses.size(); ++i) {
      const Cross& cross = advice_.crosses[i];
      if (!cross.allowed) continue;
      place.push_back(i);
      problem.options.push_back(
          {cross.virgin, line_of(cross.virgin), question_.coancestry_per_score * cross.score});
    }
    problem.coancestry = between_daughters(place);
    problem.lines = lines_.size();
    problem.keep = keep_;
    advice_.choice = choose(problem);
    if (!advice_.choice) {
      advice_.reasons.push_back(
          "fewer than " + std::to_string(keep_) + " virgins have a mating within the limit of " +
          number(question_.inbreeding_limit) + "; keep fewer, or find drones from outside");
      return;
    }
    advice_.choice->mean_score = 0;
    for (std::size_t& cross : advice_.choice->crosses) {
      cross = place[cross];
      advice_.choice->mean_score += advice_.crosses[cross].score / static_cast<double>(keep_);
    }
    give_reasons();
  }

  Square between_daughters(const std::vector<std::size_t>& place) const {
    Square square{place.size(), std::vector<double>(place.size() * place.size())};
    for (std::size_t a = 0; a < place.size(); ++a) {
      for (std::size_t b = 0; b <= a; ++b) {
        const Cross &one = advice_.crosses[place[a]], &other = advice_.crosses[place[b]];
        square.at(a, b) =
            daughters_coancestry(coancestry_, question_.virgins[one.virgin], question_.sets[one.set].mating,
                                 question_.virgins[other.virgin], question_.sets[other.set].mating, a == b);
        square.at(b, a) = square.at(a, b);
      }
    }
    return square;
  }

  void give_reasons() {
    const Choice& choice = *advice_.choice;
    for (const std::size_t place : choice.crosses) {
      const Cross& cross = advice_.crosses[place];
      std::string words = name_of(cross.virgin) + " with " + question_.sets[cross.set].name + ": " +
                          advice_.crosses[place].reasons.front();
      if (const std::string alone = alone_in_line(cross); !alone.empty()) words += "; " + alone;
      if (const std::string avoided = better_but_too_akin(cross); !avoided.empty()) words += "; " + avoided;
      advice_.reasons.push_back(words);
    }
    if (!choice.proven)
      advice_.reasons.emplace_back(
          "the search was cut short: a better choice may exist; ask with fewer virgins or sets");
  }

  std::string alone_in_line(const Cross& chosen) const {
    for (const std::size_t place : advice_.choice->crosses)
      if (place != static_cast<std::size_t>(&chosen - advice_.crosses.data()) &&
          line_of(advice_.crosses[place].virgin) == line_of(chosen.virgin))
        return "";
    return "keeps line " + pedigree_.line(question_.virgins[chosen.virgin]);
  }

  std::string better_but_too_akin(const Cross& chosen) const {
    const Cross* best = nullptr;
    for (const Cross& cross : advice_.crosses)
      if (cross.virgin == chosen.virgin && !cross.allowed && cross.score > chosen.score &&
          (!best || cross.score > best->score))
        best = &cross;
    return best ? question_.sets[best->set].name + " would score " + number(best->score) + " against " +
                      number(chosen.score) + " but is too near of kin (" + number(best->inbreeding) + ")"
                : "";
  }

  const Pedigree& pedigree_;
  const MatingQuestion& question_;
  const FactTable& table_;
  Square coancestry_;
  std::map<std::string, std::size_t> lines_;
  std::size_t keep_ = 0;
  MatingAdvice advice_;
};

}  // namespace

Expected<MatingAdvice> advise_matings(const Pedigree& pedigree, const MatingQuestion& question,
                                      const FactTable& table) {
  auto coancestry = coancestry_table(pedigree);
  if (!coancestry) return coancestry.problem();
  return Adviser(pedigree, question, table, *std::move(coancestry)).advise();
}

}  // namespace beegarth::lines
