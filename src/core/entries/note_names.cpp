#include "entries/note_names.hpp"

#include <algorithm>
#include <cstdlib>
#include <utility>

namespace beegarth::entries {
namespace {

bool same_word(const NoteWord& a, const NoteWord& b) {
  if (a.mark == Mark::number && b.mark == Mark::number) return a.number == b.number;
  return a.mark == b.mark && a.raw == b.raw;
}

bool begins_with(std::span<const NoteWord> words, const std::vector<NoteWord>& name) {
  if (name.empty() || words.size() < name.size()) return false;
  return std::equal(name.begin(), name.end(), words.begin(), same_word);
}

std::string lower(std::string_view text) {
  std::string out(text.substr(0, 100));
  for (char& c : out) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return out;
}

// How many single changes make one word of the other (Levenshtein).
std::size_t changes_between(const std::string& a, const std::string& b) {
  std::vector<std::size_t> row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    std::size_t diagonal = row[0];
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const std::size_t replaced = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
      diagonal = row[j];
      row[j] = std::min({replaced, row[j] + 1, row[j - 1] + 1});
    }
  }
  return row[b.size()];
}

}  // namespace

NameFinder::NameFinder(const NameBook& book)
    : everywhere_{"all", "all sites", NamedThing::site, std::nullopt} {
  for (const KnownName& name : book.names) names_.push_back({note_words(name.shown), &name});
  names_.push_back({note_words(everywhere_.shown), &everywhere_});
}

bool NameFinder::begins(std::span<const NoteWord> words) const {
  return std::any_of(names_.begin(), names_.end(),
                     [&](const Spelled& each) { return begins_with(words, each.words); });
}

Expected<FoundName> NameFinder::at(std::span<const NoteWord> words) const {
  FoundName best;
  bool twice = false;
  const Spelled* shorter = nullptr;
  for (const Spelled& each : names_) {
    if (!begins_with(words, each.words) || each.words.size() < best.words) continue;
    if (each.words.size() > best.words) {
      best = {each.words.size(), each.name};
      twice = false;
    } else if (best.name == nullptr) {
      continue;  // nothing spelled with no words
    } else if (each.name->what == best.name->what) {
      twice = true;
    } else if (each.name->what == NamedThing::colony || best.name->what == NamedThing::hive) {
      best.name = each.name;
      twice = false;
    }
  }
  if (best.words == 0) return best;
  const std::string shown = best.name->shown;
  if (twice)
    return bad_input("two things of one kind are called '" + shown + "'", "the note", "rename one of them");
  const bool colon_follows = words.size() > best.words && words[best.words].mark == Mark::colon;
  for (const Spelled& each : names_) {
    const bool leaves_number =
        each.words.size() + 1 == best.words && words[best.words - 1].mark == Mark::number;
    if (leaves_number && begins_with(words, each.words)) shorter = &each;
  }
  if (shorter && !colon_follows) {
    return bad_input("'" + shown + "' may be that name, or '" + shorter->name->shown + "' and a number",
                     "the note", "write a colon after the name");
  }
  return best;
}

Problem NameFinder::nobody(const std::string& said) const {
  std::vector<std::pair<std::size_t, std::string>> near;
  const std::string wanted = lower(said);
  for (const Spelled& each : names_) {
    const std::string shown = lower(each.name->shown);
    const std::size_t changes = changes_between(wanted, shown);
    if (changes <= std::max<std::size_t>(2, shown.size() / 3)) near.emplace_back(changes, each.name->shown);
  }
  std::sort(near.begin(), near.end());
  near.erase(std::unique(near.begin(), near.end()), near.end());
  std::string list;
  for (std::size_t i = 0; i < std::min<std::size_t>(3, near.size()); ++i)
    list += (i == 0 ? "" : ", ") + near[i].second;
  return bad_input("nobody is called '" + said.substr(0, 60) + "'", "the note",
                   list.empty() ? "use a name of the book" : "did you mean " + list);
}

}  // namespace beegarth::entries
