#pragma once

#include "io/picture/colour.h"

#include <Eigen/Core>

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace swale {

/// A rectangle; y downwards as on a sheet.
struct Box {
    double left = 0, top = 0, right = 0, bottom = 0;

    double width() const { return right - left; }
    double height() const { return bottom - top; }
};

struct Pen {
    Colour colour = ink::text;
    double width = 1;
    std::vector<double> dashes = {};  ///< lengths of dash and gap in turn; empty: unbroken
};

/// A line through points, cut off at the borders of `inside`.
struct Stroke {
    std::vector<Eigen::Vector2d> points;
    Pen pen = {};
    std::optional<Box> inside = {};
};

/// A filled polygon.
struct Area {
    std::vector<Eigen::Vector2d> points;
    Colour fill = ink::faint;
    double opacity = 1;
    std::optional<Pen> outline = {};
    std::optional<Box> inside = {};
};

enum class Anchor { start, middle, end };

/// One line of text; `at` is on its base line. `halo`: a light border, for text on a field.
struct Words {
    Eigen::Vector2d at = Eigen::Vector2d::Zero();
    std::string text;
    double size = 12;
    Anchor anchor = Anchor::start;
    Colour colour = ink::text;
    bool bold = false;
    bool halo = false;
};

/// Pixels, row by row from the top; alpha 0 or 255.
struct Raster {
    int width = 0, height = 0;
    std::vector<Colour> pixels;
    std::vector<unsigned char> alpha;  ///< empty: all opaque
};

/// A raster spread over a rectangle.
struct Patchwork {
    Box box;
    Raster raster;
};

using Mark = std::variant<Stroke, Area, Words, Patchwork>;

/// A picture as a list of marks, painted in their order; lengths in pixels of 1/96 in. Each file format is one function on it.
struct Drawing {
    double width = 0, height = 0;
    std::string title;        ///< what a reader who can't see it is told first
    std::string description;  ///< and then
    std::vector<Mark> marks = {};

    void add(const Mark& mark);
};

/// About the width of a line of text in the drawings' sans-serif.
double words_width(const std::string& text, double size);

}  // namespace swale
