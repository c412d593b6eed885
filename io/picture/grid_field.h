#pragma once

#include "io/picture/colour.h"
#include "io/picture/line_chart.h"

#include <Eigen/Core>

#include <functional>
#include <vector>

namespace swale {

/// Values at the crossings of lines x = x[i] and y = y[j]: values(i, j).
struct GridField {
    std::vector<double> x, y;
    Eigen::MatrixXd values;

    /// At the crossings of other lines: bilinear in between, the border's value beyond.
    Eigen::MatrixXd on_lines(const Eigen::VectorXd& at_x, const Eigen::VectorXd& at_y) const;
};

using PixelColour = std::function<Colour(double value, int row, int column)>;

/// The field over a chart's plot, `fineness` pixels to one of the chart's.
Raster painted(const GridField& field, const ChartFrame& frame, double fineness, const PixelColour& colour);

}  // namespace swale
