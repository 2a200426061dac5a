#include "garth/sheet/sheet.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "draw/draw.hpp"
#include "garth/plan/plan_json.hpp"
#include "garth/plan/plan_text.hpp"
#include "garth/sheet/sheet_boxes.hpp"
#include "garth/sheet/sheet_frames.hpp"
#include "work/words.hpp"

namespace beegarth::garth {

namespace {

using scene::Block;
using scene::Style;

constexpr Style plain{11, false, scene::black, scene::Align::left};
constexpr Style small{9.5, false, scene::black, scene::Align::left};
constexpr double box_height_mm = 9.5;
constexpr double label_mm = 17;

class SheetMaker {
 public:
  SheetMaker(const work::Visit& visit, const SheetFacts& facts)
      : visit_(visit), facts_(facts), pages_(facts.paper, 14), width_(pages_.width_mm()) {}

  scene::Document make() && {
    pages_.place(heading());
    pages_.place(scene::gap(3));
    pages_.place(help());
    pages_.place(scene::gap(4));
    for (const std::string& call : facts_.calls_first) {
      pages_.place(
          text("Before you go: " + call + ".", width_, {12.5, true, scene::black, scene::Align::left}));
      pages_.place(scene::gap(3));
    }
    place_take();
    place_shared_cautions();
    int number = 0;
    for (const SheetFrame& frame : frames_of(visit_)) place_group(frame.needs, number);
    pages_.place(closing());
    scene::Document document{facts_.site.name + ", " + visit_.date.iso(), visit_.date,
                             std::move(pages_).finished()};
    number_pages(document);
    return document;
  }

 private:
  Block text(const std::string& words, double width, const Style& style) const {
    return scene::paragraph(words, width, style, draw::text_height_mm);
  }
  Block labelled(const std::string& label, const std::string& words, double width) const {
    return scene::labelled(label, words, label_mm, width, small, draw::text_height_mm);
  }

  Block heading() const {
    Style title{24, true, scene::black, scene::Align::left};
    Block name = text(facts_.site.name, width_ - 62, title);
    const scene::Text date{{width_ - 60, 1.5},
                           work::day_text(visit_.date) + fmt::format(" {}", visit_.date.year()),
                           13,
                           true,
                           60,
                           scene::Align::right,
                           scene::black};
    const scene::Text hours{{width_ - 60, 8},
                            clock_text(visit_.start_hour) + "\u2013" + clock_text(visit_.end_hour),
                            13,
                            false,
                            60,
                            scene::Align::right,
                            scene::black};
    name.items.emplace_back(date);
    name.items.emplace_back(hours);
    name.height_mm = std::max(name.height_mm, 15.0);
    std::string day = visit_.weather.empty() ? "" : visit_.weather + "  \u00b7  ";
    if (opens_a_hive(visit_))
      day += fmt::format("fit for opening {:.0f} %  \u00b7  ", visit_.opening_odds * 100);
    day += fmt::format("{:.0f} min on the way", visit_.travel_minutes);
    Block all = scene::stacked({name, text(day, width_, plain)});
    if (visit_.if_lost)
      all = scene::stacked(
          {all, scene::gap(1), text("If this day is lost: " + *visit_.if_lost + ".", width_, small)});
    return all;
  }

  // For whoever has to be led here by telephone.
  Block help() const {
    const std::string reference = facts_.site.grid_reference.empty()
                                      ? "grid reference not written down: note it here  ____________________"
                                      : "grid reference " + facts_.site.grid_reference;
    std::vector<Block> lines{text("Emergency: " + facts_.emergency_number + "   \u00b7   " + reference,
                                  width_ - 6, {14, true, scene::black, scene::Align::left})};
    if (!facts_.site.access.empty())
      lines.push_back(text("Way in: " + facts_.site.access, width_ - 6, plain));
    lines.push_back(
        text("Tell someone where you are and when you will be back. Trouble breathing, faintness or swelling "
             "away from the "
             "sting: call at once.",
             width_ - 6, small));
    return scene::framed(scene::stacked(lines), width_, 3,
                         {.border = scene::Pen{0.8, scene::black, false}, .corner_mm = 2});
  }

  void place_take() {
    std::vector<std::string> all;
    for (const auto& job : visit_.jobs) all.insert(all.end(), job.need.take.begin(), job.need.take.end());
    const std::vector<std::string> take = work::packed(all);
    if (take.empty()) return;
    pages_.place(
        scene::stacked({text("Take", width_, {14, true, scene::black, scene::Align::left}), scene::gap(1.5),
                        scene::tick_list(take, 2, width_, plain, draw::text_height_mm)}));
    pages_.place(scene::gap(3));
  }

  // What holds at several hives is said once, before them.
  bool is_told_above(const std::string& caution) const {
    return std::count_if(visit_.jobs.begin(), visit_.jobs.end(), [&](const work::PlannedJob& job) {
             const auto& all = job.need.cautions;
             return std::find(all.begin(), all.end(), caution) != all.end();
           }) > 1;
  }

  void place_shared_cautions() {
    std::vector<std::string> told;
    for (const auto& job : visit_.jobs)
      for (const auto& caution : job.need.cautions) {
        if (!is_told_above(caution) || std::find(told.begin(), told.end(), caution) != told.end()) continue;
        told.push_back(caution);
        pages_.place(labelled("Care", caution, width_));
      }
    if (!told.empty()) pages_.place(scene::gap(3));
  }

  using Group = std::vector<const facts::Need*>;

  // Where the jobs of a colony do not go on one page together, each stands by itself.
  void place_group(const Group& group, int& number) {
    const Block block = group_block(group, number);
    if (block.height_mm > pages_.height_mm() && group.size() > 1) {
      for (const facts::Need* need : group) place_group({need}, number);
      return;
    }
    pages_.place(block);
    pages_.place(scene::gap(4));
    number += static_cast<int>(group.size());
  }

  // What is read at the hive: the first reasons, without what only tables say.
  static std::vector<std::string> told_reasons(const facts::Need& need) {
    constexpr std::size_t most = 2;
    std::vector<std::string> told;
    for (const auto& reason : need.why)
      if (told.size() < most && !reason.assumed)
        told.push_back(human_dates(reason.text, need.earliest.year()));
    return told;
  }

  Block group_block(const Group& group, int number_before) const {
    constexpr double padding = 3.5;
    const double inside = width_ - 2 * padding;
    const facts::Need& first = *group.front();
    std::vector<Block> parts{colony_title(group, inside)};
    std::vector<std::string> cares;
    int number = number_before;
    int minutes = 0;
    for (const facts::Need* need : group) {
      parts.push_back(scene::gap(1.5));
      add_job(*need, ++number, inside, parts);
      minutes += need->minutes;
      for (const auto& caution : need->cautions)
        if (!is_told_above(caution) && std::find(cares.begin(), cares.end(), caution) == cares.end())
          cares.push_back(caution);
    }
    for (const auto& caution : cares) parts.push_back(labelled("Care", caution, inside));
    if (first.last_in_round)
      parts.push_back(labelled("Order", "last of the round; no other colony after it today", inside));
    if (minutes > 0) parts.push_back(to_write_in(group, inside));
    const scene::Rectangle look{
        .border = scene::Pen{first.last_in_round ? 1.0 : 0.4, scene::black, minutes <= 0}, .corner_mm = 2};
    return scene::framed(scene::stacked(parts), width_, padding, look);
  }

  void add_job(const facts::Need& need, int number, double inside, std::vector<Block>& parts) const {
    parts.push_back(text(fmt::format("{}  {}", number, need.what), inside,
                         {12.5, false, scene::black, scene::Align::left}));
    std::string told;
    for (const auto& odds : need.odds)
      told += fmt::format("{}{} by {}: {}", told.empty() ? "" : "; ", odds.event, work::day_text(odds.by),
                          odds_text(odds.odds));
    if (!told.empty()) parts.push_back(labelled("Odds", told, inside));
    for (const auto& reason : told_reasons(need)) parts.push_back(labelled("Why", reason, inside));
  }

  Block colony_title(const Group& group, double inside) const {
    constexpr double minutes_mm = 22;
    const facts::Need& first = *group.front();
    int minutes = 0;
    for (const facts::Need* need : group) minutes += need->minutes;
    const std::string who = first.colony ? facts_.names.of(*first.colony) : facts_.site.name;
    Block title = text(who, inside - minutes_mm, {16, true, scene::black, scene::Align::left});
    if (minutes > 0)
      title.items.emplace_back(scene::Text{{inside - minutes_mm, 1},
                                           fmt::format("{} min", minutes),
                                           12,
                                           false,
                                           minutes_mm,
                                           scene::Align::right,
                                           scene::black});
    return title;
  }

  Block to_write_in(const Group& group, double inside) const {
    const auto& colony = group.front()->colony;
    const auto dwelling = colony ? facts_.dwellings.find(*colony) : facts_.dwellings.end();
    auto sets = sets_of(group, dwelling == facts_.dwellings.end() ? nullptr : &dwelling->second);
    sets.push_back(closing_set());
    std::vector<Block> rows{scene::gap(2)};
    for (const BoxSet& set : sets)
      for (const auto& row : set.rows) {
        rows.push_back(scene::write_ins(printed_boxes(row), inside, box_height_mm));
        rows.push_back(scene::gap(1.2));
      }
    rows.pop_back();
    return scene::stacked(rows);
  }

  Block closing() const {
    return labelled("Always",
                    "veil and water at hand; smoker lit only where dry grass cannot catch; knees bent, loads "
                    "over 20 kg shared or "
                    "moved comb by comb; entrances as they were when you leave. Labels, local codes and the "
                    "bee inspector "
                    "come before this sheet.",
                    width_);
  }

  void number_pages(scene::Document& document) const {
    const std::size_t count = document.pages.size();
    for (std::size_t i = 0; i < count; ++i) {
      scene::Page& page = document.pages[i];
      page.items.emplace_back(scene::Text{
          {page.width_mm - 14 - 100, page.height_mm - 10},
          fmt::format("{}, {}  \u00b7  sheet {} of {}", facts_.site.name, visit_.date.iso(), i + 1, count),
          8.5,
          false,
          100,
          scene::Align::right,
          scene::grey});
    }
  }

  const work::Visit& visit_;
  const SheetFacts& facts_;
  scene::Pages pages_;
  double width_;
};

}  // namespace

scene::Document sheet(const work::Visit& visit, const SheetFacts& facts) {
  return SheetMaker(visit, facts).make();
}

}  // namespace beegarth::garth
