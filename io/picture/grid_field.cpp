#include "io/picture/grid_field.h"

#include <algorithm>

namespace swale {

namespace {

/// The interval that holds a value, and the share of it that lies before the value.
struct Place {
    Eigen::Index interval;
    double share;
};

std::vector<Place> places(const std::vector<double>& nodes, const Eigen::VectorXd& values) {
    std::vector<Place> found;
    for (const double value : values) {
        const auto above = std::upper_bound(nodes.begin(), nodes.end(), value);
        const auto i = std::clamp<Eigen::Index>(above - nodes.begin() - 1, 0, static_cast<Eigen::Index>(nodes.size()) - 2);
        found.push_back({i, std::clamp((value - nodes[i]) / (nodes[i + 1] - nodes[i]), 0.0, 1.0)});
    }
    return found;
}

/// The middles of `count` pixels between two ends.
Eigen::VectorXd middles(int count, double from, double to) {
    return from + (Eigen::ArrayXd::LinSpaced(count, 0, count - 1) + 0.5) / count * (to - from);
}

}  // namespace

Eigen::MatrixXd GridField::on_lines(const Eigen::VectorXd& at_x, const Eigen::VectorXd& at_y) const {
    const std::vector<Place> along = places(x, at_x), across = places(y, at_y);
    Eigen::MatrixXd found(at_x.size(), at_y.size());
    for (Eigen::Index k = 0; k < found.rows(); ++k) {
        const auto [i, s] = along[k];
        for (Eigen::Index l = 0; l < found.cols(); ++l) {
            const auto [j, t] = across[l];
            found(k, l) = (1 - s) * ((1 - t) * values(i, j) + t * values(i, j + 1)) +
                          s * ((1 - t) * values(i + 1, j) + t * values(i + 1, j + 1));
        }
    }
    return found;
}

Raster painted(const GridField& field, const ChartFrame& frame, double fineness, const PixelColour& colour) {
    Raster raster{static_cast<int>(frame.plot.width() * fineness), static_cast<int>(frame.plot.height() * fineness), {}, {}};
    const Eigen::MatrixXd values =
        field.on_lines(middles(raster.width, frame.x_low, frame.x_high), middles(raster.height, frame.y_high, frame.y_low));
    raster.pixels.reserve(static_cast<std::size_t>(values.size()));
    for (int row = 0; row < raster.height; ++row)
        for (int column = 0; column < raster.width; ++column) raster.pixels.push_back(colour(values(column, row), row, column));
    return raster;
}

}  // namespace swale
