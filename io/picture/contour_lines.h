#pragma once

#include <Eigen/Core>

#include <vector>

namespace swale {

/// Values at the crossings of lines x = x[i] and y = y[j]: values(i, j).
struct GridField {
    std::vector<double> x, y;
    Eigen::MatrixXd values;

    /// Bilinear in between, the border's value beyond.
    double at(double at_x, double at_y) const;
};

/// The lines on which the field has that value, each as long as it goes.
std::vector<std::vector<Eigen::Vector2d>> contour_lines(const GridField& field, double value);

}  // namespace swale
