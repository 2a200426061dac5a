#include "book/state.hpp"

#include <algorithm>
#include <array>
#include <tuple>
#include <type_traits>
#include <utility>

#include "base/utf8.hpp"
#include "entries/fields.hpp"

namespace beegarth::book {
namespace {

using entries::Entry;

// Every colony that an entry names: a split and a union are about two.
struct ColoniesNamed : entries::FieldsPassedBy {
  using FieldsPassedBy::id;
  std::vector<ColonyId> found;
  void id(const char*, const ColonyId& value, bool) { found.push_back(value); }
  void id(const char*, const std::optional<ColonyId>& value) {
    if (value) found.push_back(*value);
  }
};

// The year and the clipping of the queen as last said in a colony's history.
void queen_goes_along(const std::vector<Entry>& history, entries::ColonyBegan& began) {
  for (const Entry& entry : history) {
    const auto* queen = std::get_if<entries::Queen>(&entry.payload);
    if (!queen) continue;
    const bool another = queen->event == entries::QueenEvent::introduced ||
                         queen->event == entries::QueenEvent::virgin_emerged;
    if (another) began.queen_year.reset(), began.queen_clipped.reset();
    if (queen->year) began.queen_year = queen->year;
    if (queen->event == entries::QueenEvent::clipped) began.queen_clipped = true;
  }
}

template <class Item, class Key>
void keep_latest(std::vector<Item>& items, std::map<Key, std::size_t>& places, const Key& key,
                 const Item& item) {
  const auto [place, fresh] = places.emplace(key, items.size());
  if (fresh) {
    items.push_back(item);
  } else {
    items[place->second] = item;
  }
}

class Teller {
 public:
  explicit Teller(State& state) : state_(state) {}

  void tell(const Entry& entry) {
    if (!state_.first_date || entry.happened < *state_.first_date) state_.first_date = entry.happened;
    ColoniesNamed named;
    entries::visit_fields_of(named, entry.payload);
    for (std::size_t i = 0; i < named.found.size(); ++i) {
      if (i == 0 || named.found[i] != named.found[0]) histories_[named.found[i]].push_back(entry);
    }
    std::visit([&](const auto& payload) { take(entry, payload); }, entry.payload);
  }

  // What was said about a colony before it began belongs to it too.
  void close() {
    for (auto& [id, colony] : state_.colonies) colony.history = std::move(histories_[id]);
  }

 private:
  ColonyState* living(const ColonyId& id) {
    const auto found = state_.colonies.find(id);
    return found == state_.colonies.end() || found->second.ended ? nullptr : &found->second;
  }
  void begin(const Entry& entry, const entries::ColonyBegan& began) {
    if (ColonyState* known = living(began.colony)) {  // said again: renamed, or found in another hive
      known->began.name = began.name;
      known->hive = began.hive;
      return;
    }
    ColonyState& colony = state_.colonies[began.colony];
    colony = {};
    colony.began = began;
    colony.began_on = entry.happened;
    colony.began_entry = entry.id;
    colony.hive = began.hive;
  }
  void end(const Entry& entry, const entries::ColonyEnded& ended) {
    if (ColonyState* colony = living(ended.colony)) {
      colony->ended = ended;
      colony->ended_on = entry.happened;
    }
  }

  void take(const Entry&, const entries::Site& site) { state_.sites[site.site] = site; }
  void take(const Entry&, const entries::SiteClosed& closed) { state_.sites.erase(closed.site); }
  void take(const Entry&, const entries::Travel& travel) {
    state_.travel[{travel.from, travel.to}] = travel;
    entries::Travel back = travel;
    std::swap(back.from, back.to);
    state_.travel[{back.from, back.to}] = std::move(back);
  }
  void take(const Entry&, const entries::Hive& hive) { state_.hives[hive.hive] = hive; }
  void take(const Entry& entry, const entries::ColonyBegan& began) { begin(entry, began); }
  void take(const Entry&, const entries::ColonyMoved& moved) {
    if (ColonyState* colony = living(moved.colony)) colony->hive = moved.hive;
  }
  void take(const Entry&, const entries::Transfer& transfer) {
    if (ColonyState* colony = living(transfer.colony)) colony->hive = transfer.hive;
  }
  void take(const Entry& entry, const entries::ColonyEnded& ended) { end(entry, ended); }
  void take(const Entry& entry, const entries::Split& split) {
    entries::ColonyBegan began{
        .colony = split.into, .name = split.name, .hive = split.hive, .how = entries::Beginning::split};
    if (const ColonyState* parent = living(split.colony); parent && split.queen_goes) {
      began.queen_year = parent->began.queen_year;
      began.queen_clipped = parent->began.queen_clipped;
      queen_goes_along(histories_[split.colony], began);
    }
    begin(entry, began);
  }
  void take(const Entry& entry, const entries::Unite& unite) {
    end(entry, {.colony = unite.from,
                .how = entries::Ending::united,
                .cause = "united with " + unite.colony.text()});
  }
  void take(const Entry& entry, const entries::Weather&) { state_.weather.push_back(entry); }
  void take(const Entry& entry, const entries::NeedAnswered&) { state_.answers.push_back(entry); }
  void take(const Entry&, const entries::Normals& normals) {
    keep_latest(state_.normals, normals_, std::pair(normals.site, normals.month), normals);
  }
  void take(const Entry&, const entries::Forage& forage) {
    keep_latest(state_.forage, forage_, std::pair(forage.site, forage.month), forage);
  }
  void take(const Entry&, const entries::WorkingHours& hours) {
    keep_latest(state_.hours, hours_, std::pair(hours.weekday, hours.date), hours);
  }
  void take(const Entry&, const entries::TableOverride& row) {
    keep_latest(state_.overrides, overrides_, std::pair(row.table, row.row), row);
  }
  void take(const Entry&, const entries::Kit& kit) { state_.kit[kit.what] = kit; }
  void take(const Entry&, const entries::Setting& setting) { state_.settings[setting.name] = setting.value; }
  template <class Other>
  void take(const Entry&, const Other&) {}  // lives in the histories

  State& state_;
  std::map<ColonyId, std::vector<Entry>> histories_;
  std::map<std::pair<SiteId, int>, std::size_t> normals_;
  std::map<std::pair<SiteId, int>, std::size_t> forage_;
  std::map<std::pair<entries::Count, std::optional<Date>>, std::size_t> hours_;
  std::map<std::pair<std::string, std::string>, std::size_t> overrides_;
};

// The key as written, then the key, then the shown name without regard to case. Of several with one name the
// one that `better` picks out; where that leaves more than one, nobody: a guess could put an entry into the
// wrong hive.
template <class Id, class Thing, class Name, class Better>
std::optional<Id> find_in(const std::map<Id, Thing>& things, std::string_view wanted, const Name& name,
                          const Better& better) {
  if (const Id exact{std::string(wanted)}; things.count(exact) != 0) return exact;
  const std::string small = folded(wanted);
  for (const bool by_key : {true, false}) {
    std::vector<Id> found;
    std::vector<Id> preferred;
    for (const auto& [id, thing] : things) {
      if (folded(by_key ? id.text() : name(thing)) != small) continue;
      found.push_back(id);
      if (better(thing)) preferred.push_back(id);
    }
    if (found.size() == 1) return found[0];
    if (preferred.size() == 1) return preferred[0];
  }
  return std::nullopt;
}

}  // namespace

State state_of(std::span<const Entry> standing, Date as_of) {
  State state;
  state.as_of = as_of;
  Teller teller(state);
  for (const Entry& entry : standing) {
    if (entry.happened <= as_of) teller.tell(entry);
  }
  teller.close();
  return state;
}

std::span<const std::string_view> outline_kinds() {
  // A queen is here because her year goes along with a split.
  static constexpr auto kinds = std::to_array<std::string_view>(
      {"site", "site_closed", "travel", "hive", "colony_began", "colony_moved", "transfer", "colony_ended",
       "split", "unite", "queen", "normals", "forage", "working_hours", "kit", "setting", "table_override"});
  return kinds;
}

State outline_of(std::span<const Entry> standing, Date as_of) {
  const auto kinds = outline_kinds();
  std::vector<Entry> outline;
  outline.reserve(standing.size());
  for (const Entry& entry : standing) {
    const std::string_view kind = entries::kind_name(entry.payload);
    if (std::find(kinds.begin(), kinds.end(), kind) != kinds.end()) outline.push_back(entry);
  }
  State state = state_of(outline, as_of);
  for (auto& [id, colony] : state.colonies) colony.history.clear();
  return state;
}

std::optional<ColonyId> find_colony(const State& state, std::string_view key_or_name) {
  return find_in(
      state.colonies, key_or_name, [](const ColonyState& colony) { return colony.began.name; },
      [](const ColonyState& colony) { return !colony.ended; });
}

std::optional<SiteId> find_site(const State& state, std::string_view key_or_name) {
  return find_in(
      state.sites, key_or_name, [](const entries::Site& site) { return site.name; },
      [](const entries::Site&) { return false; });
}

}  // namespace beegarth::book
