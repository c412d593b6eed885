#pragma once

#include "io/picture/drawing.h"

#include <string>

namespace swale {

/// The bytes of a PNG file. Throws std::runtime_error if it can't be made.
std::string png(const Raster& raster);

/// The drawing on white, `scale` pixels of the file a pixel of the drawing. Throws as above.
std::string png(const Drawing& drawing, double scale = 2);

/// The same as a page of its own size, made at a time (UTC, "2026-01-02T03:04:05Z").
std::string pdf(const Drawing& drawing, const std::string& created);

}  // namespace swale
