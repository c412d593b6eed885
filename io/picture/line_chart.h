#pragma once

#include "io/picture/drawing.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// One line of a chart, in the units of its axes.
struct Series {
    std::string name;
    std::vector<double> x, y;
    std::optional<int> look = {};  ///< 0, 1, 2 ...: colour and dashes; by default its place in the chart
};

/// A level that the lines are held against, over a part of the x axis.
struct Level {
    std::string label;
    double value = 0, from = 0, to = 0;
    bool limit = false;  ///< or else what another method says
};

/// A place on the x axis, such as a set.
struct Upright {
    std::string label;
    double at = 0;
};

/// A part of the x axis that a word is said of, such as a roll, or what is left out of a reading.
struct Stretch {
    std::string label;
    double from = 0, to = 0;
};

struct LineChart {
    std::string title;
    std::string x_label, x_unit, y_label, y_unit;
    std::vector<Series> series;
    std::vector<Level> levels = {};
    std::vector<Upright> uprights = {};
    std::vector<Stretch> stretches = {};
    std::optional<double> y_low = {}, y_high = {};  ///< absent: as the lines need
    double width = 860, height = 360;
};

/// Where the axes lie on the sheet and what they span, so that a page finds a value under the pointer.
struct ChartFrame {
    Box plot;
    double x_low = 0, x_high = 1, y_low = 0, y_high = 1;

    double x(double value) const { return plot.left + (value - x_low) / (x_high - x_low) * plot.width(); }
    double y(double value) const { return plot.bottom - (value - y_low) / (y_high - y_low) * plot.height(); }
};

ChartFrame frame_of(const LineChart& chart);

/// Lines labelled at their ends, told apart in grey by their dashes; units on both axes.
Drawing draw(const LineChart& chart);

}  // namespace swale
