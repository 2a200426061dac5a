// A nest of wild bees, birds or others that was found locks its patch until it is gone; one that is tied to
// no patch locks its site, and so does a deed that names none.
#include <algorithm>
#include <string>
#include <vector>

#include "entries/fields.hpp"
#include "garth/gates/gates.hpp"

namespace beegarth::garth {
namespace {

struct Ground {
  SiteId site;
  std::optional<PatchId> patch;
};

// Where the deed would cut, dig or cover, if it does.
std::optional<Ground> worked_by(const entries::Cut& cut) {
  return Ground{cut.site, cut.patch};
}
std::optional<Ground> worked_by(const entries::Planted& planted) {
  return Ground{planted.site, planted.patch};
}
std::optional<Ground> worked_by(const entries::PlantCare& care) {
  using entries::PlantDeed;
  const bool leaves_it_alone = care.deed == PlantDeed::watered || care.deed == PlantDeed::guarded;
  return leaves_it_alone ? std::nullopt : std::optional(Ground{care.site, care.patch});
}
template <class Other>
std::optional<Ground> worked_by(const Other&) {
  return std::nullopt;
}

std::vector<const entries::Entry*> nests_there(const Known& known) {
  std::vector<const entries::Entry*> nests;
  for (const auto& entry : known.standing) {
    const auto* nest = std::get_if<entries::Nest>(&entry.payload);
    if (nest == nullptr) continue;
    if (!nest->gone.value_or(false)) {
      nests.push_back(&entry);
      continue;
    }
    std::erase_if(nests, [&](const entries::Entry* found) {
      const auto& one = std::get<entries::Nest>(found->payload);
      return one.site == nest->site && one.patch == nest->patch && one.of == nest->of &&
             one.place == nest->place;
    });
  }
  return nests;
}

// A patch named at another site would be a way round its nest.
Outcome lies_there(const Known& known, const Ground& ground) {
  for (auto entry = known.standing.rbegin(); entry != known.standing.rend(); ++entry) {
    const auto* patch = std::get_if<entries::Patch>(&entry->payload);
    if (patch == nullptr || patch->patch != ground.patch) continue;
    if (patch->site == ground.site) return Done{};
    return bad_input("the patch '" + patch->patch.text() + "' lies at '" + patch->site.text() + "'", "site",
                     "name that site, or a patch of this one");
  }
  return Done{};
}

}  // namespace

Outcome nest_gate(const Known& known, const book::Draft& draft) {
  const auto ground = std::visit([](const auto& said) { return worked_by(said); }, draft.payload);
  if (!ground) return Done{};
  if (Outcome there = lies_there(known, *ground); !there) return there;
  for (const entries::Entry* entry : nests_there(known)) {
    const auto& nest = std::get<entries::Nest>(entry->payload);
    if (nest.site != ground->site || (nest.patch && ground->patch && nest.patch != ground->patch)) continue;
    std::string of(entries::word_for(nest.of));
    std::replace(of.begin(), of.end(), '_', ' ');
    return bad_input(
        "a nest (" + of + ", " + nest.place + ") was found there on " + entry->happened.iso() +
            ": nothing is cut, dug, planted or covered at " +
            (nest.patch ? "the patch '" + nest.patch->text() + "'"
                        : "the site '" + nest.site.text() + "', as it is tied to no patch"),
        "entry " + entry->id.text(),
        "look again: enter the nest with gone = true when it is empty; name the patch of the work, "
        "or correct the patch of the nest");
  }
  return Done{};
}

}  // namespace beegarth::garth
