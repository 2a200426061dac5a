#include "garth/ledgers/notifiable.hpp"

#include <algorithm>

#include "duty/rows.hpp"
#include "garth/tables/countries.hpp"

namespace beegarth::garth {
namespace {

using duty::Subject;

bool is_letter(char c) {
  return (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

// Small letters, and a blank for whatever is none.
std::string plain_words(std::string_view said) {
  std::string text = " ";
  for (char c : said) {
    if (c >= 'A' && c <= 'Z') c = static_cast<char>(c + ('a' - 'A'));
    text += is_letter(c) ? c : ' ';
  }
  return text + " ";
}

std::string in_words(std::string key) {
  std::replace(key.begin(), key.end(), '_', ' ');
  return key;
}

std::vector<std::string> listed(const std::string& text) {
  std::vector<std::string> parts;
  for (std::size_t from = 0; from < text.size();) {
    const std::size_t end = std::min(text.find(", ", from), text.size());
    parts.push_back(text.substr(from, end - from));
    from = end + 2;
  }
  return parts;
}

}  // namespace

// Reads one payload against the things whose suspicion stops movement.
class SignReader {
 public:
  SignReader(const Notifiable& notifiable, const Notifiable::Things& stopping)
      : notifiable_(notifiable), stopping_(stopping) {}

  std::vector<std::string> read(const entries::Payload& payload) const {
    return std::visit([&](const auto& said) { return in(said); }, payload);
  }
  bool names_one(std::string_view text) const {
    const std::string words = plain_words(text);
    return std::any_of(notifiable_.names_.begin(), notifiable_.names_.end(), [&](const auto& name) {
      return stopping_.contains(name.second) && words.find(" " + name.first) != std::string::npos;
    });
  }

 private:
  std::vector<std::string> among(const std::vector<std::string>& signs) const {
    std::vector<std::string> found;
    for (const std::string& sign : signs) {
      const auto things = notifiable_.of_sign_.find(sign);
      if (things == notifiable_.of_sign_.end()) continue;
      const bool stops = std::any_of(things->second.begin(), things->second.end(),
                                     [&](Subject thing) { return stopping_.contains(thing); });
      if (stops) found.push_back(in_words(sign));
    }
    return found;
  }
  std::vector<std::string> in(const entries::Sample& sample) const {
    if (sample.finding != entries::Finding::found) return {};
    const std::string result = sample.result.value_or("");
    if (names_one(result)) return {"the laboratory found: " + result};
    // Bees are sent for nosema and mites; the others mostly for foulbrood (from memory).
    const bool may_be =
        sample.of != entries::SampleOf::bees && sample.of != entries::SampleOf::other && result.empty();
    return may_be ? std::vector<std::string>{"the laboratory found something that is not named"}
                  : std::vector<std::string>();
  }
  std::vector<std::string> in(const entries::Reported& reported) const {
    if (!names_one(reported.what)) return {};
    return {in_words(reported.what) + " reported"};
  }
  std::vector<std::string> in(const entries::Sign& sign) const {
    if (sign.how_much == entries::Level::none) return {};
    auto found = among(sign.signs);
    if (sign.thread_mm.value_or(0) > 0 && stopping_.contains(Subject::american_foulbrood))
      found.emplace_back("a thread drawn from a cell");
    return found;
  }
  std::vector<std::string> in(const entries::Inspection& look) const { return among(look.signs); }
  std::vector<std::string> in(const entries::DeadColony& dead) const { return among(dead.signs); }
  std::vector<std::string> in(const entries::MiteCount& count) const {
    if (count.mites <= 0 || !stopping_.contains(Subject::varroa)) return {};
    return {"varroa mites counted"};
  }
  template <class Other>
  std::vector<std::string> in(const Other&) const {
    return {};
  }

  const Notifiable& notifiable_;
  const Notifiable::Things& stopping_;
};

Expected<Notifiable> Notifiable::from(const Tables& tables) {
  Notifiable all;
  duty::Rows signs(tables["duty_signs"]);
  for (std::size_t i = 0; i < duty::subject_keys.size(); ++i) {
    const auto thing = static_cast<Subject>(i);
    const std::string key(duty::subject_keys[i]);
    for (const std::string& name : listed(signs.words(key + "_names"))) all.names_.emplace_back(name, thing);
    const std::string ending = "_of_" + key;
    for (const FactRow& row : tables["duty_signs"].rows())
      if (row.key.ends_with(ending) && row.value != 0)
        all.of_sign_[row.key.substr(0, row.key.size() - ending.size())].insert(thing);
  }
  if (signs.fault()) return *signs.fault();
  for (const char* table : {"duty_england", "duty_wales", "duty_scotland", "duty_general"}) {
    duty::Rows country(tables[table]);
    Things& stopping = all.stopping_[table];
    for (std::size_t i = 0; i < duty::subject_keys.size(); ++i)
      if (country.yes(std::string(duty::subject_keys[i]) + "_stops_movement"))
        stopping.insert(static_cast<Subject>(i));
    if (country.fault()) return *country.fault();
    all.stopping_anywhere_.insert(stopping.begin(), stopping.end());
  }
  return all;
}

std::vector<std::string> Notifiable::signs_in(const entries::Payload& payload,
                                              std::string_view country) const {
  return SignReader(*this, stopping_.at(duty_table_of(country))).read(payload);
}
std::vector<std::string> Notifiable::signs_in(const entries::Payload& payload) const {
  return SignReader(*this, stopping_anywhere_).read(payload);
}
bool Notifiable::names_one(std::string_view text) const {
  return SignReader(*this, stopping_anywhere_).names_one(text);
}

std::set<duty::Subject> Notifiable::things_named(std::string_view text) const {
  const std::string words = plain_words(text);
  std::set<duty::Subject> things;
  for (const auto& [name, thing] : names_)
    if (words.find(" " + name) != std::string::npos) things.insert(thing);
  return things;
}

}  // namespace beegarth::garth
