#include "io/roll_mesh.h"

#include <Eigen/Geometry>

#include <algorithm>
#include <cmath>
#include <numbers>

namespace swale {

namespace {

/// Half section of the roll from one end's flat to the other: (distance along the axis from the centre, radius).
std::vector<Eigen::Vector2d> outline(const Roll& roll, int end_segments) {
    const double rounding = std::min({roll.end_radius, roll.radius, roll.half_length});
    const Eigen::Vector2d centre(roll.half_length - rounding, roll.radius - rounding);
    std::vector<Eigen::Vector2d> points;
    for (int i = 0; i <= end_segments; ++i) {
        const double angle = std::numbers::pi / 2 * i / end_segments;  // 0 on the flat, 90 deg on the barrel
        const Eigen::Vector2d point = centre + rounding * Eigen::Vector2d(std::cos(angle), std::sin(angle));
        points.emplace_back(-point.x(), point.y());
    }
    for (int i = end_segments; i >= 0; --i) points.emplace_back(-points[i].x(), points[i].y());
    return points;
}

std::vector<int> ring(int number, int segments) {
    std::vector<int> corners;
    for (int i = 0; i < segments; ++i) corners.push_back(number * segments + i);
    return corners;
}

}  // namespace

RollMesh roll_mesh(const Roll& roll, int segments, int end_segments) {
    RollMesh mesh;
    const std::vector<Eigen::Vector2d> section = outline(roll, end_segments);
    const Eigen::Vector3d side = roll.axis.cross(roll.up);
    for (const Eigen::Vector2d& point : section)
        for (int i = 0; i < segments; ++i) {
            const double angle = 2 * std::numbers::pi * i / segments;
            const Eigen::Vector3d outward = std::cos(angle) * roll.up + std::sin(angle) * side;
            mesh.points.push_back(roll.centre + point.x() * roll.axis + point.y() * outward);
        }
    const int last = static_cast<int>(section.size()) - 1;
    for (int j = 0; j < last; ++j)
        for (int i = 0; i < segments; ++i) {
            const int here = j * segments + i, beside = j * segments + (i + 1) % segments;
            mesh.cells.push_back({here, beside, beside + segments, here + segments});
        }
    std::vector<int> flat = ring(0, segments);
    std::reverse(flat.begin(), flat.end());
    mesh.cells.push_back(flat);
    mesh.cells.push_back(ring(last, segments));
    return mesh;
}

}  // namespace swale
