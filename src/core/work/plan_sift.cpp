#include <algorithm>
#include <map>
#include <set>

#include "work/plan_model.hpp"
#include "work/plan_told.hpp"
#include "work/words.hpp"

namespace beegarth::work {

namespace {

class Sieve {
 public:
  Sieve(const PlanInput& input, const Roads& roads) : input_(input), roads_(roads) {
    for (std::size_t i = 0; i < input.sites.size(); ++i)
      site_index_[input.sites[i].site] = static_cast<int>(i);
    for (const auto& place : input.colonies) colony_site_[place.colony] = place.site;
    last_day_ = input.from + (input.days - 1);
    for (std::size_t day = 0; day < input.hours.size(); ++day)
      if (input.hours[day].end_hour > input.hours[day].start_hour) any_hours_ = true;
  }

  Sifted sift() {
    sifted_.site_of.assign(input_.needs.size(), -1);
    std::vector<int> by_key(input_.needs.size());
    for (std::size_t i = 0; i < by_key.size(); ++i) by_key[i] = static_cast<int>(i);
    std::stable_sort(by_key.begin(), by_key.end(), [&](int a, int b) { return need(a).key < need(b).key; });
    for (const int i : by_key) sort_one(i);
    set_circles_aside();
    set_followers_aside();
    return std::move(sifted_);
  }

 private:
  const facts::Need& need(int i) const { return input_.needs[static_cast<std::size_t>(i)]; }

  void sort_one(int i) {
    if (!seen_.insert(need(i).key).second) return set_aside(i, "the same need was given twice");
    const auto site = site_index_.find(need(i).site);
    if (site != site_index_.end()) sifted_.site_of[static_cast<std::size_t>(i)] = site->second;
    if (const auto reason = cannot(need(i), site == site_index_.end() ? -1 : site->second))
      return set_aside(i, *reason);
    if (need(i).earliest > last_day_) {
      sifted_.aside.push_back(
          {i, "its time begins " + day_text(need(i).earliest) + ", after this plan", true});
      return;
    }
    if (need(i).at_home)
      sifted_.at_home.push_back(i);
    else if (need(i).minutes <= 0 && !need(i).clashes.empty())
      sifted_.keep_shut.push_back(i);
    else
      sifted_.needs.push_back(i);
  }

  std::optional<std::string> cannot(const facts::Need& one, int site) const {
    if (!one.held.empty()) return one.held;
    if (site < 0) return "no site " + one.site.text() + " is known";
    const SiteFacts& facts = input_.sites[static_cast<std::size_t>(site)];
    if (one.colony) {
      const auto stands = colony_site_.find(*one.colony);
      if (stands == colony_site_.end()) return "no living colony " + one.colony->text() + " is known";
      if (stands->second != one.site)
        return one.colony->text() + " stands at " + stands->second.text() + ", not at " + facts.name;
    }
    if (one.latest < one.earliest)
      return "its last day " + day_text(one.latest) + " lies before its first, " + day_text(one.earliest);
    if (one.latest < input_.from) return "its time was over on " + day_text(one.latest);
    if (one.at_home || (one.minutes <= 0 && !one.clashes.empty())) return std::nullopt;
    if (one.people > input_.people)
      return "it takes " + std::to_string(one.people) + " people and there " +
             (input_.people == 1 ? "is one" : "are " + std::to_string(input_.people));
    if (!roads_.reachable(site)) return "no travel time is known between home and " + facts.name;
    if (!any_hours_) return "no working hours in this plan";
    return std::nullopt;
  }

  void set_aside(int i, std::string because) { sifted_.aside.push_back({i, std::move(because), false}); }

  std::map<std::string, int> planned_by_key() const {
    std::map<std::string, int> by_key;
    for (const int i : sifted_.needs) by_key[need(i).key] = i;
    return by_key;
  }

  // Takes out, again and again, whatever waits for nothing that is left; what cannot be taken out waits in a
  // circle or for a circle.
  void set_circles_aside() {
    std::map<std::string, int> waiting = planned_by_key();
    for (bool moved = true; moved;) {
      moved = false;
      for (auto it = waiting.begin(); it != waiting.end();) {
        const auto& after = need(it->second).after;
        const bool free =
            std::none_of(after.begin(), after.end(), [&](const auto& key) { return waiting.count(key) > 0; });
        it = free ? waiting.erase(it) : std::next(it);
        moved = moved || free;
      }
    }
    for (const auto& [key, i] : waiting) {
      std::string others;
      for (const auto& first : need(i).after)
        if (waiting.count(first) > 0) others += (others.empty() ? "" : ", ") + told(first);
      drop(i, "it waits for " + others + " in a circle");
    }
  }

  void set_followers_aside() {
    std::set<std::string> lost;
    for (const auto& aside : sifted_.aside) lost.insert(need(aside.need).key);
    for (bool again = true; again;) {
      again = false;
      for (const int i : std::vector<int>(sifted_.needs)) {
        const auto& after = need(i).after;
        const auto first =
            std::find_if(after.begin(), after.end(), [&](const auto& key) { return lost.count(key) > 0; });
        if (first == after.end()) continue;
        lost.insert(need(i).key);
        drop(i, told(*first) + " has to come first and is left undone");
        again = true;
      }
    }
  }

  std::string told(const std::string& key) const {
    const auto named = std::find_if(input_.needs.begin(), input_.needs.end(),
                                    [&](const facts::Need& one) { return one.key == key; });
    return named == input_.needs.end() ? key : told_shortly(input_, *named);
  }

  void drop(int i, std::string because) {
    sifted_.needs.erase(std::find(sifted_.needs.begin(), sifted_.needs.end(), i));
    set_aside(i, std::move(because));
  }

  const PlanInput& input_;
  const Roads& roads_;
  std::map<SiteId, int> site_index_;
  std::map<ColonyId, SiteId> colony_site_;
  std::set<std::string> seen_;
  Date last_day_;
  bool any_hours_ = false;
  Sifted sifted_;
};

}  // namespace

Sifted sift_needs(const PlanInput& input, const Roads& roads) {
  Sifted sifted = Sieve(input, roads).sift();
  const int sites = static_cast<int>(input.sites.size());
  const auto name = [&](int site) {
    return site < 0 ? std::string("home") : input.sites[static_cast<std::size_t>(site)].name;
  };
  for (int a = -1; a < sites; ++a) {
    if (a >= 0 && !roads.reachable(a))
      sifted.remarks.push_back("No travel time is known between home and " + name(a) +
                               ": nothing is planned there.");
    for (int b = a + 1; b < sites; ++b)
      if (roads.pieced_together(a, b))
        sifted.remarks.push_back("No travel time was given between " + name(a) + " and " + name(b) +
                                 ": reckoned past other places.");
  }
  return sifted;
}

}  // namespace beegarth::work
