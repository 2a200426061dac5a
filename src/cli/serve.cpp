// The page, on this machine only.
#include <csignal>
#include <iostream>
#include <thread>

#include "cli/call.hpp"
#include "garth/desk/desk.hpp"
#include "http/server.hpp"

namespace beegarth::cli {

namespace {

http::Api api_of(garth::Desk& desk) {
  return {
      .version = [&desk] { return desk.version(); },
      .book = [&desk] { return desk.book(); },
      .plan = [&desk](int days) { return desk.plan(days); },
      .plan_as = [&desk](garth::PlanForm form, int days) { return desk.plan_as(form, days); },
      .own_week = [&desk](const std::vector<work::OwnJob>& own,
                          int days) { return desk.own_week(own, days); },
      .colonies = [&desk] { return desk.colonies(); },
      .doubts = [&desk] { return desk.doubts(); },
      .outlook = [&desk](std::string_view colony) { return desk.outlook(colony); },
      .entry = [&desk](std::string_view id) { return desk.entry(id); },
      .find = [&desk](const garth::EntrySearch& search,
                      std::optional<Date> known) { return desk.entries(search, known); },
      .enter = [&desk](const garth::FilledIn& filled_in) { return desk.enter(filled_in); },
      .take_back = [&desk](std::string_view id,
                           std::string_view reason) { return desk.take_back(id, reason); },
      .kinds = [&desk] { return desk.kinds(); },
      .registers = [] { return Expected<nlohmann::json>(garth::Desk::registers()); },
      .register_shown = [&desk](std::string_view name,
                                const garth::RegisterWish& wish) { return desk.register_shown(name, wish); },
      .register_as_csv = [&desk](
                             std::string_view name,
                             const garth::RegisterWish& wish) { return desk.register_as_csv(name, wish); },
      .register_as_pdf = [&desk](
                             std::string_view name,
                             const garth::RegisterWish& wish) { return desk.register_as_pdf(name, wish); },
      .exported = [&desk](garth::BookForm form) { return desk.exported(form); },
      .lines = [&desk] { return desk.lines(); },
      .pedigree = [&desk] { return desk.pedigree(); },
      .add_photo = [&desk](const garth::PhotoWish& wish,
                           std::string_view bytes) { return desk.add_photo(wish, bytes); },
      .photo = [&desk](std::string_view id) { return desk.photo(id); },
      .checklists = [&desk] { return desk.checklists(); },
      .sheet_boxes = [&desk](const garth::KeyInWish& wish) { return desk.sheet_boxes(wish); },
      .key_in = [&desk](const garth::SheetFilledIn& filled_in) { return desk.key_in(filled_in); },
      .week_ahead = [&desk](const garth::WeekTyped& week) { return desk.week_ahead(week); },
      .maps = [] { return Expected<nlohmann::json>(garth::Desk::maps()); },
      .draft_map = [](const garth::FileToDraft& file) { return garth::Desk::draft_map(file); },
      .bring_in = [&desk](const garth::FileBroughtIn& file) { return desk.bring_in(file); },
      .transfer_ways = [&desk](std::string_view colony,
                               std::string_view into) { return desk.transfer_ways(colony, into); },
      .suppose = [&desk](std::string_view colony,
                         const garth::Supposing& supposing) { return desk.suppose(colony, supposing); },
      .check = [&desk] { return desk.check(); },
      .as_it_stood = [&desk](std::optional<Date> date) { return desk.as_it_stood(date); },
      .note = [&desk](std::string_view line, bool keep) { return desk.note(line, keep); },
      .answer = [&desk](std::string_view need, std::string_view answer,
                        std::optional<Date> until) { return desk.answer_need(need, answer, until); },
      .sheet = [&desk](Date date, std::string_view site) { return desk.sheet(date, site); },
      .calcs = [] { return Expected<nlohmann::json>(garth::Desk::calcs()); },
      .calc = [&desk](std::string_view name, std::string_view input) { return desk.calc(name, input); }};
}

// Ctrl-C and a plain kill end the serving in good order, so that the book is closed and is one file again.
class StopOnSignal {
 public:
  explicit StopOnSignal(http::Server& server) {
    sigemptyset(&signals_);
    sigaddset(&signals_, SIGINT);
    sigaddset(&signals_, SIGTERM);
    pthread_sigmask(SIG_BLOCK, &signals_, nullptr);  // for the threads to come too
    waiter_ = std::thread([this, &server] {
      int which = 0;
      sigwait(&signals_, &which);
      server.stop();
    });
  }
  StopOnSignal(const StopOnSignal&) = delete;
  StopOnSignal& operator=(const StopOnSignal&) = delete;
  ~StopOnSignal() {
    pthread_kill(waiter_.native_handle(), SIGINT);  // where the serving ended by itself
    waiter_.join();
  }

 private:
  sigset_t signals_{};
  std::thread waiter_;
};

}  // namespace

int serve_command(const Call& call) {
  const auto options = session_options(call, false);
  if (!options) return report(options.problem());
  auto session = garth::open_session(call.book, *options);
  if (!session) return report(session.problem());
  garth::Desk desk(*std::move(session));
  http::Server server(api_of(desk));
  const auto port = server.bind(call.port);
  if (!port) return report(port.problem());
  const std::string address = "http://127.0.0.1:" + std::to_string(*port) + "/";
  if (call.json) {
    std::cout << nlohmann::json{{"address", address}}.dump() << std::endl;
  } else {
    std::cout << "the page of " << call.book << ": " << address << std::endl;
  }
  StopOnSignal stop(server);
  server.run();
  return 0;
}

}  // namespace beegarth::cli
