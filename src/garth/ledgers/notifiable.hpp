// What in an entry is a suspicion of something whose suspicion stops all movement, by tables/duty_signs.toml
// and the table of the country in which it was seen.
#pragma once

#include <array>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <vector>

#include "duty/notification.hpp"
#include "entries/entry.hpp"
#include "garth/tables/tables.hpp"

namespace beegarth::garth {

class Notifiable {
 public:
  static Expected<Notifiable> from(const Tables& tables);

  // In words; empty where there is nothing. `country` as the keeper writes it.
  std::vector<std::string> signs_in(const entries::Payload& payload, std::string_view country) const;
  // By the law of any country that there is a table of.
  std::vector<std::string> signs_in(const entries::Payload& payload) const;
  // Whether words that somebody wrote name such a thing, or what causes it, by any of those laws.
  bool names_one(std::string_view text) const;
  // Whatever such words name, whether its suspicion stops movement or not.
  std::set<duty::Subject> things_named(std::string_view text) const;

 private:
  using Things = std::set<duty::Subject>;
  friend class SignReader;

  std::map<std::string, Things, std::less<>> of_sign_;
  std::vector<std::pair<std::string, duty::Subject>> names_;  // "afb"
  std::map<std::string, Things, std::less<>> stopping_;       // by the name of the table
  Things stopping_anywhere_;
};

}  // namespace beegarth::garth
