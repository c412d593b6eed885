#include "solver/stability/lowest_modes.h"

#include "solver/equilibrium/dead_load.h"
#include "solver/shell/shell_energy.h"

#include <doctest/doctest.h>

#include <Eigen/Eigenvalues>

#include <limits>
#include <memory>

using namespace swale;

namespace {

// A small sheet held along one edge, pulled or pressed at the other.
System sheet(const Patch& patch, double pull) {
    Section section;
    section.membrane = orthotropic(1000, 800, 200, 300);
    section.bending = orthotropic(900, 500, 100, 200);
    Supports supports(patch.points());
    for (int i : {0, 1})
        for (int j = 0; j < patch.across.size(); ++j)
            for (int c = 0; c < 3; ++c)
                supports.fix({patch.index(i, j), c}, c == 2   ? 0
                                                     : c == 0 ? patch.along.greville()[i]
                                                              : patch.across.greville()[j]);
    supports.close();
    System system(patch, std::move(supports));
    system.add(std::make_shared<ShellEnergy>(patch, section));
    ControlPoints forces = ControlPoints::Zero(3, patch.points());
    for (int j = 0; j < patch.across.size(); ++j) forces(0, patch.index(patch.along.size() - 1, j)) = pull;
    system.add(std::make_shared<DeadLoad>(std::move(forces)));
    return system;
}

Eigen::MatrixXd dense(const BandMatrix& band) {
    Eigen::MatrixXd full(band.size(), band.size());
    for (int i = 0; i < band.size(); ++i)
        for (int j = 0; j < band.size(); ++j) full(i, j) = band(i, j);
    return full;
}

}  // namespace

TEST_CASE("the lowest modes are those of the dense generalised eigenproblem") {
    const Patch patch{CubicBasis({0, 30, 70, 100}), CubicBasis({-40, 0, 40})};
    // Stretched by one per cent, or compressed so that the flat sheet is unstable and the lowest eigenvalue negative.
    for (const double stretch : {1.01, 0.93}) {
        const System system = sheet(patch, 0);
        const ControlPoints points = patch.follow([&](double x, double y) { return Eigen::Vector3d(stretch * x, y, 0); });
        const Eigen::GeneralizedSelfAdjointEigenSolver<Eigen::MatrixXd> reference(dense(system.tangent(points)),
                                                                                  dense(system.area_matrix()));
        const std::vector<EigenMode> modes = lowest_modes(system, points, 3);
        REQUIRE(modes.size() == 3);
        CHECK((stretch > 1) == (modes[0].value > 0));
        for (int k = 0; k < 3; ++k) CHECK(modes[k].value == doctest::Approx(reference.eigenvalues()[k]).epsilon(1e-6));
    }
}

TEST_CASE("there are no modes of a tangent that is not finite") {
    const Patch patch{CubicBasis({0, 30, 70, 100}), CubicBasis({-40, 0, 40})};
    const System system = sheet(patch, 0);
    const double nowhere = std::numeric_limits<double>::quiet_NaN();
    CHECK(lowest_modes(system, ControlPoints::Constant(3, patch.points(), nowhere), 3).empty());
}
