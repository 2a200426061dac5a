#include "work/rounds/recombine.hpp"

#include <algorithm>

namespace beegarth::work::rounds {
namespace {

struct Card {
  PlaceSet places;
  Worth net = 0, score = 0;
  int column = 0;
};

class Chooser {
 public:
  Chooser(const Terrain& terrain, const std::vector<Column>& columns, const Priced& priced,
          const Tours& known, Work& work)
      : terrain_(terrain),
        columns_(columns),
        work_(work),
        use_(terrain),
        best_(known.score),
        prices_(priced.found ? priced.prices : 0) {
    for (int day = 0; day < terrain.days(); ++day) days_.push_back(day);
    std::stable_sort(days_.begin(), days_.end(),
                     [&](int a, int b) { return terrain.alike(a) < terrain.alike(b); });
    std::vector<int> first_of_sort;
    for (const int day : days_) {
      if (first_of_sort.empty() || first_of_sort.back() != terrain.alike(day))
        first_of_sort.push_back(terrain.alike(day));
      sort_.push_back(first_of_sort.size() - 1);
    }
    hands_.resize(days_.size() + 1);
    for (auto& hands : hands_) hands.resize(first_of_sort.size());
    for (std::size_t sort = 0; sort < first_of_sort.size(); ++sort)
      hands_[0][sort] = cards_of(first_of_sort[sort], priced);
    chosen_.assign(days_.size(), -1);
  }

  bool run() { return choose(0, 0, 0); }

  // By day; -1 where nothing is done. Empty where nothing better was found.
  std::vector<int> best() const {
    std::vector<int> by_day(days_.size(), -1);
    if (best_chosen_.empty()) return {};
    for (std::size_t level = 0; level < days_.size(); ++level)
      by_day[static_cast<std::size_t>(days_[level])] = best_chosen_[level];
    return by_day;
  }

 private:
  using Hand = std::vector<Card>;  // best first

  Hand cards_of(int sort, const Priced& priced) const {
    Hand hand;
    for (std::size_t i = 0; i < columns_.size(); ++i) {
      if (columns_[i].day != sort) continue;
      Card card;
      card.column = static_cast<int>(i);
      card.score = columns_[i].score;
      for (const int stop : columns_[i].stops) {
        card.places.add(stop);
        card.net += priced.found ? priced.net_worth[static_cast<std::size_t>(stop)] : terrain_.score(stop);
      }
      hand.push_back(card);
    }
    std::stable_sort(hand.begin(), hand.end(), [](const Card& a, const Card& b) { return a.net > b.net; });
    return hand;
  }

  static Worth top(const Hand& hand) { return hand.empty() ? 0 : std::max<Worth>(0, hand.front().net); }

  // What the days from `level` on can bring at most, each by itself.
  Worth hope(std::size_t level, const std::vector<Hand>& hands) const {
    Worth sum = 0;
    for (std::size_t later = level; later < days_.size(); ++later) sum += top(hands[sort_[later]]);
    return sum;
  }

  bool worth_trying(Worth most) const { return most >= best_ + terrain_.score_step(); }

  bool choose(std::size_t level, Worth net, Worth score) {
    if (score > best_) {
      best_ = score;
      best_chosen_ = chosen_;
    }
    if (level == days_.size()) return true;
    const Worth so_far = prices_ + net, later = hope(level + 1, hands_[level]);
    const Hand& hand = hands_[level][sort_[level]];
    for (std::size_t i = 0; i < hand.size() && worth_trying(so_far + hand[i].net + later); ++i) {
      const Card& card = hand[i];
      if (!work_.spend(1)) return false;
      if (!take(card, level)) continue;
      bool finished = deal(level, i, so_far + card.net, later);
      if (finished && worth_trying(so_far + card.net + hope(level + 1, hands_[level + 1]))) {
        chosen_[level] = card.column;
        finished = choose(level + 1, net + card.net, score + card.score);
        chosen_[level] = -1;
      }
      give_back(card, level);
      if (!finished) return false;
    }
    if (!worth_trying(so_far + later)) return true;
    // Nothing on this day; nor then on those alike, so that each plan is met once.
    hands_[level + 1] = hands_[level];
    hands_[level + 1][sort_[level]].clear();
    return choose(level + 1, net, score);
  }

  // The cards of later days that go with the one taken, and could still lead to something better.
  bool deal(std::size_t level, std::size_t taken, Worth so_far, Worth later) {
    const PlaceSet& places = hands_[level][sort_[level]][taken].places;
    for (std::size_t sort = sort_[level]; sort < hands_[level].size(); ++sort) {
      const Hand& from = hands_[level][sort];
      Hand& to = hands_[level + 1][sort];
      to.clear();
      const Worth others = later - top(from);
      for (std::size_t i = sort == sort_[level] ? taken + 1 : 0; i < from.size(); ++i) {
        if (!worth_trying(so_far + others + from[i].net)) break;
        if (!work_.spend(1)) return false;
        if (!from[i].places.meets(places)) to.push_back(from[i]);
      }
    }
    return true;
  }

  bool take(const Card& card, std::size_t level) {
    if (terrain_.limits() == 0) return true;
    const auto& stops = columns_[static_cast<std::size_t>(card.column)].stops;
    for (std::size_t i = 0; i < stops.size(); ++i) {
      if (use_.room_for(stops[i], days_[level])) {
        use_.add(stops[i], days_[level]);
        continue;
      }
      while (i-- > 0) use_.add(stops[i], days_[level], -1);
      return false;
    }
    return true;
  }

  void give_back(const Card& card, std::size_t level) {
    if (terrain_.limits() == 0) return;
    for (const int stop : columns_[static_cast<std::size_t>(card.column)].stops)
      use_.add(stop, days_[level], -1);
  }

  const Terrain& terrain_;
  const std::vector<Column>& columns_;
  Work& work_;
  Use use_;
  Worth best_, prices_;
  std::vector<int> days_;                 // those alike beside each other
  std::vector<std::size_t> sort_;         // of the day at each level
  std::vector<std::vector<Hand>> hands_;  // [level][sort of day]: what is still possible
  std::vector<int> chosen_, best_chosen_;
};

}  // namespace

Put put_together(const Terrain& terrain, const std::vector<Column>& columns, const Priced& priced,
                 const Tours& known, Work& work) {
  Chooser chooser(terrain, columns, priced, known, work);
  Put put{known, chooser.run()};
  const auto chosen = chooser.best();
  if (chosen.empty()) return put;
  Tours tours = no_tours(terrain);
  for (std::size_t day = 0; day < chosen.size(); ++day)
    if (chosen[day] >= 0) tours.days[day].become(columns[static_cast<std::size_t>(chosen[day])].stops);
  add_up(tours);
  if (better(tours, put.tours)) put.tours = std::move(tours);
  return put;
}

}  // namespace beegarth::work::rounds
