// CSV after RFC 4180, as all commands write it.
#pragma once

#include <string_view>

namespace bolthole {

inline constexpr std::string_view kLineEnd = "\r\n";

}  // namespace bolthole
