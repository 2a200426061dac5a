#include "garth/known_colonies.hpp"

#include <set>
#include <string>

namespace beegarth::garth {
namespace {

class Begun {
 public:
  void take_in(const entries::Payload& payload) {
    if (const auto* began = std::get_if<entries::ColonyBegan>(&payload)) keys_.insert(began->colony.text());
    if (const auto* split = std::get_if<entries::Split>(&payload)) keys_.insert(split->into.text());
  }
  bool has(const ColonyId& colony) const { return colony.empty() || keys_.contains(colony.text()); }
  std::string list() const {
    std::string text;
    for (const auto& key : keys_) text += (text.empty() ? "" : ", ") + key;
    return text;
  }

 private:
  std::set<std::string> keys_;
};

}  // namespace

Outcome only_known_colonies(std::span<const entries::Entry> book, std::span<const book::Draft> drafts) {
  Begun begun;
  for (const auto& entry : book) begun.take_in(entry.payload);
  for (const auto& draft : drafts) begun.take_in(draft.payload);
  for (const auto& draft : drafts) {
    const auto* unite = std::get_if<entries::Unite>(&draft.payload);
    for (const ColonyId& colony : {entries::colony_of(draft.payload), unite ? unite->from : ColonyId()}) {
      if (begun.has(colony)) continue;
      const std::string known = begun.list();
      return bad_input(
          "there is no colony '" + colony.text() + "' in the book", "colony",
          "enter colony_began for it first" + (known.empty() ? "" : ", or use one of: " + known));
    }
  }
  return Done{};
}

}  // namespace beegarth::garth
