#include "garth/keep/known_names.hpp"

#include <optional>
#include <set>
#include <string>

#include "entries/fields.hpp"

namespace beegarth::garth {
namespace {

// One sort of name: what brings it in, and the keys brought in so far.
struct Names {
  const char* what;
  const char* brought_in_by;
  std::set<std::string> keys;

  Outcome ask(const std::string& key) const {
    if (key.empty() || keys.contains(key)) return Done{};
    std::string known;
    for (const auto& one : keys) known += (known.empty() ? "" : ", ") + one;
    return bad_input(std::string("there is no ") + what + " '" + key + "' in the book", what,
                     std::string("enter ") + brought_in_by + " for it first" +
                         (known.empty() ? "" : ", or use one of: " + known));
  }
};

struct AllNames {
  Names sites{"site", "site", {"all"}};  // "all" is every site
  Names hives{"hive", "hive", {}};
  Names colonies{"colony", "colony_began", {}};
  Names queens{"queen", "queen_began", {}};
  Names parts{"part", "part", {}};
  Names combs{"batch of combs", "combs", {}};
  Names lots{"lot", "lot", {}};
  Names patches{"patch", "patch", {}};

  void take_in(const entries::Payload& payload) {
    if (const auto* site = std::get_if<entries::Site>(&payload)) sites.keys.insert(site->site.text());
    if (const auto* hive = std::get_if<entries::Hive>(&payload)) hives.keys.insert(hive->hive.text());
    if (const auto* began = std::get_if<entries::ColonyBegan>(&payload))
      colonies.keys.insert(began->colony.text());
    if (const auto* split = std::get_if<entries::Split>(&payload)) colonies.keys.insert(split->into.text());
    if (const auto* queen = std::get_if<entries::QueenBegan>(&payload))
      queens.keys.insert(queen->queen.text());
    if (const auto* part = std::get_if<entries::Part>(&payload)) parts.keys.insert(part->part.text());
    if (const auto* batch = std::get_if<entries::Combs>(&payload)) combs.keys.insert(batch->combs.text());
    if (const auto* lot = std::get_if<entries::Lot>(&payload)) lots.keys.insert(lot->lot.text());
    if (const auto* patch = std::get_if<entries::Patch>(&payload)) patches.keys.insert(patch->patch.text());
  }
};

// Visits the fields of a payload and asks after every key in it; see entries/fields.hpp.
class Asker : public entries::FieldsPassedBy {
 public:
  using FieldsPassedBy::id;
  using FieldsPassedBy::ids;
  explicit Asker(const AllNames& names) : names_(names) {}
  const std::optional<Problem>& problem() const { return problem_; }

  void id(const char* /*name*/, const SiteId& value, bool /*required*/) { ask(names_.sites, value.text()); }
  void id(const char* /*name*/, const HiveId& value, bool /*required*/) { ask(names_.hives, value.text()); }
  void id(const char* /*name*/, const ColonyId& value, bool /*required*/) {
    ask(names_.colonies, value.text());
  }
  void id(const char* /*name*/, const QueenId& value, bool /*required*/) { ask(names_.queens, value.text()); }
  void id(const char* /*name*/, const PartId& value, bool /*required*/) { ask(names_.parts, value.text()); }
  void id(const char* /*name*/, const CombsId& value, bool /*required*/) { ask(names_.combs, value.text()); }
  void id(const char* /*name*/, const LotId& value, bool /*required*/) { ask(names_.lots, value.text()); }
  void id(const char* /*name*/, const PatchId& value, bool /*required*/) {
    ask(names_.patches, value.text());
  }
  template <class T>
  void id(const char* name, const std::optional<Id<T>>& value) {
    if (value) id(name, *value, false);
  }
  template <class T>
  void ids(const char* name, const std::vector<Id<T>>& values) {
    for (const Id<T>& value : values) id(name, value, true);
  }
  void ask(const Names& names, const std::string& key) {
    const Outcome known = names.ask(key);
    if (!known && !problem_) problem_ = known.problem();
  }

 private:
  const AllNames& names_;
  std::optional<Problem> problem_;
};

// The keys that stand in plain text: the ends of a road, and the place in the key of a need.
void ask_after_text(const entries::Payload& payload, const AllNames& names, Asker& asker) {
  if (const auto* road = std::get_if<entries::Travel>(&payload)) {
    for (const std::string& end : {road->from, road->to})
      if (end != "home") asker.ask(names.sites, end);
  }
  if (const auto* answer = std::get_if<entries::NeedAnswered>(&payload)) {
    const std::size_t slash = answer->need.find('/');
    const std::string rest = slash == std::string::npos ? answer->need : answer->need.substr(slash + 1);
    const std::string place = rest.substr(0, rest.find('/'));
    if (!names.sites.keys.contains(place)) asker.ask(names.colonies, place);
  }
}

}  // namespace

std::optional<Objection> only_known_names(std::span<const entries::Entry> book,
                                          std::span<const book::Draft> drafts) {
  AllNames names;
  for (const auto& entry : book) names.take_in(entry.payload);
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    const auto* began = std::get_if<entries::ColonyBegan>(&drafts[i].payload);
    const auto* split = std::get_if<entries::Split>(&drafts[i].payload);
    const ColonyId fresh = began ? began->colony : split ? split->into : ColonyId();
    if (!fresh.empty() && !drafts[i].supersedes && names.colonies.keys.contains(fresh.text()))
      return Objection{
          i, bad_input("the colony '" + fresh.text() + "' is in the book already", began ? "colony" : "into",
                       "correct that entry with --corrects, or choose another key")};
    names.take_in(drafts[i].payload);
  }
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    Asker asker(names);
    entries::visit_fields_of(asker, drafts[i].payload);
    ask_after_text(drafts[i].payload, names, asker);
    if (asker.problem()) return Objection{i, *asker.problem()};
  }
  return std::nullopt;
}

}  // namespace beegarth::garth
