#include "io/picture/scene.h"

#include "io/picture/axes.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

constexpr int fineness = 2;  // pixels of the depth buffer to one of the picture, each way

/// From space to the picture plane: x to the right, y down, z towards the eye.
struct View {
    Eigen::Matrix3d turned;
    Eigen::Vector2d shift = Eigen::Vector2d::Zero();
    double scale = 1;

    Eigen::Vector3d operator()(const Eigen::Vector3d& point) const {
        Eigen::Vector3d seen = scale * (turned * point);
        seen.head<2>() += shift;
        return seen;
    }
};

Eigen::Matrix3d turned(const Scene& scene) {
    const Eigen::Vector3d eye(-std::sin(scene.turn) * std::cos(scene.rise), -std::cos(scene.turn) * std::cos(scene.rise),
                              std::sin(scene.rise));
    const Eigen::Vector3d right = eye.cross(Eigen::Vector3d::UnitZ()).normalized() * -1;
    Eigen::Matrix3d rows;
    rows << right.transpose(), -eye.cross(right).transpose(), eye.transpose();
    return rows;
}

struct Extent {
    Eigen::Vector2d low = Eigen::Vector2d::Constant(INFINITY), high = Eigen::Vector2d::Constant(-INFINITY);
};

Extent extent(const Scene& scene, const View& view) {
    Extent found;
    for (const Facet3& facet : scene.facets)
        for (const Eigen::Vector3d& corner : facet.corners) {
            const Eigen::Vector2d at = view(corner).head<2>();
            found.low = found.low.cwiseMin(at);
            found.high = found.high.cwiseMax(at);
        }
    return found;
}

/// Colours with the depth of what is seen at each pixel.
struct Buffer {
    int width, height;
    std::vector<double> depth;
    std::vector<Colour> colours;

    Buffer(int wide, int high)
        : width(wide), height(high), depth(static_cast<size_t>(wide) * high, -INFINITY), colours(depth.size()) {}
};

Colour shaded(Colour colour, double light) {
    const auto dim = [&](unsigned char part) { return static_cast<unsigned char>(std::lround(std::min(255.0, part * light))); };
    return {dim(colour.red), dim(colour.green), dim(colour.blue)};
}

/// Light from the eye's upper left, the same on both faces.
double light_on(const Facet3& facet, const View& view) {
    const Eigen::Vector3d normal =
        (facet.corners[1] - facet.corners[0]).cross(facet.corners[2] - facet.corners[0]).normalized();
    static const Eigen::Vector3d light = Eigen::Vector3d(-0.35, -0.5, 0.8).normalized();
    return 0.62 + 0.4 * std::abs((view.turned * normal).dot(light));
}

void fill(const Facet3& facet, const Scene& scene, const View& view, Buffer& buffer) {
    const Eigen::Vector3d a = view(facet.corners[0]), b = view(facet.corners[1]), c = view(facet.corners[2]);
    const double area = (b - a).head<2>().x() * (c - a).y() - (b - a).y() * (c - a).x();
    if (std::abs(area) < 1e-9) return;
    const double light = light_on(facet, view);
    const auto [left, right] = std::minmax({a.x(), b.x(), c.x()});
    const auto [top, bottom] = std::minmax({a.y(), b.y(), c.y()});
    for (int row = std::max(0, static_cast<int>(top)); row <= std::min(buffer.height - 1, static_cast<int>(bottom)); ++row)
        for (int column = std::max(0, static_cast<int>(left)); column <= std::min(buffer.width - 1, static_cast<int>(right));
             ++column) {
            const Eigen::Vector2d at(column + 0.5, row + 0.5);
            const double v = ((at - a.head<2>()).x() * (c - a).y() - (at - a.head<2>()).y() * (c - a).x()) / area;
            const double w = ((b - a).x() * (at - a.head<2>()).y() - (b - a).y() * (at - a.head<2>()).x()) / area;
            const double u = 1 - v - w;
            if (u < -1e-9 || v < -1e-9 || w < -1e-9) continue;
            const double depth = u * a.z() + v * b.z() + w * c.z();
            const size_t pixel = static_cast<size_t>(row) * buffer.width + column;
            if (depth <= buffer.depth[pixel]) continue;
            buffer.depth[pixel] = depth;
            const double value = u * facet.values[0] + v * facet.values[1] + w * facet.values[2];
            buffer.colours[pixel] = shaded(facet.by_value ? scene.scale.at(value) : facet.colour, light);
        }
}

/// Mean of each block of the buffer, clear where nothing is.
Raster smoothed(const Buffer& buffer) {
    Raster raster{buffer.width / fineness, buffer.height / fineness, {}, {}};
    for (int row = 0; row < raster.height; ++row)
        for (int column = 0; column < raster.width; ++column) {
            std::array<int, 3> sum{};
            bool covered = false;
            for (int k = 0; k < fineness * fineness; ++k) {
                const size_t pixel =
                    static_cast<size_t>(row * fineness + k / fineness) * buffer.width + column * fineness + k % fineness;
                const Colour colour = std::isfinite(buffer.depth[pixel]) ? buffer.colours[pixel] : ink::paper;
                covered = covered || std::isfinite(buffer.depth[pixel]);
                sum[0] += colour.red, sum[1] += colour.green, sum[2] += colour.blue;
            }
            const auto mean = [&](int part) { return static_cast<unsigned char>(sum[part] / (fineness * fineness)); };
            raster.pixels.push_back({mean(0), mean(1), mean(2)});
            raster.alpha.push_back(covered ? 255 : 0);
        }
    return raster;
}

View fitted(const Scene& scene, double width, double& height) {
    View view{turned(scene)};
    const Extent bare = extent(scene, view);
    view.scale = width / (bare.high.x() - bare.low.x());
    view.shift = -view.scale * bare.low;
    height = view.scale * (bare.high.y() - bare.low.y());
    return view;
}

}  // namespace

Drawing draw(const Scene& scene, const std::string& title, double width) {
    constexpr double above = 40;
    double height = 0;
    const View view = fitted(scene, width, height);
    View fine = view;
    fine.scale *= fineness;
    fine.shift *= fineness;
    Buffer buffer(static_cast<int>(width) * fineness, static_cast<int>(height) * fineness);
    for (const Facet3& facet : scene.facets) fill(facet, scene, fine, buffer);
    Drawing drawing{width, height + above, title, {}};
    drawing.add(Patchwork{{0, above, width, above + height}, smoothed(buffer)});
    for (const PlaceName& name : scene.names) {
        const Eigen::Vector2d at = view(name.at).head<2>() + Eigen::Vector2d(0, above);
        const double half = words_width(name.text, small_size) / 2, middle = std::clamp(at.x(), half + 2, width - half - 2);
        const double top = std::max(14.0, at.y() - 34);
        drawing.add(Stroke{{{at.x(), at.y()}, {at.x(), top + 4}}, {ink::quiet, 0.8}});
        drawing.add(Words{{middle, top}, name.text, small_size, Anchor::middle, ink::text, false, true});
    }
    return drawing;
}

}  // namespace swale
