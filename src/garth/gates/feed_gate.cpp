// Feed that nobody should give.
#include "garth/gates/gates.hpp"

namespace beegarth::garth {

Outcome feed_gate(const Known&, const book::Draft& draft) {
  const auto* feed = std::get_if<entries::Feed>(&draft.payload);
  if (feed == nullptr || feed->source != entries::FeedSource::honey_of_unknown_origin) return Done{};
  return bad_input("honey of unknown origin can carry foulbrood and is never fed", "source",
                   "feed sugar, or honey and combs of your own healthy colonies");
}

}  // namespace beegarth::garth
