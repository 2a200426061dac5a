#include "garth/lines/book_lines.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "garth/beliefs/believe.hpp"
#include "garth/ledgers/suspects.hpp"
#include "garth/lines/descent.hpp"
#include "garth/lines/scores.hpp"
#include "lines/relationship.hpp"

namespace beegarth::garth {
namespace {

using entries::Entry;

struct QueenInBook {
  lines::Queen queen;
  std::string name;
  std::optional<ColonyId> colony;  // in which she was last told of
};

class QueenGatherer {
 public:
  QueenGatherer(const Session& session, double open_drones) : session_(session), open_drones_(open_drones) {}

  std::vector<QueenInBook> gather() {
    for (const Entry& entry : session_.standing)
      std::visit([&](const auto& said) { take(entry, said); }, entry.payload);
    std::vector<QueenInBook> queens;
    for (const QueenId& id : order_) queens.push_back(std::move(queens_.at(id)));
    return queens;
  }

 private:
  QueenInBook* known(const QueenId& id) {
    const auto at = queens_.find(id);
    return at == queens_.end() ? nullptr : &at->second;
  }
  static lines::QueenId key(const QueenId& id) { return lines::QueenId(id.text()); }

  void take(const Entry&, const entries::QueenBegan& began) {
    if (!queens_.contains(began.queen)) order_.push_back(began.queen);
    QueenInBook& one = queens_[began.queen];
    one.name = began.name;
    one.queen.id = key(began.queen);
    one.queen.line = began.line.value_or("");
    one.queen.mother.reset();
    if (began.mother) one.queen.mother = key(*began.mother);
  }
  void take(const Entry&, const entries::QueenMated& mated) {
    QueenInBook* one = known(mated.queen);
    if (one == nullptr) return;
    const int drones = mated.drones.value_or(static_cast<int>(std::lround(open_drones_)));
    const auto mothers = static_cast<int>(mated.drone_mothers.size());
    one->queen.mating.clear();
    if (mothers == 0) one->queen.mating.push_back({.number = drones});
    for (const QueenId& mother : mated.drone_mothers)
      one->queen.mating.push_back(
          {.dam = key(mother), .number = std::max(1, drones / mothers), .share = {1, mothers}});
  }
  void take(const Entry&, const entries::Queen& seen) {
    if (!seen.which) return;
    QueenInBook* one = known(*seen.which);
    if (one == nullptr) return;
    using entries::QueenEvent;
    const bool gone = seen.event == QueenEvent::lost || seen.event == QueenEvent::removed ||
                      seen.event == QueenEvent::died || seen.event == QueenEvent::superseded;
    one->queen.living = !gone;
    one->colony = seen.colony;
  }
  void take(const Entry&, const entries::ColonyEnded& ended) {
    if (ended.how == entries::Ending::sold || ended.how == entries::Ending::given_away) return;
    for (auto& [id, one] : queens_)
      if (one.colony == ended.colony) one.queen.living = false;
  }
  template <class Other>
  void take(const Entry&, const Other&) {}

  const Session& session_;
  double open_drones_;
  std::vector<QueenId> order_;
  std::map<QueenId, QueenInBook> queens_;
};

std::string named(const std::vector<QueenInBook>& queens, const std::string& key) {
  const auto at =
      std::find_if(queens.begin(), queens.end(), [&](const auto& one) { return one.queen.id.text() == key; });
  return at == queens.end() ? "'" + key + "'" : at->name;
}

// Parents who are not in the book are unknown ones.
void leave_out_strangers(std::vector<QueenInBook>& queens, std::vector<std::string>& remarks) {
  std::set<lines::QueenId> there;
  for (const auto& one : queens) there.insert(one.queen.id);
  for (QueenInBook& one : queens) {
    if (one.queen.mother && !there.contains(*one.queen.mother)) {
      remarks.push_back(one.name + " is entered as a daughter of '" + one.queen.mother->text() +
                        "', who is not in the book: her mother is taken as unknown.");
      one.queen.mother.reset();
    }
    for (lines::Drones& drones : one.queen.mating) {
      if (!drones.dam || there.contains(*drones.dam)) continue;
      remarks.push_back(one.name + " is entered as mated with sons of '" + drones.dam->text() +
                        "', who is not in the book: they are taken as sons of unknown queens.");
      drones.dam.reset();
    }
  }
}

// Queens who descend from themselves lose their mothers, so that the rest can be shown.
void break_circles(std::vector<QueenInBook>& queens, std::vector<std::string>& remarks) {
  for (;;) {
    Descent descent;
    std::map<std::string, std::vector<std::string>> dams;
    for (const auto& one : queens) {
      for (const auto& drones : one.queen.mating)
        if (drones.dam) dams[one.queen.id.text()].push_back(drones.dam->text());
    }
    for (const auto& one : queens) {
      if (!one.queen.mother) continue;
      auto& from = descent[one.queen.id.text()];
      from = dams[one.queen.mother->text()];
      from.push_back(one.queen.mother->text());
    }
    const auto circle = circle_in(descent);
    if (circle.empty()) return;
    std::string names;
    for (const std::string& key : circle) names += (names.empty() ? "" : " and ") + named(queens, key);
    remarks.push_back(names +
                      (circle.size() == 1 ? " would be her own ancestor" : " would descend from each other") +
                      ": the mother of each is left out until one of them is corrected.");
    for (QueenInBook& one : queens) {
      if (std::find(circle.begin(), circle.end(), one.queen.id.text()) != circle.end())
        one.queen.mother.reset();
    }
  }
}

// Neither queens nor drones are bred from where something notifiable is suspected: nothing moves from there.
std::vector<bool> shut_in(const Session& session, const std::vector<QueenInBook>& queens,
                          std::vector<std::string>& remarks) {
  std::vector<bool> shut(queens.size(), false);
  for (std::size_t i = 0; i < queens.size(); ++i) {
    const QueenInBook& one = queens[i];
    if (!one.queen.living || !one.colony || session.suspects.at(*one.colony) == nullptr) continue;
    shut[i] = true;
    remarks.push_back(one.name +
                      " is in a suspect colony: no mating with her or her sons is proposed until the "
                      "inspector has cleared it.");
  }
  return shut;
}

// Standardised estimates added over the traits: a keeper who wants one trait above others asks calc matings.
std::vector<double> overall(const std::vector<lines::TraitEstimates>& traits, std::size_t queens) {
  std::vector<double> sum(queens, 0.0);
  for (const auto& trait : traits) {
    if (!trait.spread || *trait.spread <= 0) continue;
    for (std::size_t i = 0; i < queens; ++i) sum[i] += trait.queens[i].estimate / *trait.spread;
  }
  return sum;
}

lines::MatingQuestion question_for(const BookLines& book, const std::vector<bool>& shut, double limit,
                                   double weight) {
  lines::MatingQuestion question{.scores = overall(book.traits, book.pedigree.size()),
                                 .inbreeding_limit = limit,
                                 .coancestry_per_score = weight};
  std::vector<bool> is_mother(book.pedigree.size(), false);
  for (std::size_t i = 0; i < book.pedigree.size(); ++i) {
    if (const auto mother = book.pedigree.mother(i)) is_mother[*mother] = true;
  }
  for (std::size_t i = 0; i < book.pedigree.size(); ++i) {
    const lines::Queen& queen = book.pedigree.queen(i);
    if (!queen.living || shut[i]) continue;
    const bool mated = is_mother[i] || !book.pedigree.mating(i).empty();
    if (!mated) question.virgins.push_back(i);
    if (mated)
      question.sets.push_back(
          {"sons of " + book.names[i], {{.dam = i, .number = std::nullopt, .share = {}}}});
  }
  return question;
}

}  // namespace

Expected<BookLines> lines_of(const Session& session) {
  const FactTable& table = session.tables["lines"];
  const auto drones = table.value("drones_of_an_open_mating"), limit = table.value("inbreeding_limit"),
             weight = table.value("coancestry_per_score");
  for (const auto* row : {&drones, &limit, &weight})
    if (!*row) return row->problem();
  std::vector<lines::Queen> queens;
  BookLines book;
  std::vector<QueenInBook> gathered = QueenGatherer(session, *drones).gather();
  leave_out_strangers(gathered, book.remarks);
  break_circles(gathered, book.remarks);
  for (QueenInBook& one : gathered) {
    const auto namesakes = std::count_if(gathered.begin(), gathered.end(),
                                         [&](const auto& other) { return other.name == one.name; });
    one.queen.name = namesakes == 1 ? one.name : one.name + " (" + one.queen.id.text() + ")";
    book.names.push_back(one.queen.name);
  }
  const std::vector<bool> shut = shut_in(session, gathered, book.remarks);
  queens.reserve(gathered.size());
  for (QueenInBook& one : gathered) queens.push_back(std::move(one.queen));
  auto pedigree = lines::Pedigree::of(std::move(queens));
  if (!pedigree) return pedigree.problem();
  book.pedigree = *std::move(pedigree);
  const auto coancestry = lines::coancestry_table(book.pedigree);
  if (!coancestry) return coancestry.problem();
  for (std::size_t i = 0; i < book.pedigree.size(); ++i)
    book.inbreeding.push_back(2 * coancestry->at(i, i) - 1);
  if (const auto scores = scores_in(session.standing, book.pedigree, book.remarks); !scores.empty()) {
    auto traits = lines::estimate_scores(book.pedigree, scores, table);
    if (!traits) return traits.problem();
    book.traits = *std::move(traits);
  }
  book.question = question_for(book, shut, *limit, *weight);
  if (!book.question.virgins.empty() && !book.question.sets.empty()) {
    auto advice = lines::advise_matings(book.pedigree, book.question, table);
    if (!advice) return advice.problem();
    book.advice = *std::move(advice);
  }
  return book;
}

}  // namespace beegarth::garth
