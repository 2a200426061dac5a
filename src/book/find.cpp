#include "book/find.hpp"

#include <algorithm>
#include <map>
#include <memory>
#include <set>

#include "book/inside.hpp"
#include "book/journal.hpp"
#include "book/word_index.hpp"

namespace beegarth::book {
namespace {

constexpr std::int64_t worth_a_file = 5000;  // below that the words are gathered in under a tenth of a second

// Those that corrections and removals join to `some`, they themselves among them, in time order.
std::vector<entries::Entry> with_all_linked(const Database& book, const WordIndex& index,
                                            std::vector<entries::Entry> some) {
  std::set<EntryId> there;
  for (const auto& entry : some) there.insert(entry.id);
  for (std::size_t next = 0; next < some.size(); ++next) {
    std::vector<EntryId> neighbours = index.linked_to(some[next].id);
    for (const EntryId& target : targets_of(some[next])) neighbours.push_back(target);
    for (const EntryId& id : neighbours) {
      if (!there.insert(id).second) continue;
      if (auto entry = entry_with_id(book, id)) some.push_back(*std::move(entry));
    }
  }
  std::sort(some.begin(), some.end(), happened_earlier);
  return some;
}

std::optional<std::int64_t> place_of_id(const Database& book, const EntryId& id) {
  Statement row = book.prepare("SELECT row, happened FROM entry WHERE id = ?1");
  row.bind(1, id.text());
  if (!row.step()) return std::nullopt;
  const auto day = Date::parse(row.text(1));
  if (!day) return std::nullopt;
  return place_of(*day, row.whole(0));
}

template <class Inside>
const WordIndex& words_of_now(Inside& in) {
  if (!in.words)
    in.words = std::make_unique<WordIndex>(in.database.path(), in.identity,
                                           in.database.number("SELECT max(row) FROM entry") >= worth_a_file);
  try {
    in.words->catch_up(in.database);
  } catch (const StorageTrouble&) {  // damaged, or another has it: this time without the file
    in.words = std::make_unique<WordIndex>(in.database.path(), in.identity, false);
    in.words->catch_up(in.database);
  }
  return *in.words;
}

}  // namespace

Expected<Hits> Book::find(const Wanted& wanted) const {
  return guarded([&]() -> Expected<Hits> {
    const Database& journal = inside_->database;
    const WordIndex& index = words_of_now(*inside_);
    std::optional<std::int64_t> below;
    if (wanted.after) {
      below = place_of_id(journal, *wanted.after);
      if (!below)
        return bad_input("there is no entry '" + wanted.after->text().substr(0, 60) + "'", "after",
                         "give the id of the last entry of the page before");
    }
    const WordIndex::Places found = index.find(wanted, below);
    std::vector<entries::Entry> page;
    const std::size_t count = std::min(found.places.size(), wanted.limit);
    page.reserve(count);
    for (std::size_t i = 0; i < count; ++i)
      if (auto entry = entry_at_row(journal, row_at(found.places[i]))) page.push_back(*std::move(entry));
    const auto line = with_all_linked(journal, index, page);
    const auto fates = fates_of(line);
    Hits hits{.count = found.count, .more = found.places.size() > wanted.limit};
    std::map<EntryId, std::size_t> at;
    for (std::size_t i = 0; i < line.size(); ++i) at[line[i].id] = i;
    for (entries::Entry& entry : page) {
      const std::size_t place = at.at(entry.id);
      hits.entries.push_back({std::move(entry), fates[place]});
    }
    return hits;
  });
}

Expected<std::vector<entries::Entry>> Book::whole_line(const EntryId& id) const {
  return guarded([&]() -> Expected<std::vector<entries::Entry>> {
    const Database& journal = inside_->database;
    auto entry = entry_with_id(journal, id);
    if (!entry)
      return bad_input("there is no entry '" + id.text().substr(0, 60) + "'", {},
                       "see the entries of the book");
    return with_all_linked(journal, words_of_now(*inside_), {*std::move(entry)});
  });
}

}  // namespace beegarth::book
