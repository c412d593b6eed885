#pragma once

#include <cstddef>
#include <string_view>

namespace swale {

/// Offset of the first byte that is not part of well-formed UTF-8 (RFC 3629); the size of the text if there is none.
std::size_t first_invalid_utf8(std::string_view text);

}  // namespace swale
