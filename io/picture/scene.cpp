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

/// A facet in the picture plane.
struct Flat {
    Eigen::Vector3d a, b, c;

    double area() const { return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x()); }
    /// Shares of its corners in a place; none is below zero inside.
    Eigen::Vector3d shares(double x, double y) const {
        const double v = ((x - a.x()) * (c.y() - a.y()) - (y - a.y()) * (c.x() - a.x())) / area();
        const double w = ((b.x() - a.x()) * (y - a.y()) - (b.y() - a.y()) * (x - a.x())) / area();
        return {1 - v - w, v, w};
    }
};

/// Columns of a row whose middles lie inside: the shares are linear along it.
std::array<int, 2> columns_inside(const Flat& flat, double y, int width) {
    const Eigen::Vector3d first = flat.shares(0.5, y), step = flat.shares(1.5, y) - first;
    double from = 0, to = width - 1;
    for (int i = 0; i < 3; ++i) {
        if (step[i] > 0) from = std::max(from, std::ceil(-first[i] / step[i] - 1e-9));
        if (step[i] < 0) to = std::min(to, std::floor(first[i] / -step[i] + 1e-9));
        if (step[i] == 0 && first[i] < 0) to = -1;
    }
    return {static_cast<int>(std::min<double>(from, width)), static_cast<int>(to)};
}

void fill(const Facet3& facet, const Scene& scene, const View& view, Buffer& buffer) {
    const Flat flat{view(facet.corners[0]), view(facet.corners[1]), view(facet.corners[2])};
    if (std::abs(flat.area()) < 1e-9) return;
    const double light = light_on(facet, view);
    const Eigen::Vector3d values(facet.values.data()), depths(flat.a.z(), flat.b.z(), flat.c.z());
    const auto [top, bottom] = std::minmax({flat.a.y(), flat.b.y(), flat.c.y()});
    for (int row = std::max(0, static_cast<int>(top)); row <= std::min(buffer.height - 1, static_cast<int>(bottom)); ++row) {
        const auto [from, to] = columns_inside(flat, row + 0.5, buffer.width);
        for (int column = from; column <= to; ++column) {
            const Eigen::Vector3d shares = flat.shares(column + 0.5, row + 0.5);
            const size_t pixel = static_cast<size_t>(row) * buffer.width + column;
            if (shares.dot(depths) <= buffer.depth[pixel]) continue;
            buffer.depth[pixel] = shares.dot(depths);
            buffer.colours[pixel] = shaded(facet.by_value ? scene.scale.at(shares.dot(values)) : facet.colour, light);
        }
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
