#include "book/book.hpp"

#include <algorithm>
#include <iterator>
#include <tuple>
#include <utility>

#include "book/clock.hpp"
#include "book/file.hpp"
#include "book/inside.hpp"
#include "book/journal.hpp"

namespace beegarth::book {
namespace {

std::string named(std::size_t index, std::size_t count) {
  return count > 1 ? "draft " + std::to_string(index + 1) : "";
}

Outcome check_draft(const Draft& draft, const std::string& where) {
  const auto at = [&](Problem problem) {
    if (!where.empty()) problem.where = where + (problem.where.empty() ? "" : ", " + problem.where);
    return problem;
  };
  if (const auto valid = entries::validate(draft.payload); !valid) return at(valid.problem());
  if (const auto text = check_utf8(draft.payload); !text) return at(text.problem());
  return Done{};
}

// A copied or restored file writes under a name of its own, so that two copies never continue the same chain.
std::string device_of_this_copy(const Database& database, const std::string& identity,
                                const Surroundings& surroundings) {
  Statement known = database.prepare("SELECT device FROM this_copy WHERE identity = ?1");
  known.bind(1, identity);
  if (known.step()) return known.text(0);
  std::string device = new_device_name(surroundings);
  Statement keep = database.prepare(
      "INSERT INTO this_copy(only, device, identity) VALUES(1, ?1, ?2) "
      "ON CONFLICT(only) DO UPDATE SET device = excluded.device, identity = excluded.identity");
  keep.bind(1, device).bind(2, identity).step();
  return device;
}

}  // namespace

Book::Book(std::unique_ptr<Inside> inside) : inside_(std::move(inside)) {}
Book::Book(Book&&) noexcept = default;
Book& Book::operator=(Book&&) noexcept = default;
Book::~Book() = default;

Expected<Book> Book::open(const std::string& path, const OpenOptions& options, Surroundings surroundings) {
  return guarded([&]() -> Expected<Book> {
    if (options.create) create_book_file(path, surroundings);
    Database database = open_book_file(path, options.read_only);
    return Book(std::make_unique<Inside>(
        Inside{std::move(database), options, std::move(surroundings), identity_of(path)}));
  });
}

Expected<std::vector<entries::Entry>> Book::append(const std::vector<Draft>& drafts, const Fit& fit) {
  Inside& in = *inside_;
  if (in.options.read_only)
    return storage_problem("the book is open for reading only", in.database.path(), "open it for writing");
  for (std::size_t i = 0; i < drafts.size(); ++i) {
    if (const auto sound = check_draft(drafts[i], named(i, drafts.size())); !sound) return sound.problem();
  }
  return guarded([&]() -> Expected<std::vector<entries::Entry>> {
    std::vector<entries::Entry> kept;
    if (drafts.empty()) return kept;
    Transaction transaction(in.database);
    if (fit) {
      const auto there = entries();
      if (!there) return there.problem();
      if (const Outcome fits = fit(*there); !fits) return fits.problem();
    }
    std::string device = in.options.device.empty() ? in.device : in.options.device;
    if (device.empty()) device = device_of_this_copy(in.database, in.identity, in.surroundings);
    std::unique_ptr<Adder> adder = std::move(in.adder);
    if (!adder) adder = std::make_unique<Adder>(in.database);
    entries::Written written = adder->latest_written();
    Head head = adder->head_of_device(device);
    for (std::size_t i = 0; i < drafts.size(); ++i) {
      written = tick(written, in.surroundings.utc_ms());
      Link link{{new_entry_id(written, in.surroundings), drafts[i].happened, drafts[i].happened_hour, written,
                 in.options.who, device, drafts[i].supersedes, drafts[i].payload},
                head.sequence + 1,
                head.hash,
                {}};
      if (const auto sound = check_frame(link.entry, named(i, drafts.size())); !sound) return sound.problem();
      for (const EntryId& target : targets_of(link.entry)) {
        if (!adder->has_entry(target))
          return bad_input("there is no entry " + target.text(), named(i, drafts.size()),
                           "name an entry of this book");
      }
      link.hash = hash_of(link);
      adder->add(link);
      head = {link.sequence, link.hash};
      kept.push_back(std::move(link.entry));
    }
    transaction.commit();
    in.device = std::move(device);
    in.adder = std::move(adder);
    return kept;
  });
}

bool happened_earlier(const entries::Entry& a, const entries::Entry& b) {
  return std::tie(a.happened, a.written, a.id) < std::tie(b.happened, b.written, b.id);
}

namespace {

// Reads the payloads of the rows that `each` passes on; the first that cannot be read is the answer.
template <class Each>
Expected<std::vector<entries::Entry>> read_all(const Each& each) {
  std::vector<entries::Entry> all;
  std::optional<Problem> fault;
  each([&](Row&& row) {
    if (fault) return;
    auto link = read_row(std::move(row));
    if (!link)
      fault = link.problem();
    else
      all.push_back(std::move(link->entry));
  });
  if (fault) return storage_problem("an entry cannot be read: " + fault->what, fault->where, "run verify");
  std::sort(all.begin(), all.end(), happened_earlier);
  return all;
}

}  // namespace

Expected<std::span<const entries::Entry>> Book::entries() const {
  return guarded([&]() -> Expected<std::span<const entries::Entry>> {
    Inside& in = *inside_;
    std::int64_t place = in.known_place;
    auto fresh = read_all([&](const auto& take) {
      each_row_above(in.database, in.known_place, [&](Row&& row) {
        place = row.place;
        take(std::move(row));
      });
    });
    if (!fresh) return fresh.problem();
    const auto before = static_cast<std::ptrdiff_t>(in.known.size());
    in.known.insert(in.known.end(), std::make_move_iterator(fresh->begin()),
                    std::make_move_iterator(fresh->end()));
    std::inplace_merge(in.known.begin(), in.known.begin() + before, in.known.end(), happened_earlier);
    in.known_place = place;
    return std::span<const entries::Entry>(in.known);
  });
}

Expected<std::vector<entries::Entry>> Book::entries_of(std::span<const std::string_view> kinds) const {
  return guarded([&]() -> Expected<std::vector<entries::Entry>> {
    return read_all([&](const auto& take) { each_row_of(inside_->database, kinds, take); });
  });
}

Expected<std::string> Book::head() const {
  return guarded([&]() -> Expected<std::string> { return head_of_all(inside_->database); });
}

std::vector<EntryId> targets_of(const entries::Entry& entry) {
  std::vector<EntryId> targets;
  if (entry.supersedes) targets.push_back(*entry.supersedes);
  if (const auto* removed = std::get_if<entries::Removed>(&entry.payload)) targets.push_back(removed->entry);
  return targets;
}

}  // namespace beegarth::book
