#include "mesh/patch.h"

#include <doctest/doctest.h>

using namespace swale;

namespace {

const Patch patch{CubicBasis({0, 10, 14, 40}), CubicBasis({-8, -3, 0, 12})};

/// Control points without any order in them.
ControlPoints crumpled() {
    ControlPoints points = patch.follow([](double x, double y) { return Eigen::Vector3d(x, y, 0); });
    for (int k = 0; k < points.cols(); ++k)
        points.col(k) += Eigen::Vector3d(std::sin(3.1 * k), std::sin(7.7 * k), std::cos(5.3 * k));
    return points;
}

Eigen::Vector3d position(const ControlPoints& points, double x, double y) {
    return patch.jet(points, x, y).position;
}

}  // namespace

TEST_CASE("patch: a linear surface is followed exactly") {
    const auto plane = [](double x, double y) { return Eigen::Vector3d(1 + 2 * x - y, 0.5 * y, x + 3 * y); };
    const ControlPoints points = patch.follow(plane);
    for (const double x : {0.0, 7.0, 14.0, 33.0, 40.0})
        for (const double y : {-8.0, -0.5, 12.0}) {
            const SurfaceJet jet = patch.jet(points, x, y);
            CHECK((jet.position - plane(x, y)).norm() < 1e-12);
            CHECK((jet.along - Eigen::Vector3d(2, 0, 1)).norm() < 1e-12);
            CHECK((jet.across - Eigen::Vector3d(-1, 0.5, 3)).norm() < 1e-12);
            CHECK(jet.along2.norm() + jet.across2.norm() + jet.mixed.norm() < 1e-11);
        }
}

TEST_CASE("patch: the jet holds the derivatives of the position") {
    const ControlPoints points = crumpled();
    const double h = 1e-4, x = 12.3, y = -1.7;
    const SurfaceJet jet = patch.jet(points, x, y);
    const Eigen::Vector3d east = position(points, x + h, y), west = position(points, x - h, y);
    const Eigen::Vector3d north = position(points, x, y + h), south = position(points, x, y - h);
    const Eigen::Vector3d corners = position(points, x + h, y + h) - position(points, x + h, y - h) -
                                    position(points, x - h, y + h) + position(points, x - h, y - h);
    CHECK((jet.along - (east - west) / (2 * h)).norm() < 1e-8);
    CHECK((jet.across - (north - south) / (2 * h)).norm() < 1e-8);
    CHECK((jet.along2 - (east - 2 * jet.position + west) / (h * h)).norm() < 1e-6);
    CHECK((jet.across2 - (north - 2 * jet.position + south) / (h * h)).norm() < 1e-6);
    CHECK((jet.mixed - corners / (4 * h * h)).norm() < 1e-6);
}

TEST_CASE("patch: a refined patch is the same surface") {
    const Patch fine{patch.along.halved(), CubicBasis({-8, -7, -3, 0, 4, 5, 12})};
    const ControlPoints points = crumpled(), finer = patch.refine(points, fine);
    REQUIRE(finer.cols() == fine.points());
    for (const double x : {0.0, 3.0, 11.0, 25.0, 40.0})
        for (const double y : {-8.0, -2.0, 4.5, 12.0}) {
            const SurfaceJet coarse_jet = patch.jet(points, x, y), fine_jet = fine.jet(finer, x, y);
            CHECK((coarse_jet.position - fine_jet.position).norm() < 1e-12);
            CHECK((coarse_jet.mixed - fine_jet.mixed).norm() < 1e-12);
        }
}

TEST_CASE("patch: a span touches the sixteen control points that its basis reaches") {
    const SpanNodes nodes = patch.nodes(2, 1);
    CHECK(nodes[0] == patch.index(2, 1));
    CHECK(nodes[7] == patch.index(3, 4));
    CHECK(nodes[15] == patch.index(5, 4));
}
