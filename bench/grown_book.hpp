// A book as it stands after years: invented sites, hives and colonies, looked at, weighed and counted week by
// week, with queens, losses, corrections and things taken back. Drawn from a seed, the same every time.
#pragma once

#include <string>
#include <vector>

#include "base/random.hpp"
#include "book/book.hpp"

namespace beegarth::bench {

struct Growth {
  int sites = 6;
  int colonies = 40;  // living at any time
  int years = 10;
  int looks = 20;   // at each colony in a year, half of them inspections
  int weights = 0;  // of each colony in a year, beside the looks
  bool weather = true;
};

// Calls `keep` with the drafts of one day after another, oldest first. Corrections name entries of `keep`'s
// earlier answers.
class GrownBook {
 public:
  using Entries = std::vector<entries::Entry>;

  explicit GrownBook(const Growth& growth)
      : growth_(growth), random_({.seed = 7, .purpose = Purpose::synthetic_truth}) {}

  template <class Keep>
  void tell(const Keep& keep) {
    const Date first = *Date::from_ymd(2016, 1, 1);
    begin_all();
    told(keep, first);
    const int days = growth_.years * 365;
    for (int day = 1; day < days; ++day) {
      one_day(first + day, day % 365);
      if (drafts_.size() > 2000 || day + 1 == days) told(keep, first + day);
    }
  }

 private:
  bool one_in(double n) { return random_.uniform() * n < 1; }
  double between(double low, double high) { return low + (high - low) * random_.uniform(); }
  void say(Date day, entries::Payload payload) {
    drafts_.push_back({.happened = day, .payload = std::move(payload)});
  }
  std::string name_of(int colony) const {
    return "Stock " + std::to_string(colony) + " of year " + std::to_string(generation_[at(colony)]);
  }
  ColonyId colony_id(int colony) const {
    return ColonyId("stock-" + std::to_string(colony) + "-" + std::to_string(generation_[at(colony)]));
  }
  static HiveId hive_id(int hive) { return HiveId("hive-" + std::to_string(hive)); }
  static std::size_t at(int index) { return static_cast<std::size_t>(index); }

  void begin_all() {
    const Date day = *Date::from_ymd(2016, 1, 1);
    generation_.assign(at(growth_.colonies), 0);
    for (int site = 0; site < growth_.sites; ++site)
      say(day, entries::Site{.site = SiteId("site-" + std::to_string(site)),
                             .name = "Invented Field " + std::to_string(site),
                             .latitude_deg = 52.0 + 0.01 * site,
                             .longitude_deg = -1.5});
    for (int hive = 0; hive < growth_.colonies; ++hive) {
      say(day, entries::Hive{.hive = hive_id(hive),
                             .name = "Hive " + std::to_string(hive),
                             .site = SiteId("site-" + std::to_string(hive % growth_.sites)),
                             .type = "invented"});
      begin(hive, day);
    }
  }
  void begin(int colony, Date day) {
    say(day, entries::ColonyBegan{.colony = colony_id(colony),
                                  .name = name_of(colony),
                                  .hive = hive_id(colony),
                                  .how = entries::Beginning::split,
                                  .queen_year = day.year()});
  }

  void one_day(Date day, int day_of_year) {
    if (growth_.weather)
      say(day, entries::Weather{.site = SiteId("all"),
                                .temperature_min_C = between(2, 10),
                                .temperature_max_C = between(10, 22),
                                .rain_mm = one_in(2) ? 0 : between(0, 12),
                                .wind_m_s = between(1, 9)});
    for (int colony = 0; colony < growth_.colonies; ++colony) {
      if (!kept_.empty() && one_in(100 * 365.0 / std::max(1, growth_.looks))) mend(day);
      if (one_in(365.0 / std::max(1, growth_.looks))) look(colony, day, day_of_year);
      if (growth_.weights > 0 && one_in(365.0 / growth_.weights))
        say(day, entries::Weight{.colony = colony_id(colony), .kg = between(15, 60)});
      if (one_in(1200)) renew(colony, day);
    }
  }
  void look(int colony, Date day, int day_of_year) {
    const int what = static_cast<int>(between(0, 10));
    if (what < 5)
      say(day, entries::Inspection{
                   .colony = colony_id(colony),
                   .seams = between(2, 12),
                   .brood_combs = between(0, 9),
                   .eggs = day_of_year < 260,
                   .store_combs = between(0, 6),
                   .remark = one_in(3) ? entries::Text("calm on the comb, heather in") : entries::Text()});
    else if (what < 7)
      say(day, entries::MiteCount{.colony = colony_id(colony),
                                  .method = entries::MiteMethod::wash,
                                  .mites = static_cast<int>(between(0, 12)),
                                  .bees = 300});
    else if (what < 9)
      say(day, entries::Weight{.colony = colony_id(colony), .kg = between(15, 60)});
    else
      say(day,
          entries::Note{
              .text = "entrance turned to the south, wasps about", .colony = colony_id(colony), .site = {}});
  }
  void renew(int colony, Date day) {
    say(day, entries::ColonyEnded{.colony = colony_id(colony), .how = entries::Ending::died});
    ++generation_[at(colony)];
    begin(colony, day);
  }
  void mend(Date day) {
    const entries::Entry& wrong = kept_[at(static_cast<int>(between(0, static_cast<double>(kept_.size()))))];
    if (one_in(2))
      say(day, entries::Removed{.entry = wrong.id, .reason = "entered by mistake"});
    else
      drafts_.push_back({.happened = wrong.happened, .payload = wrong.payload, .supersedes = wrong.id});
  }

  template <class Keep>
  void told(const Keep& keep, Date) {
    for (entries::Entry& entry : keep(drafts_)) {
      if (kept_.size() < 500 || one_in(50)) kept_.push_back(std::move(entry));
      if (kept_.size() > 1000) kept_.erase(kept_.begin(), kept_.begin() + 500);
    }
    drafts_.clear();
  }

  Growth growth_;
  Stream random_;
  std::vector<int> generation_;
  std::vector<book::Draft> drafts_;
  Entries kept_;
};

}  // namespace beegarth::bench
