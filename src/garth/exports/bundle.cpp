#include "garth/exports/bundle.hpp"

#include <archive.h>
#include <archive_entry.h>

#include <memory>
#include <set>
#include <stdexcept>

#include "garth/exports/calendar.hpp"
#include "garth/exports/places.hpp"
#include "garth/files.hpp"
#include "garth/photos.hpp"
#include "garth/registers/register.hpp"

namespace beegarth::garth {
namespace {

struct FreeArchive {
  void operator()(archive* one) const { archive_write_free(one); }
};
struct FreeEntry {
  void operator()(archive_entry* one) const { archive_entry_free(one); }
};

void must(int code, archive* one) {
  if (code < ARCHIVE_WARN) throw std::runtime_error(std::string("zip: ") + archive_error_string(one));
}

la_ssize_t take_bytes(archive* /*one*/, void* out, const void* bytes, std::size_t count) {
  static_cast<std::string*>(out)->append(static_cast<const char*>(bytes), count);
  return static_cast<la_ssize_t>(count);
}

std::string read_me(const Session& session, const std::vector<std::string>& faults) {
  std::string text =
      "This folder holds everything in the book as it stood on " + session.today.iso() +
      ". No program of ours is needed to read it.\n\n"
      "book.jsonl       every entry, one a line, as JSON (corrected and removed ones too); each line holds "
      "the\n"
      "                 SHA-256 of itself without \"hash\", in canonical JSON (RFC 8785)\n"
      "registers/*.csv  what the entries add up to: medicines, movements, lots and more (RFC 4180, UTF-8)\n"
      "places.geojson   sites and what stands on them (RFC 7946)\n"
      "dates.ics        dates that the book sets (RFC 5545)\n"
      "photos/          each under the SHA-256 of its bytes, once; the photo entries of book.jsonl say what "
      "they show\n";
  for (const auto& fault : faults) text += "\nMissing: " + fault + "\n";
  return text;
}

}  // namespace

Expected<std::vector<BundledFile>> bundled_files(const Session& session) {
  std::vector<BundledFile> files;
  const auto lines = session.book.export_lines();
  if (!lines) return lines.problem();
  files.push_back({"book.jsonl", *lines});
  for (const auto& kind : register_kinds()) {
    const auto one = register_of(session, kind.name, {});
    if (!one) return one.problem();
    files.push_back({"registers/" + std::string(kind.name) + ".csv", register_csv(*one)});
  }
  files.push_back({"places.geojson", places_geojson(session).dump(1) + "\n"});
  files.push_back({"dates.ics", calendar_text(calendar_days(session), session.today)});
  std::set<std::string> packed;  // one picture may be kept with several entries
  for (const auto& entry : session.standing) {
    const auto* photo = std::get_if<entries::Photo>(&entry.payload);
    if (photo == nullptr) continue;
    const std::string path = photo_path(session.path, *photo);
    if (!packed.insert(path).second) continue;
    if (auto bytes = read_file(path))
      files.push_back({"photos/" + path.substr(path.rfind('/') + 1), *std::move(bytes)});
  }
  files.insert(files.begin(), {"README.txt", read_me(session, faulty_photos(session))});
  return files;
}

std::string zip_of(const std::vector<BundledFile>& files, Date dated) {
  std::string out;
  const std::unique_ptr<archive, FreeArchive> zip(archive_write_new());
  must(archive_write_set_format_zip(zip.get()), zip.get());
  must(archive_write_set_options(zip.get(), "zip:compression=deflate,zip:hdrcharset=UTF-8"), zip.get());
  must(archive_write_open(zip.get(), &out, nullptr, take_bytes, nullptr), zip.get());
  constexpr std::int64_t seconds_a_day = 86400;
  for (const BundledFile& file : files) {
    const std::unique_ptr<archive_entry, FreeEntry> entry(archive_entry_new());
    archive_entry_set_pathname_utf8(entry.get(), file.name.c_str());
    archive_entry_set_size(entry.get(), static_cast<la_int64_t>(file.bytes.size()));
    archive_entry_set_filetype(entry.get(), AE_IFREG);
    archive_entry_set_perm(entry.get(), 0644);
    archive_entry_set_mtime(entry.get(), dated.day_number() * seconds_a_day, 0);
    must(archive_write_header(zip.get(), entry.get()), zip.get());
    if (archive_write_data(zip.get(), file.bytes.data(), file.bytes.size()) < 0)
      throw std::runtime_error(std::string("zip: ") + archive_error_string(zip.get()));
  }
  must(archive_write_close(zip.get()), zip.get());
  return out;
}

}  // namespace beegarth::garth
