// How an answer or a problem becomes a reply. Private to the room.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "http/respond.hpp"

namespace beegarth::http {

// `status_of_bad_input` is 404 where the path names the thing that may not be there.
Reply json_reply(const Expected<Json>& answer, std::optional<int> status_of_bad_input = {});
Reply bytes_reply(Expected<std::string> answer, std::string_view content_type,
                  std::optional<int> status_of_bad_input = {});
// The reply as a file: "attachment; filename=..." or "inline; ...". Left as it is where it is a refusal.
Reply named_file(Reply reply, const std::string& disposition);
Reply fault_reply(const Problem& problem);  // a bug
Reply not_allowed(std::string_view allowed);

}  // namespace beegarth::http
