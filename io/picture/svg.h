#pragma once

#include "io/picture/drawing.h"

#include <string>

namespace swale {

/// The drawing as SVG with real text, for a file or to stand inside a page: no ids, styles, scripts or links. `name` goes into
/// data-drawing of its root.
std::string svg(const Drawing& drawing, const std::string& name = {});

}  // namespace swale
