#include "io/roll_mesh.h"

#include "tests/io/sample_run.h"

#include <doctest/doctest.h>
#include <Eigen/Geometry>

using namespace swale;

TEST_CASE("roll mesh: its points lie on the roll's surface") {
    for (const NamedRoll& named : sample_run().result.rolls)
        for (const Eigen::Vector3d& point : roll_mesh(named.roll).points)
            CHECK(std::abs(named.roll.clearance(point).distance) < 1e-9 * named.roll.radius);
}

TEST_CASE("roll mesh: closed and outward so that it holds the roll's volume") {
    const Roll roll{{10, 20, 30}, {0, 1, 0}, {0, 0, 1}, 100, 400, 0};
    const RollMesh mesh = roll_mesh(roll, 200);
    double volume = 0;  // divergence theorem over a fan of triangles
    for (const std::vector<int>& cell : mesh.cells)
        for (size_t i = 1; i + 1 < cell.size(); ++i)
            volume += mesh.points[cell[0]].dot(mesh.points[cell[i]].cross(mesh.points[cell[i + 1]])) / 6;
    CHECK(volume == doctest::Approx(M_PI * 100 * 100 * 800).epsilon(0.001));
}
