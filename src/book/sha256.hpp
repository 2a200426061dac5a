#pragma once

#include <string>
#include <string_view>

namespace beegarth::book {

std::string sha256_hex(std::string_view bytes);  // 64 small hex digits

}  // namespace beegarth::book
