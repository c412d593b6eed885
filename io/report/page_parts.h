#pragma once

#include "io/picture/colour.h"

#include <string_view>

/// What io/report/page/bundle.mjs makes while the program is built.
namespace swale::page_parts {

extern const std::string_view script, style;            ///< of the page, bundled
extern const std::string_view script_hash, style_hash;  ///< 'sha256-...', as a content policy names them
extern const std::string_view licences;                 ///< of the packages inside the script, verbatim
extern const ColourTable sequential, diverging;

}  // namespace swale::page_parts
