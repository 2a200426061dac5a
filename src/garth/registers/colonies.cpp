// Feeding, movements, counts, losses: what became of the colonies.
#include <algorithm>
#include <map>
#include <set>

#include "entries/fields.hpp"
#include "garth/ledgers/dead_colony.hpp"
#include "garth/registers/kinds.hpp"

namespace beegarth::garth {
namespace {

using entries::Entry;

// Follows every colony from hive to hive and writes a row for each change of place.
class MovementWriter {
 public:
  explicit MovementWriter(const Session& session) : session_(session) {}

  std::vector<RegisterRow> rows_of(std::span<const Entry> standing) {
    for (const Entry& entry : standing)
      if (const auto* sale = std::get_if<entries::Sale>(&entry.payload); sale && sale->colony && sale->buyer)
        buyer_of_[*sale->colony] = *sale->buyer;
    for (const Entry& entry : standing)
      std::visit([&](const auto& said) { take(entry, said); }, entry.payload);
    return std::move(rows_);
  }

 private:
  std::string site_of(const HiveId& hive) const {
    const auto at = site_of_.find(hive);
    return at == site_of_.end() ? std::string() : site_name(session_, at->second);
  }
  std::string place(const HiveId& hive) const {
    const std::string site = site_of(hive);
    const auto name = name_of_.find(hive);
    return (name == name_of_.end() ? hive.text() : name->second) + (site.empty() ? "" : ", " + site);
  }
  void row(const Entry& entry, const ColonyId& colony, std::string what, std::string from, std::string to) {
    rows_.push_back({entry.happened,
                     {entry.happened.iso(), colony_name(session_, colony), std::move(what), std::move(from),
                      std::move(to), entry.who},
                     {entry.id}});
  }
  void settle(const ColonyId& colony, const HiveId& hive) { home_[colony] = hive; }
  void move(const Entry& entry, const ColonyId& colony, const HiveId& hive, const std::string& what) {
    row(entry, colony, what, home_.contains(colony) ? place(home_.at(colony)) : "", place(hive));
    settle(colony, hive);
  }

  void take(const Entry& entry, const entries::Hive& hive) {
    const auto before = site_of_.find(hive.hive);
    const bool moves = before != site_of_.end() && before->second != hive.site;
    const std::string from = moves ? place(hive.hive) : "";
    site_of_[hive.hive] = hive.site;
    name_of_[hive.hive] = hive.name;
    if (!moves) return;
    for (const auto& [colony, home] : home_) {
      if (home == hive.hive) row(entry, colony, "moved with its hive", from, place(hive.hive));
    }
  }
  void take(const Entry& entry, const entries::ColonyBegan& began) {
    if (home_.contains(began.colony)) return settle(began.colony, began.hive);
    row(entry, began.colony, "began: " + key_in_words(entries::word_for(began.how)),
        began.from_whom.value_or(""), place(began.hive));
    settle(began.colony, began.hive);
  }
  void take(const Entry& entry, const entries::ColonyMoved& moved) {
    move(entry, moved.colony, moved.hive, "moved");
  }
  void take(const Entry& entry, const entries::Transfer& moved) {
    move(entry, moved.colony, moved.hive, "transferred: " + key_in_words(entries::word_for(moved.how)));
  }
  void take(const Entry& entry, const entries::Split& split) {
    row(entry, split.into, "split from " + colony_name(session_, split.colony),
        home_.contains(split.colony) ? place(home_.at(split.colony)) : "", place(split.hive));
    settle(split.into, split.hive);
  }
  void take(const Entry& entry, const entries::Unite& unite) {
    row(entry, unite.from, "united with " + colony_name(session_, unite.colony),
        home_.contains(unite.from) ? place(home_.at(unite.from)) : "",
        home_.contains(unite.colony) ? place(home_.at(unite.colony)) : "");
    home_.erase(unite.from);
  }
  void take(const Entry& entry, const entries::ColonyEnded& ended) {
    row(entry, ended.colony, "ended: " + key_in_words(entries::word_for(ended.how)),
        home_.contains(ended.colony) ? place(home_.at(ended.colony)) : "", taker_of(ended));
    home_.erase(ended.colony);
  }
  // To whom a stock went: by its sale, or as it was told with its end.
  std::string taker_of(const entries::ColonyEnded& ended) const {
    using entries::Ending;
    if (ended.how != Ending::sold && ended.how != Ending::given_away) return {};
    const auto buyer = buyer_of_.find(ended.colony);
    return buyer == buyer_of_.end() ? ended.cause.value_or("") : buyer->second;
  }
  template <class Other>
  void take(const Entry&, const Other&) {}

  const Session& session_;
  std::map<ColonyId, std::string> buyer_of_;
  std::map<HiveId, SiteId> site_of_;
  std::map<HiveId, std::string> name_of_;
  std::map<ColonyId, HiveId> home_;
  std::vector<RegisterRow> rows_;
};

}  // namespace

Expected<Register> feeding_register(const Session& session) {
  Register out;
  out.columns = {{"date", "date"},
                 {"colony", "colony", 1.5},
                 {"form", "form"},
                 {"kg", "kg", 0.6},
                 {"sugar_pct", "sugar %", 0.7},
                 {"source", "source", 1.2},
                 {"product", "product", 1.2},
                 {"who", "who"}};
  for (const Entry& entry : session.standing) {
    const auto* feed = std::get_if<entries::Feed>(&entry.payload);
    if (feed == nullptr) continue;
    out.rows.push_back(
        {entry.happened,
         {entry.happened.iso(), colony_name(session, feed->colony),
          key_in_words(entries::word_for(feed->form)), short_number(feed->kg, 2),
          short_number(feed->sugar_pct), feed->source ? key_in_words(entries::word_for(*feed->source)) : "",
          feed->product.value_or(""), entry.who},
         {entry.id}});
  }
  return out;
}

Expected<Register> movements_register(const Session& session) {
  Register out;
  out.columns = {{"date", "date"},      {"colony", "colony", 1.2}, {"what", "what", 1.5},
                 {"from", "from", 1.6}, {"to", "to", 1.6},         {"who", "who", 0.8}};
  out.rows = MovementWriter(session).rows_of(session.standing);
  return out;
}

Expected<Register> counts_register(const Session& session) {
  Register out;
  out.columns = {{"month_end", "end of month"}, {"site", "site", 2}, {"colonies", "colonies"}};
  if (!session.state.first_date) return out;
  Date day = *session.state.first_date;
  while (day <= session.today) {
    const Date next_month =
        *Date::from_ymd(day.month() == 12 ? day.year() + 1 : day.year(), day.month() % 12 + 1, 1);
    const Date last = std::min(next_month - 1, session.today);
    const book::State then = book::state_of(session.standing, last);
    std::map<SiteId, int> at;
    for (const auto& [id, colony] : then.colonies) {
      const auto hive = then.hives.find(colony.hive);
      if (!colony.ended) ++at[hive == then.hives.end() ? SiteId() : hive->second.site];
    }
    for (const auto& [site, colonies] : at)
      out.rows.push_back(
          {last,
           {last.iso(), site.empty() ? "no known site" : site_name(session, site), std::to_string(colonies)},
           {}});
    day = next_month;
  }
  return out;
}

Expected<Register> losses_register(const Session& session) {
  Register out;
  out.columns = {{"date", "date"},
                 {"colony", "colony", 1.2},
                 {"how", "how"},
                 {"cause", "cause as entered", 1.5},
                 {"points_to", "what was found points to", 2.2}};
  for (const auto& [id, colony] : session.state.colonies) {
    if (!colony.ended ||
        (colony.ended->how != entries::Ending::died && colony.ended->how != entries::Ending::absconded))
      continue;
    std::string points_to;
    std::vector<EntryId> because;
    for (const Entry& entry : colony.history) {
      if (std::holds_alternative<entries::ColonyEnded>(entry.payload)) because.push_back(entry.id);
      const auto* found = std::get_if<entries::DeadColony>(&entry.payload);
      if (found == nullptr) continue;
      const auto causes = causes_of_death(*found, session.tables["dead_colony"]);
      if (!causes) return causes.problem();
      points_to = causes->front().words + " (" + short_number(100 * causes->front().share, 0) + " %), then " +
                  (*causes)[1].words + " (" + short_number(100 * (*causes)[1].share, 0) + " %)";
      because.push_back(entry.id);
    }
    out.rows.push_back(
        {colony.ended_on,
         {colony.ended_on->iso(), colony.began.name, key_in_words(entries::word_for(colony.ended->how)),
          colony.ended->cause.value_or(""), points_to},
         because});
  }
  std::stable_sort(out.rows.begin(), out.rows.end(),
                   [](const auto& a, const auto& b) { return a.date < b.date; });
  return out;
}

}  // namespace beegarth::garth
