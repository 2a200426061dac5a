// Photos lie in a folder beside the book, each under the SHA-256 of its bytes, and are listed in the book.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "garth/session.hpp"

namespace beegarth::garth {

inline constexpr std::size_t largest_photo = std::size_t{64} << 20;

struct PhotoWish {
  std::string file;   // where it is; with `bytes`, its name only
  std::string about;  // a colony or site, by key or name; may be empty
  std::string entry;  // the id of the entry that it belongs to; may be empty
  std::string caption;
  Date happened;
};

// "my.garth" has its photos in "my.garth.photos".
std::string photo_folder(const std::string& book);
std::string photo_path(const std::string& book, const entries::Photo& photo);

// A photo is of a day of the book, and of none to come. Copies the file into the folder, then keeps the
// entry: a photo that is listed is there. The same picture twice lies there once, and twice with the same
// entry, colony or site is refused; where its file has gone missing it is put back, and its first entry
// returned.
Expected<entries::Entry> keep_photo(Session& session, const PhotoWish& wish);

// The same with the bytes at hand: `wish.file` gives the name.
Expected<entries::Entry> keep_photo(Session& session, const PhotoWish& wish, std::string_view bytes);

struct PhotoBytes {
  std::string bytes;
  std::string type;  // "image/jpeg"
};
// Of a photo entry that counts. A Problem where there is none, or where its file is missing or has other
// bytes.
Expected<PhotoBytes> photo_bytes(const Session& session, const EntryId& id);

// Every photo that the book lists and that is missing or has other bytes.
std::vector<std::string> faulty_photos(const Session& session);

}  // namespace beegarth::garth
