#include "belief/shared.hpp"

#include <algorithm>
#include <map>
#include <string>

#include "belief/common_draws.hpp"
#include "belief/members.hpp"
#include "belief/smc.hpp"

namespace beegarth::belief {
namespace {

constexpr std::array<const char*, site_shared> site_rows{"site_forage_shared", "site_mites_in_shared"};
constexpr std::array<const char*, keeper_shared> keeper_rows{"keeper_bees_shared", "keeper_brood_shared",
                                                             "keeper_stores_shared", "keeper_board_shared"};
constexpr std::array<colony::Trait, site_shared> site_traits{colony::Trait::collecting,
                                                             colony::Trait::mite_immigration};

// Who was looked at most comes first; one that nobody wrote of has nothing to teach.
template <class One>
bool teaches_before(const One* a, const One* b) {
  return a->entries != b->entries ? a->entries > b->entries : a->colony < b->colony;
}

template <class One>
struct Teachers {
  std::map<SiteId, std::vector<const One*>> of_site;
  std::vector<const One*> of_keeper;

  explicit Teachers(std::span<const One> all) {
    for (const One& one : all) {
      if (one.entries > 0 && !one.site.empty()) of_site[one.site].push_back(&one);
      if (one.entries > 0 && one.site.empty()) of_keeper.push_back(&one);
    }
    for (auto& [site, teachers] : of_site) {
      first_of(teachers);
      of_keeper.insert(of_keeper.end(), teachers.begin(), teachers.end());
    }
    first_of(of_keeper);
  }
  bool teaches_keeper(const One* one) const {
    return std::find(of_keeper.begin(), of_keeper.end(), one) != of_keeper.end();
  }

 private:
  static void first_of(std::vector<const One*>& list) {
    std::sort(list.begin(), list.end(), teaches_before<One>);
    if (list.size() > most_teachers) list.resize(most_teachers);
  }
};

void add(std::vector<double>& sum, std::span<const double> more, double sign = 1) {
  for (std::size_t i = 0; i < sum.size(); ++i) sum[i] += sign * more[i];
}

// Weighs the draws for every witness, from what each colony says of them (log evidence by draw).
class Council {
 public:
  Council(std::span<const Witness> witnesses, const SharedPrior& prior, const ForEachIndex& each)
      : witnesses_(witnesses), teachers_(witnesses) {
    draws_ = std::make_shared<const CommonDraws>(prior, teachers_.of_keeper);
    said_.resize(witnesses.size());
    of_keeper_alone_.resize(witnesses.size());
    each(witnesses.size(), [&](std::size_t i) {
      const Witness& one = witnesses_[i];
      if (is_heard_at_site(one)) said_[i] = draws_->log_evidence(one, true);
      if (teachers_.teaches_keeper(&one)) of_keeper_alone_[i] = draws_->log_evidence(one, false);
    });
    for (const auto& [site, teachers] : teachers_.of_site) elsewhere_.emplace(site, said_of_keeper(teachers));
  }

  Neighbours heard_by(const Witness& one) const {
    const bool at_site = with_others(one);
    std::vector<double> log_odds = draws_->log_prior(at_site);
    bool anyone = false;
    if (at_site) {
      for (const Witness* teacher : teachers_.of_site.at(one.site)) {
        if (teacher == &one) continue;
        add(log_odds, said_[index_of(*teacher)]);
        anyone = true;
      }
    }
    const std::vector<double> keeper = heard_of_keeper(one, anyone);
    if (!anyone) return {};
    for (std::size_t i = 0; i < log_odds.size(); ++i) log_odds[i] += keeper[i % keeper.size()];
    return {draws_, at_site, normalised(log_odds)};
  }

 private:
  std::size_t index_of(const Witness& one) const {
    return static_cast<std::size_t>(&one - witnesses_.data());
  }
  bool teaches_site(const Witness& one) const {
    const auto teachers = teachers_.of_site.find(one.site);
    return teachers != teachers_.of_site.end() &&
           std::find(teachers->second.begin(), teachers->second.end(), &one) != teachers->second.end();
  }
  // Somebody else at the site has something to say.
  bool with_others(const Witness& one) const {
    const auto teachers = teachers_.of_site.find(one.site);
    return teachers != teachers_.of_site.end() &&
           std::any_of(teachers->second.begin(), teachers->second.end(),
                       [&](const Witness* teacher) { return teacher != &one; });
  }
  bool is_heard_at_site(const Witness& one) const {
    return teaches_site(one) && std::count_if(witnesses_.begin(), witnesses_.end(),
                                              [&](const Witness& w) { return w.site == one.site; }) > 1;
  }

  // By draw of the keeper, with what is the site's averaged over: of those who teach about the keeper.
  std::vector<double> said_of_keeper(const std::vector<const Witness*>& at_one_site) const {
    std::vector<const Witness*> teachers;
    for (const Witness* one : at_one_site) {
      if (teachers_.teaches_keeper(one)) teachers.push_back(one);
    }
    if (teachers.empty()) return {};
    if (teachers.size() == 1) return of_keeper_alone_[index_of(*teachers.front())];
    std::vector<double> sum(draws_->log_prior(true).size(), 0.0);
    for (const Witness* one : teachers) add(sum, said_[index_of(*one)]);
    return draws_->over_site(sum);
  }

  // From the other sites, and from colonies that stand by themselves.
  std::vector<double> heard_of_keeper(const Witness& one, bool& anyone) const {
    std::vector<double> sum(draws_->of_keeper(), 0.0);
    for (const auto& [site, said] : elsewhere_) {
      if (site == one.site || said.empty()) continue;
      add(sum, said);
      anyone = true;
    }
    for (const Witness* teacher : teachers_.of_keeper) {
      if (!teacher->site.empty() || teacher == &one) continue;
      add(sum, of_keeper_alone_[index_of(*teacher)]);
      anyone = true;
    }
    return sum;
  }

  std::span<const Witness> witnesses_;
  Teachers<Witness> teachers_;
  std::shared_ptr<const CommonDraws> draws_;
  std::vector<std::vector<double>> said_;             // by witness; empty where nobody asks it
  std::vector<std::vector<double>> of_keeper_alone_;  // the same of the keeper alone
  std::map<SiteId, std::vector<double>> elsewhere_;
};

}  // namespace

Expected<SharedPrior> shared_prior(const FactTable& observation) {
  SharedPrior prior{};
  const auto read = [&](const char* key, double& to) -> Outcome {
    const auto value = observation.value(key);
    if (!value) return value.problem();
    if (*value < 0.01 || *value > 0.95)
      return bad_input("a share of the variance must lie between 0.01 and 0.95",
                       observation.name() + ": " + key, "correct the row");
    to = *value;
    return Done{};
  };
  for (std::size_t d = 0; d < site_shared; ++d)
    if (const auto row = read(site_rows[d], prior.site[d]); !row) return row.problem();
  for (std::size_t d = 0; d < keeper_shared; ++d)
    if (const auto row = read(keeper_rows[d], prior.keeper[d]); !row) return row.problem();
  return prior;
}

SharedCoordinates shared_of(std::span<const double> coordinates) {
  SharedCoordinates shared;
  for (std::size_t d = 0; d < site_shared; ++d)
    shared.site[d] = coordinates[static_cast<std::size_t>(site_traits[d])];
  // The first rows of the observer: bees, brood, stores, board.
  for (std::size_t d = 0; d < keeper_shared; ++d)
    shared.keeper[d] = coordinates[colony::trait_count + start_dims + d];
  return shared;
}

void one_after_another(std::size_t count, const std::function<void(std::size_t)>& task) {
  for (std::size_t i = 0; i < count; ++i) task(i);
}

std::vector<ColonyId> to_be_fitted(std::span<const Pupil> all, std::span<const ColonyId> wanted) {
  const Teachers<Pupil> teachers(all);
  std::vector<ColonyId> list(wanted.begin(), wanted.end());
  for (const Pupil* one : teachers.of_keeper) list.push_back(one->colony);
  for (const Pupil& one : all) {
    if (std::find(wanted.begin(), wanted.end(), one.colony) == wanted.end()) continue;
    const auto at_site = teachers.of_site.find(one.site);
    if (at_site == teachers.of_site.end()) continue;
    for (const Pupil* teacher : at_site->second) list.push_back(teacher->colony);
  }
  std::sort(list.begin(), list.end());
  list.erase(std::unique(list.begin(), list.end()), list.end());
  return list;
}

std::vector<double> Neighbours::log_ratios(std::span<const SharedCoordinates> members) const {
  if (silent()) return std::vector<double>(members.size(), 0.0);
  return draws_->log_ratios(members, at_site_, odds_);
}

std::vector<Neighbours> listen(std::span<const Witness> witnesses, const SharedPrior& prior,
                               const ForEachIndex& each) {
  std::vector<Neighbours> heard(witnesses.size());
  if (witnesses.size() < 2) return heard;
  // In order of key, so that sums come out the same whoever is named first.
  std::vector<std::size_t> order(witnesses.size());
  for (std::size_t i = 0; i < order.size(); ++i) order[i] = i;
  std::sort(order.begin(), order.end(),
            [&](std::size_t a, std::size_t b) { return witnesses[a].colony < witnesses[b].colony; });
  std::vector<Witness> sorted;
  sorted.reserve(order.size());
  for (const std::size_t i : order) sorted.push_back(witnesses[i]);
  const Council council(sorted, prior, each);
  each(order.size(), [&](std::size_t k) { heard[order[k]] = council.heard_by(sorted[k]); });
  return heard;
}

}  // namespace beegarth::belief
