// A book that nobody wrote: sites, unlike hives, colonies, looks and counts drawn from a seed. Everything
// invented.
#pragma once

#include <cmath>
#include <string>
#include <vector>

#include "base/random.hpp"
#include "book/book.hpp"

namespace beegarth::reference {

struct BookShape {
  int sites = 3;
  bool rain_every_day = false;  // seven typed rows, all wet, and wet normals
  bool no_hours = false;        // no time on any weekday
  bool heavy_mites = false;     // the newest count of every colony is far over any limit
  bool renamed = false;         // the first colony is said again under another name
  bool ended = false;           // the last colony died a week ago
};

inline constexpr int colonies_per_site = 2;

class SomeBook {
 public:
  SomeBook(std::uint64_t seed, const BookShape& shape, Date today)
      : stream_({.seed = seed, .purpose = Purpose::synthetic_truth}), shape_(shape), today_(today) {
    settings();
    for (int site = 0; site < shape.sites; ++site) add_site(site);
    if (shape.renamed) say(today - 3, began(0, 0, "Newly Called"));
    if (shape.ended)
      say(today - 7,
          entries::ColonyEnded{.colony = colony(shape.sites - 1, 1), .how = entries::Ending::died});
  }

  const std::vector<book::Draft>& drafts() const { return drafts_; }
  static ColonyId colony(int site, int number) {
    return ColonyId("stock-" + std::to_string(site) + "-" + std::to_string(number));
  }

 private:
  void say(Date happened, entries::Payload payload) {
    drafts_.push_back({.happened = happened, .payload = std::move(payload)});
  }
  double between(double low, double high) { return low + (high - low) * stream_.uniform(); }
  bool one_in(int n) { return stream_.uniform() * n < 1; }
  static SiteId site_id(int site) { return SiteId("site-" + std::to_string(site)); }

  void settings() {
    const Date first = today_ - 300;
    for (int month = 1; month <= 12; ++month) {
      const bool summer = month >= 4 && month <= 9;
      say(first, entries::Normals{.site = SiteId("all"),
                                  .month = month,
                                  .temperature_min_C = summer ? 9.0 : 2.0,
                                  .temperature_max_C = summer ? 19.0 : 8.0,
                                  .rain_mm = shape_.rain_every_day ? 300.0 : 55.0,
                                  .rain_days = shape_.rain_every_day ? 28.0 : 10.0,
                                  .wind_m_s = 3});
    }
    for (int weekday = 1; weekday <= 7; ++weekday)
      say(first, entries::WorkingHours{
                     .weekday = weekday, .start_hour = 10, .end_hour = shape_.no_hours ? 10.0 : 17.0});
    if (!shape_.rain_every_day) return;
    for (int day = 0; day < 7; ++day)
      say(today_ + day, entries::Weather{.site = SiteId("all"),
                                         .temperature_max_C = 14,
                                         .rain_mm = 45,
                                         .wind_m_s = 7,
                                         .forecast = true});
  }

  entries::ColonyBegan began(int site, int number, const std::string& name) {
    return {.colony = colony(site, number),
            .name = name,
            .hive = HiveId("hive-" + std::to_string(site) + "-" + std::to_string(number)),
            .how = entries::Beginning::overwintered,
            .queen_year = today_.year() - 1};
  }

  void add_site(int site) {
    const Date first = today_ - 300;
    const std::string name = "Site " + std::to_string(site);
    say(first, entries::Site{.site = site_id(site),
                             .name = name,
                             .latitude_deg = between(48, 55),
                             .longitude_deg = between(-3, 3),
                             .utc_offset_h = 1,
                             .neighbours = one_in(3)});
    say(first, entries::Travel{.from = "home", .to = site_id(site).text(), .minutes = between(3, 40)});
    for (int number = 0; number < colonies_per_site; ++number) add_colony(site, number);
  }

  void add_colony(int site, int number) {
    const Date first = today_ - 299;
    entries::ColonyBegan stock =
        began(site, number, "Stock " + std::to_string(site) + "-" + std::to_string(number));
    const bool horizontal = one_in(3);
    say(first, entries::Hive{.hive = stock.hive,
                             .name = "Hive of " + stock.name,
                             .site = site_id(site),
                             .place = number + 1,
                             .form = horizontal ? entries::HiveForm::horizontal : entries::HiveForm::upright,
                             .type = "home-made",
                             .brood_combs = static_cast<int>(between(8, 16)),
                             .can_board = !horizontal});
    say(first, stock);
    for (int days = 60; days > 5; days -= static_cast<int>(between(6, 20))) look(stock.colony, today_ - days);
    const int mites = shape_.heavy_mites ? 45 : static_cast<int>(between(0, 6));
    say(today_ - 4,
        entries::MiteCount{
            .colony = stock.colony, .method = entries::MiteMethod::wash, .mites = mites, .bees = 300});
  }

  void look(const ColonyId& colony, Date date) {
    entries::Inspection look{.colony = colony};
    look.seams = std::round(between(3, 10));
    look.brood_combs = std::round(between(1, 8));
    look.eggs = !one_in(8);
    look.store_combs = std::round(between(1, 4));
    if (one_in(4)) look.charged_cells = static_cast<int>(between(1, 6));
    say(date, look);
  }

  Stream stream_;
  BookShape shape_;
  Date today_;
  std::vector<book::Draft> drafts_;
};

}  // namespace beegarth::reference
