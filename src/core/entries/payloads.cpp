#include "entries/payloads.hpp"

namespace beegarth::entries {

Payload::Payload() = default;
Payload::Payload(const Payload&) = default;
Payload::Payload(Payload&&) noexcept = default;
Payload& Payload::operator=(const Payload&) = default;
Payload& Payload::operator=(Payload&&) noexcept = default;
Payload::~Payload() = default;

}  // namespace beegarth::entries
