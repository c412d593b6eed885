#pragma once

#include <string>

namespace swale {

/// One printable page that tells how to take a survey of return rolls safely, with room for it.
std::string field_sheet();

}  // namespace swale
