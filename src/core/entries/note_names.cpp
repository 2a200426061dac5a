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

void NameFinder::mark(std::vector<NoteWord>& words) const {
  for (std::size_t i = 0; i < words.size(); ++i) {
    for (const Spelled& each : names_) {
      if (begins_with(std::span(words).subspan(i), each.words))
        words[i].names.push_back({each.name, each.words.size()});
    }
  }
}

Expected<FoundName> NameFinder::longest(std::span<const NoteWord> words,
                                        std::optional<NamedThing> kind) const {
  FoundName best;
  bool twice = false, site_too = false;
  for (const NameHere& each : words[0].names) {
    if (each.words < best.words || (kind && each.name->what != *kind)) continue;
    if (each.words > best.words) {
      best = {each.words, each.name};
      twice = site_too = false;
      continue;
    }
    const NamedThing one = each.name->what, other = best.name->what;
    twice = twice || one == other;
    site_too = site_too || (one != other && (one == NamedThing::site || other == NamedThing::site));
    if (one == NamedThing::colony && other == NamedThing::hive) best.name = each.name;
  }
  if (twice) {
    return bad_input("two things of one kind are called '" + best.name->shown + "'", "the note",
                     "rename one of them");
  }
  if (site_too) {
    return bad_input("'" + best.name->shown + "' is a site and something else too", "the note",
                     "write site, colony or hive before the name");
  }
  return best;
}

Expected<FoundName> NameFinder::at(std::span<const NoteWord> words) const {
  if (words.empty()) return FoundName{};
  std::size_t skip = 0;
  std::optional<NamedThing> kind;
  if (words[0].names.empty() && words.size() > 1 && !words[1].names.empty()) {
    const std::string& raw = words[0].raw;
    if (raw == "site") kind = NamedThing::site;
    if (raw == "colony") kind = NamedThing::colony;
    if (raw == "hive") kind = NamedThing::hive;
    skip = kind ? 1 : 0;
  }
  words = words.subspan(skip);
  auto best = longest(words, kind);
  if (!best || best->words == 0) return best;
  const std::string shown = best->name->shown;
  const Spelled* shorter = nullptr;
  const bool colon_follows = words.size() > best->words && words[best->words].mark == Mark::colon;
  for (const Spelled& each : names_) {
    const bool leaves_number =
        each.words.size() + 1 == best->words && words[best->words - 1].mark == Mark::number;
    if (leaves_number && begins_with(words, each.words)) shorter = &each;
  }
  if (shorter && !colon_follows) {
    return bad_input("'" + shown + "' may be that name, or '" + shorter->name->shown + "' and a number",
                     "the note", "write a colon after the name");
  }
  best->words += skip;
  return best;
}

std::vector<std::string> NameFinder::near(const std::string& said) const {
  std::vector<std::pair<std::size_t, std::string>> found;
  const std::string wanted = lower(said);
  for (const Spelled& each : names_) {
    const std::string shown = lower(each.name->shown);
    const std::size_t changes = changes_between(wanted, shown);
    const bool begins = wanted.size() >= 3 && shown.rfind(wanted + " ", 0) == 0;
    if (begins || changes <= std::max<std::size_t>(2, shown.size() / 3))
      found.emplace_back(begins ? 1 : changes, each.name->shown);
  }
  std::sort(found.begin(), found.end());
  found.erase(std::unique(found.begin(), found.end()), found.end());
  std::vector<std::string> names;
  names.reserve(found.size());
  for (auto& each : found) names.push_back(std::move(each.second));
  return names;
}

Problem NameFinder::nobody(const std::string& said) const {
  const std::vector<std::string> names = near(said);
  std::string list;
  for (std::size_t i = 0; i < std::min<std::size_t>(3, names.size()); ++i)
    list += (i == 0 ? "" : ", ") + names[i];
  return bad_input("nobody is called '" + said.substr(0, 60) + "'", "the note",
                   list.empty() ? "use a name of the book" : "did you mean " + list);
}

}  // namespace beegarth::entries
