#include "solver/shell/shell_energy.h"
#include "tests/verification/plate.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <cmath>
#include <memory>
#include <numbers>

// Simply supported orthotropic plates under a lateral load, Navier's series. Laminates whose bending is coupled to their
// stretch (B != 0: [0/90], angle plies) are left out: the section law carries no B.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double width = 100;
constexpr int spans = 40;
/// The closed form is linear: a load that sags the plate some thousandth of its thickness.
constexpr double thickness = 10, sag = 1e-3 * thickness;

const char* linear = "thousandth of the thickness in sag, 40 spans each way and the last digit of the table";

ControlPoints under_load(const Patch& patch, const Section& section, const DeadLoad& load) {
    Supports supports(patch.points());
    hold_height(supports, patch, all_simple);
    // One corner and one side's end take the rigid motions in the plane; the edges are free to move in it.
    supports.fix({0, x}, 0);
    supports.fix({0, y}, 0);
    supports.fix({patch.index(patch.along.size() - 1, 0), y}, 0);
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, section));
    system.add(std::make_shared<DeadLoad>(load));
    NewtonSettings settings;
    settings.tolerance = 1e-6;  // heights are a hundred-thousandth of the lengths beside them
    return equilibrium(system, flat(patch), settings);
}

Reference navier(double value, const ReferenceTable& table, const std::string& conditions, double tolerance, const char* why) {
    return {value, "-", table.source, Kind::closed_form, conditions, tolerance, why};
}

}  // namespace

TEST_CASE("an orthotropic plate on four edges sags under a uniform load as Navier's series does") {
    const ReferenceTable table = reference_table("plate_ortho_ssss_udl.csv");
    for (const auto& row : table.rows) {
        const double length = number(row, "a_over_b") * width, twist = number(row, "H=D12+2D66");
        const double D22 = number(row, "D22"), alpha = number(row, "alpha = w_c D22/(q b^4)");
        // The series knows H alone: D12 = 0.3 H, D66 = 0.35 H.
        const Section section = thin_plate(orthotropic(number(row, "D11"), D22, 0.3 * twist, 0.35 * twist), thickness);
        const Patch patch = plate(length, width, spans, spans);
        const double load = sag * D22 / (0.01 * std::pow(width, 4));
        const ControlPoints points = under_load(patch, section, area_load(patch, {0, 0, load}));
        const double measured = patch.jet(points, length / 2, width / 2).position.z() * D22 / (load * std::pow(width, 4));
        check("sag at the centre w D22/(q b^4)",
              navier(alpha, table, row.at("case") + ", a/b = " + row.at("a_over_b"), 5e-5 + 5e-9 / alpha, linear), measured);
    }
}

TEST_CASE("a symmetric laminate on four edges sags and bends as Navier's series does") {
    const ReferenceTable table = reference_table("plate_navier_laminates.csv");
    const double wave = std::numbers::pi / width, load = sag * 1e-8;
    for (const auto& row : table.rows) {
        const std::vector<int> plies = symmetric_plies(row.at("layup"));
        if (plies.empty()) continue;
        const bool uniform = row.at("load") == "udl";
        const Section section = thin_plate(cross_ply_bending(plies), thickness);
        const Patch patch = plate(width, width, spans, spans);
        const ControlPoints points = under_load(patch, section, pressure(patch, [&](double u, double v) {
                                                    return uniform ? load : load * std::sin(wave * u) * std::sin(wave * v);
                                                }));
        const std::string conditions = row.at("layup") + (uniform ? ", uniform load" : ", one half-wave each way");
        // E2 = 1, h = 1.
        const double sag_100 = 100 * patch.jet(points, width / 2, width / 2).position.z() / (load * std::pow(width, 4));
        check("sag at the centre 100 w E2 h^3/(q a^4)",
              navier(number(row, "wbar=100 w E2 h^3/(q a^4)"), table, conditions, 5e-5, linear), sag_100);
        const Eigen::Vector3d moment = -10 / (load * width * width) * moments(patch, points, section, width / 2, width / 2);
        const char* at_knot =
            "second derivative at a knot, (pi/40)^2/12 = 5e-4 for one half-wave, more for those of the stiff direction";
        check("moment along at the centre 10 Mx/(q a^2)",
              navier(number(row, "10 Mx/(q a^2)"), table, conditions, 2e-3, at_knot), moment[0]);
        check("moment across at the centre 10 My/(q a^2)",
              navier(number(row, "10 My/(q a^2)"), table, conditions, 2e-3, at_knot), moment[1]);
    }
}
