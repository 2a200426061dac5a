// Photos beside a book: by their bytes, never by their name; listed only when they lie there. All invented.
#include "garth/photos.hpp"

#include <gmock/gmock.h>
#include <gtest/gtest.h>
#include <unistd.h>

#include <filesystem>
#include <fstream>
#include <memory>

#include "garth/keep/keep.hpp"

namespace beegarth::garth {
namespace {

using testing::HasSubstr;

const std::string jpeg = std::string("\xFF\xD8\xFF") + "invented";
const Date day = *Date::from_ymd(2026, 6, 4);

class Photos : public ::testing::Test {
 protected:
  void SetUp() override {
    std::filesystem::remove_all(folder);
    std::filesystem::create_directories(folder);
    const std::string path = (folder / "photos.garth").string();
    ASSERT_TRUE(book::Book::open(path, {.create = true}, machine_surroundings()));
    auto opened = open_session(path, {.today = day, .read_only = false});
    ASSERT_TRUE(opened);
    session = std::make_unique<Session>(*std::move(opened));
    const auto kept = keep(
        *session,
        {{.happened = day,
          .payload =
              entries::Site{.site = SiteId("bank"), .name = "Bank", .latitude_deg = 51, .longitude_deg = -1}},
         {.happened = day, .payload = entries::Note{.text = "a comb", .site = SiteId("bank")}}});
    ASSERT_TRUE(kept);
    note = kept->back().id;
    ASSERT_TRUE(refresh(*session));
  }
  void TearDown() override {
    session.reset();
    std::filesystem::remove_all(folder);
  }
  PhotoWish wish(const std::string& name) const {
    return {.file = name, .about = {}, .entry = note.text(), .caption = "a comb", .happened = day};
  }
  std::size_t files() const {
    std::size_t count = 0;
    if (!std::filesystem::exists(photo_folder(session->path))) return 0;
    for (const auto& one : std::filesystem::recursive_directory_iterator(photo_folder(session->path)))
      if (one.is_regular_file()) ++count;
    return count;
  }

  const std::filesystem::path folder =
      std::filesystem::temp_directory_path() / ("beegarth-photos-" + std::to_string(::getpid()));
  std::unique_ptr<Session> session;
  EntryId note;
};

TEST_F(Photos, come_back_as_they_were_given_with_the_type_that_their_bytes_have) {
  const auto kept = keep_photo(*session, wish("../../comb of brood.PNG"), jpeg);
  ASSERT_TRUE(kept) << one_line(kept.problem());
  const auto& photo = std::get<entries::Photo>(kept->payload);
  EXPECT_EQ(photo.file_name, "comb of brood.jpg") << "the name says PNG, the bytes JPEG";
  EXPECT_EQ(photo.entry, note);
  EXPECT_EQ(photo.site, SiteId("bank")) << "it shows what its entry is about";
  ASSERT_TRUE(refresh(*session));
  const auto bytes = photo_bytes(*session, kept->id);
  ASSERT_TRUE(bytes);
  EXPECT_EQ(bytes->bytes, jpeg);
  EXPECT_EQ(bytes->type, "image/jpeg");
  EXPECT_FALSE(photo_bytes(*session, note)) << "that is an entry, and no photo";
}

TEST_F(Photos, that_are_refused_leave_no_file_and_no_entry) {
  const std::size_t before = session->book.entries()->size();
  const auto none = keep_photo(*session, wish("comb.jpg"), "<svg onload='x'/>");
  ASSERT_FALSE(none);
  EXPECT_THAT(none.problem().what, HasSubstr("no JPEG, PNG or WebP"));
  PhotoWish nowhere = wish("comb.jpg");
  nowhere.entry = "no-such-entry";
  const auto of_nothing = keep_photo(*session, nowhere, jpeg);
  ASSERT_FALSE(of_nothing);
  EXPECT_EQ(of_nothing.problem().where, "entry");
  PhotoWish unknown = wish("comb.jpg");
  unknown.about = "Elm";
  EXPECT_FALSE(keep_photo(*session, unknown, jpeg));
  EXPECT_EQ(session->book.entries()->size(), before);
  EXPECT_EQ(files(), 0U);
}

TEST_F(Photos, are_of_a_day_of_the_book_and_of_none_to_come) {
  for (const int days : {1, -1}) {
    PhotoWish off = wish("comb.jpg");
    off.happened = day + days;
    const auto kept = keep_photo(*session, off, jpeg);
    ASSERT_FALSE(kept) << off.happened.iso();
    EXPECT_EQ(kept.problem().where, "date");
  }
  EXPECT_EQ(files(), 0U);
}

TEST_F(Photos, are_listed_once_with_one_entry_and_put_back_where_the_file_is_gone) {
  const auto first = keep_photo(*session, wish("comb.jpg"), jpeg);
  ASSERT_TRUE(first);
  ASSERT_TRUE(refresh(*session));
  const auto again = keep_photo(*session, wish("same.jpg"), jpeg);
  ASSERT_FALSE(again);
  EXPECT_THAT(again.problem().what, HasSubstr("already"));
  PhotoWish of_the_site = wish("comb.jpg");
  of_the_site.entry.clear();
  of_the_site.about = "bank";
  EXPECT_TRUE(keep_photo(*session, of_the_site, jpeg)) << "it shows something else as well";
  EXPECT_EQ(files(), 1U);

  std::filesystem::remove(photo_path(session->path, std::get<entries::Photo>(first->payload)));
  const std::size_t entries_before = session->book.entries()->size();
  const auto back = keep_photo(*session, wish("comb.jpg"), jpeg);
  ASSERT_TRUE(back);
  EXPECT_EQ(back->id, first->id);
  EXPECT_EQ(files(), 1U);
  EXPECT_EQ(session->book.entries()->size(), entries_before);
}

TEST_F(Photos, with_other_bytes_than_were_listed_are_not_shown) {
  const auto kept = keep_photo(*session, wish("comb.jpg"), jpeg);
  ASSERT_TRUE(kept);
  ASSERT_TRUE(refresh(*session));
  std::ofstream(photo_path(session->path, std::get<entries::Photo>(kept->payload))) << jpeg << "and more";
  const auto bytes = photo_bytes(*session, kept->id);
  ASSERT_FALSE(bytes);
  EXPECT_EQ(bytes.problem().kind, ProblemKind::storage);
}

}  // namespace
}  // namespace beegarth::garth
