#include "solver/strain/mode_sample.h"

#include <doctest/doctest.h>

using namespace swale;

namespace {

/// Half a belt of 2400 x 600 mm, as a grid and as the surface of another grid, a little longer.
Patch half_belt() {
    return {CubicBasis({0, 500, 900, 1600, 2400}), CubicBasis({0, 250, 600})};
}

BeltSurface whole_surface() {
    BeltSurface surface{5, 7, {}};
    for (int i = 0; i < 5; ++i)
        for (int j = 0; j < 7; ++j) {
            SurfacePoint point;
            point.x = 2410.0 * i / 4;
            point.y = 200.0 * (j - 3);
            surface.points.push_back(point);
        }
    return surface;
}

/// A cubic of even z, odd y; x and z of one parity.
Eigen::Vector3d bump(double x, double y) {
    const double s = x / 2400;
    return {0.1 * s * y / 600, 0.2 * s, -3 * s * (1 - s) * (1 - y / 1200)};
}

}  // namespace

TEST_CASE("a mode is read at the surface of another grid of the same belt, its largest motion of length 1 and upwards") {
    const Patch patch = half_belt();
    const BeltSurface surface = whole_surface();
    const BeltMode mode = sample_mode(patch, patch.interpolate(bump), Parity::symmetric, surface);
    REQUIRE(mode.motion.size() == surface.points.size());
    double largest = 0;
    for (const Eigen::Vector3d& motion : mode.motion) largest = std::max(largest, motion.norm());
    CHECK(largest == doctest::Approx(1).epsilon(1e-12));
    CHECK(mode.x == 2410.0 / 2);
    CHECK(mode.y == 0);
    const double scale = -1 / bump(1200, 0).norm();
    for (std::size_t k = 0; k < surface.points.size(); ++k) {
        const SurfacePoint& point = surface.points[k];
        if (point.y < 0) continue;
        CHECK((mode.motion[k] - scale * bump(point.x * 2400 / 2410, point.y)).norm() < 1e-12);
    }
}

TEST_CASE("the half that is not modelled moves as the parity says") {
    const Patch patch = half_belt();
    const BeltSurface surface = whole_surface();
    for (const auto& [parity, sign] : {std::pair{Parity::symmetric, 1.0}, std::pair{Parity::antisymmetric, -1.0}}) {
        const BeltMode mode = sample_mode(patch, patch.interpolate(bump), parity, surface);
        for (int i = 0; i < surface.along; ++i)
            for (int j = 0; j < 3; ++j) {
                const Eigen::Vector3d &right = mode.motion[i * 7 + j], &left = mode.motion[i * 7 + 6 - j];
                CHECK((right - sign * Eigen::Vector3d(left.x(), -left.y(), left.z())).norm() < 1e-12);
            }
    }
}
