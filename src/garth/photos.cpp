#include "garth/photos.hpp"

#include <algorithm>
#include <filesystem>
#include <system_error>

#include "book/sha256.hpp"
#include "garth/files.hpp"
#include "garth/keep/keep.hpp"

namespace beegarth::garth {
namespace {

// By the first bytes and not by the name: what a camera calls .JPG may be anything.
std::string ending_of(std::string_view bytes) {
  if (bytes.starts_with("\xFF\xD8\xFF")) return ".jpg";
  if (bytes.starts_with("\x89PNG\r\n\x1A\n")) return ".png";
  if (bytes.starts_with("RIFF") && bytes.substr(8, 4) == "WEBP") return ".webp";
  return {};
}

Outcome day_of_a_photo(const Session& session, Date day) {
  if (day > session.today)
    return bad_input("no photo was taken yet on " + day.iso(), "date", "check the day");
  if (session.state.first_date && day < *session.state.first_date)
    return bad_input(day.iso() + " lies before the book begins on " + session.state.first_date->iso(), "date",
                     "enter first what stood there then, or check the day");
  return Done{};
}

const entries::Entry* listed(const Session& session, const entries::Photo& photo) {
  for (const auto& entry : session.standing) {
    const auto* one = std::get_if<entries::Photo>(&entry.payload);
    if (one != nullptr && one->sha256 == photo.sha256 && one->entry == photo.entry &&
        one->colony == photo.colony && one->site == photo.site)
      return &entry;
  }
  return nullptr;
}

Outcome put_in_folder(const Session& session, const entries::Photo& photo, std::string_view bytes) {
  const std::string path = photo_path(session.path, photo);
  std::error_code fault;
  std::filesystem::create_directories(std::filesystem::path(path).parent_path(), fault);
  if (fault)
    return Problem{ProblemKind::storage, "the folder for photos cannot be made: " + fault.message(),
                   photo_folder(session.path), "check the rights there"};
  if (std::filesystem::exists(path)) return Done{};
  return write_file(path, bytes);
}

}  // namespace

std::string photo_folder(const std::string& book) {
  return book + ".photos";
}

std::string photo_path(const std::string& book, const entries::Photo& photo) {
  const std::size_t dot = photo.file_name.rfind('.');
  const std::string ending = dot == std::string::npos ? "" : photo.file_name.substr(dot);
  return photo_folder(book) + "/" + photo.sha256.substr(0, 2) + "/" + photo.sha256 + ending;
}

Expected<entries::Entry> keep_photo(Session& session, const PhotoWish& wish) {
  const auto bytes = read_file(wish.file, largest_photo);
  if (!bytes) return bytes.problem();
  return keep_photo(session, wish, *bytes);
}

Expected<entries::Entry> keep_photo(Session& session, const PhotoWish& wish, std::string_view bytes) {
  if (Outcome sound = day_of_a_photo(session, wish.happened); !sound) return sound.problem();
  const std::string ending = ending_of(bytes);
  if (ending.empty()) return bad_input("that is no JPEG, PNG or WebP picture", wish.file, "give a photo");
  if (bytes.size() > largest_photo)
    return bad_input("the picture is larger than 64 MiB", wish.file, "make it smaller");
  entries::Photo photo{.sha256 = book::sha256_hex(bytes),
                       .file_name = std::filesystem::path(wish.file).stem().string() + ending,
                       .bytes = static_cast<int>(bytes.size())};
  const auto all = session.book.entries();
  if (!all) return all.problem();
  if (!wish.entry.empty()) {
    const auto entry =
        std::find_if(all->begin(), all->end(), [&](const auto& one) { return one.id.text() == wish.entry; });
    if (entry == all->end())
      return bad_input("there is no entry '" + wish.entry.substr(0, 60) + "'", "entry",
                       "see the entries of the book");
    photo.entry = entry->id;
    // It shows what its entry is about.
    if (const ColonyId colony = entries::colony_of(entry->payload); !colony.text().empty())
      photo.colony = colony;
    else if (const SiteId site = entries::site_of(entry->payload); !site.text().empty())
      photo.site = site;
  }
  if (!wish.caption.empty()) photo.caption = wish.caption;
  if (photo.file_name == ending) photo.file_name = "photo" + ending;
  if (!wish.about.empty()) {
    photo.colony.reset();
    photo.site.reset();
    if (const auto colony = book::find_colony(session.state, wish.about))
      photo.colony = *colony;
    else if (const auto site = book::find_site(session.state, wish.about))
      photo.site = *site;
    else
      return colony_named(session.state, wish.about).problem();
  }
  const auto* before = listed(session, photo);
  if (before != nullptr && std::filesystem::exists(photo_path(session.path, photo)))
    return bad_input("this picture is in the book already, with the same entry, colony or site", wish.file,
                     "give another, or say what else it shows");
  const std::vector<book::Draft> drafts{{.happened = wish.happened, .payload = photo}};
  if (const Outcome fit = may_be_kept(*all, drafts, session.tables); !fit) return fit.problem();
  if (Outcome put = put_in_folder(session, photo, bytes); !put) return put.problem();
  if (before != nullptr) return *before;
  auto kept = keep(session, drafts);
  if (!kept) return kept.problem();
  return kept->front();
}

Expected<PhotoBytes> photo_bytes(const Session& session, const EntryId& id) {
  for (const auto& entry : session.standing) {
    const auto* photo = std::get_if<entries::Photo>(&entry.payload);
    if (photo == nullptr || entry.id != id) continue;
    auto bytes = read_file(photo_path(session.path, *photo), largest_photo);
    if (!bytes)
      return Problem{ProblemKind::storage, "the file of this photo is missing", photo->file_name, {}};
    const std::string ending = ending_of(*bytes);
    if (ending.empty() || book::sha256_hex(*bytes) != photo->sha256)
      return Problem{ProblemKind::storage, "the file of this photo has other bytes", photo->file_name, {}};
    return PhotoBytes{*std::move(bytes), ending == ".jpg" ? "image/jpeg" : "image/" + ending.substr(1)};
  }
  return bad_input("there is no photo '" + id.text().substr(0, 60) + "'", {}, "see the entries of the book");
}

std::vector<std::string> faulty_photos(const Session& session) {
  std::vector<std::string> faults;
  for (const auto& entry : session.standing) {
    const auto* photo = std::get_if<entries::Photo>(&entry.payload);
    if (photo == nullptr) continue;
    const std::string path = photo_path(session.path, *photo);
    const auto bytes = read_file(path, largest_photo);
    if (!bytes)
      faults.push_back("photo " + photo->file_name + " of entry " + entry.id.text() + " is missing: " + path);
    else if (book::sha256_hex(*bytes) != photo->sha256)
      faults.push_back("photo " + photo->file_name + " of entry " + entry.id.text() +
                       " has other bytes: " + path);
  }
  return faults;
}

}  // namespace beegarth::garth
