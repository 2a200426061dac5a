#include "garth/plan/answers.hpp"

#include <algorithm>
#include <array>

namespace beegarth::garth {
namespace {

using Answer = entries::NeedAnswered::Answer;

// What a need's deed looks like in the book, by the kind of need, and how to write it.
struct Deed {
  const char* need;
  bool (*told_by)(const entries::Payload&);
  const char* how_to_write;
};

template <class... Kinds>
bool is_one_of(const entries::Payload& payload) {
  return (std::holds_alternative<Kinds>(payload) || ...);
}

// A look from outside shows no comb.
bool is_look(const entries::Payload& payload) {
  const auto* look = std::get_if<entries::Inspection>(&payload);
  return (look != nullptr && look->look != entries::Look::outside) ||
         is_one_of<entries::Swarmed, entries::Queen>(payload);
}
constexpr auto is_count = is_one_of<entries::MiteCount>;

constexpr auto deeds = std::to_array<Deed>({
    {"look-cells", is_look, "what was seen"},
    {"look-eggs", is_look, "what was seen"},
    {"check-queen", is_look, "what was seen"},
    {"first-look", is_look, "what was seen"},
    {"count-mites", is_count, "the count, when you have it"},
    {"count-after", is_count, "the count, when you have it"},
    {"watch", is_count, "the count, when you have it"},
    {"feed", is_one_of<entries::Feed>, "how much of what was fed"},
    {"room", is_one_of<entries::Room, entries::ColonyMoved>, "which combs or boxes went on"},
    {"split", is_one_of<entries::Split, entries::Swarmed, entries::Queen>, "the split (enter ... split)"},
    {"treat", is_one_of<entries::Treatment>, "product, batch, days and withdrawal"},
    {"winter-treatment", is_one_of<entries::Treatment>, "product, batch, days and withdrawal"},
    {"heft", is_one_of<entries::Weight, entries::Inspection>, "the weight, or how it felt"},
    {"dead-out", is_one_of<entries::ColonyEnded, entries::Inspection>, "that it died, or what was seen"},
});

std::string kind_of(const std::string& key) {
  return key.substr(0, key.find('/'));
}

int rest_days(const Session& session, const std::string& kind) {
  std::string row = "rest_" + kind + "_days";
  std::replace(row.begin(), row.end(), '-', '_');
  const FactTable& work = session.tables["work"];
  const FactRow* found = work.find(row);
  return static_cast<int>((found != nullptr ? found : work.find("rest_days"))->value);
}

const Deed* deed_of(const std::string& kind) {
  const auto* const found =
      std::find_if(deeds.begin(), deeds.end(), [&](const Deed& deed) { return kind == deed.need; });
  return found == deeds.end() ? nullptr : &*found;
}

// A deed may be written a day before it is answered, and at any time after.
bool is_written(const Deed& deed, const book::ColonyState& colony, Date answered) {
  constexpr int written_before_days = 1;
  return std::any_of(colony.history.begin(), colony.history.end(), [&](const entries::Entry& entry) {
    return entry.happened >= answered - written_before_days && deed.told_by(entry.payload);
  });
}

}  // namespace

Answered answered_needs(const Session& session) {
  constexpr int rest_of_a_skipped_one_days = 2;  // so that today's plan does not repeat it
  Answered answered;
  for (const auto& entry : session.state.answers) {
    const auto& answer = std::get<entries::NeedAnswered>(entry.payload);
    // The last word counts. A call to the inspector is not put off.
    answered.resting.erase(answer.need);
    answered.not_before.erase(answer.need);
    const bool health = kind_of(answer.need) == "tell-inspector" || kind_of(answer.need) == "suspect";
    if (answer.answer == Answer::done) {
      if (entry.happened + rest_days(session, kind_of(answer.need)) >= session.today)
        answered.resting[answer.need] = entry.happened;
    } else if (answer.answer != Answer::rained_off && !health) {
      const Date until = answer.until.value_or(entry.happened + rest_of_a_skipped_one_days + 1);
      if (until > session.today) answered.not_before[answer.need] = until;
    }
  }
  return answered;
}

std::vector<Unwritten> unwritten_deeds(const Session& session) {
  std::map<std::string, const entries::Entry*> last_done;
  for (const auto& entry : session.state.answers) {
    const auto& answer = std::get<entries::NeedAnswered>(entry.payload);
    if (answer.answer == Answer::done) last_done[answer.need] = &entry;
  }
  std::vector<Unwritten> list;
  for (const auto& [key, answer] : last_done) {
    const std::string kind = kind_of(key);
    const Deed* deed = deed_of(kind);
    if (deed == nullptr || kind.size() == key.size()) continue;
    const std::string rest = key.substr(kind.size() + 1);  // "alder-5", or "alder-5/2026"
    const auto colony = session.state.colonies.find(ColonyId(rest.substr(0, rest.find('/'))));
    if (colony == session.state.colonies.end() || colony->second.ended) continue;
    if (session.today > answer->happened + rest_days(session, kind)) continue;  // it is asked again
    if (is_written(*deed, colony->second, answer->happened)) continue;
    list.push_back({colony->first, kind, answer});
  }
  return list;
}

std::string remark_of(const Unwritten& deed, const std::string& colony_name) {
  std::string text = colony_name + ": \"" + deed.kind + "\" was answered as done on " +
                     deed.answer->happened.iso() + " but no entry tells of it; write " +
                     deed_of(deed.kind)->how_to_write;
  text += deed.kind == "treat"
              ? ". Until then it counts as one that stays ten weeks, and as no deed in the odds"
              : ". Until then the odds know nothing of it";
  return text;
}

}  // namespace beegarth::garth
