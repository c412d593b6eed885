#pragma once

#include "io/picture/drawing.h"

#include <string>

namespace swale {

/// The drawing as SVG with real text, for a file or to stand inside a page: no ids, styles, scripts or links. `name` goes into
/// data-drawing of its root.
std::string svg(const Drawing& drawing, const std::string& name = {});

/// Text with what markup would take for its own made harmless; control characters become blanks.
std::string escaped(const std::string& text);

}  // namespace swale
