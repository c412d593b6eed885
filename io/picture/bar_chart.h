#pragma once

#include "io/picture/drawing.h"

#include <string>
#include <vector>

namespace swale {

struct Bar {
    std::string name;
    double value = 0;
    std::string text;  ///< at its end
};

/// Lengths below each other with a line that they are held against.
struct BarChart {
    std::string title, x_label, x_unit;
    std::vector<Bar> bars;
    double mark = 0;
    std::string mark_label;
};

Drawing draw(const BarChart& chart);

}  // namespace swale
