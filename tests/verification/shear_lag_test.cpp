#include "mesh/graded_breaks.h"
#include "solver/shell/shell_energy.h"
#include "tests/verification/compared_curve.h"
#include "tests/verification/reference.h"
#include "tests/verification/reference_table.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <map>
#include <memory>
#include <numbers>
#include <string>

// Shear lag: a load on the end of a flat strip that is in balance with itself across the width b fades as exp(-gamma x) along
// it; in plane stress gamma b is near 2 pi sqrt(G12/E1) if the strip is much stiffer along than in shear. So long must a model
// of a belt be for the tension to even out.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double width = 100, pi = std::numbers::pi;
enum class Sides { free, on_rollers };

/// Moduli of a sheet per width [N/mm].
struct Sheet {
    double E1, E2, G12, nu12;

    Section section() const {
        const double share = 1 - nu12 * nu12 * E2 / E1;
        Section section;
        section.membrane = orthotropic(E1 / share, E2 / share, nu12 * E2 / share, G12);
        section.bending = orthotropic(1, 1, 0, 0.5);  // takes no part
        return section;
    }
    double guess() const { return 2 * pi * std::sqrt(G12 / E1) / width; }  // of gamma [1/mm]
};

Sheet sheet_of(const std::map<std::string, std::string>& row) {
    constexpr double unit = 1e3;
    return {unit * number(row, "E1"), unit * number(row, "E2"), unit * number(row, "G12"), number(row, "nu12")};
}

/// Fourteen decay lengths, so that what the far end sends back is not seen.
Patch strip_for(const Sheet& sheet) {
    const double decay = 1 / sheet.guess();
    return {CubicBasis(graded_breaks(0, 14 * decay, decay / 8, {{0, width / 50, 0, 0.1}}, {})),
            CubicBasis(equal_breaks(width, 16))};
}

/// In the plane; the far section is free to slide across, its middle held by the load's symmetry alone.
Supports supports_of(const Patch& patch, Sides sides) {
    const int last = patch.along.size() - 1, left = patch.across.size() - 1;
    Supports supports(patch.points());
    for (int p = 0; p < patch.points(); ++p) supports.fix({p, z}, 0);
    for (int j = 0; j <= left; ++j) supports.fix({patch.index(last, j), x}, patch.along.end());
    supports.fix({patch.index(last, left / 2), y}, patch.across.greville()[left / 2]);
    if (sides == Sides::on_rollers)
        for (int i = 0; i <= last; ++i) {
            supports.fix({patch.index(i, 0), y}, 0);
            supports.fix({patch.index(i, left), y}, width);
        }
    supports.close();
    return supports;
}

/// cos(2 pi y/b) on the end x = 0.
DeadLoad wave_on_end(const Patch& patch, double amplitude) {
    ControlPoints forces = ControlPoints::Zero(3, patch.points());
    for (const LinePoint& point : gauss_rule(patch.across, 6).points)
        for (int b = 0; b < 4; ++b)
            forces(x, patch.index(0, point.basis.first + b)) +=
                point.weight * point.basis.value[b] * amplitude * std::cos(2 * pi * point.position / width);
    return DeadLoad(forces);
}

/// The slower rate of two exponentials through four values a step apart (Prony): with s_k = A a^k + B b^k, a and b are the
/// roots of t^2 = p t + q, where s_2 = p s_1 + q s_0 and s_3 = p s_2 + q s_1.
double slower_rate(const std::array<double, 4>& s, double step) {
    const double det = s[1] * s[1] - s[0] * s[2];
    const double p = (s[1] * s[2] - s[0] * s[3]) / det, q = (s[1] * s[3] - s[2] * s[2]) / det;
    return -std::log(p / 2 + std::sqrt(p * p / 4 + q)) / step;
}

/// From the strain along the centre line some decay lengths off, where no more than the two slowest waves are left; between
/// rollers the load is one wave.
double decay_rate(const Sheet& sheet, Sides sides) {
    const Patch patch = strip_for(sheet);
    System system(patch, supports_of(patch, sides));
    system.add(std::make_shared<ShellEnergy>(patch, sheet.section()));
    system.add(std::make_shared<DeadLoad>(wave_on_end(patch, 3e-5 * sheet.E1)));
    NewtonSettings settings;
    // The load leaves no reactions that its residual could be held against: this is 1e-9 of the load.
    settings.tolerance = 1e-5;
    const ControlPoints points = equilibrium(system, flat(patch), settings);
    const double decay = 1 / sheet.guess();
    std::array<double, 4> strains;
    for (int k = 0; k < 4; ++k) strains[k] = (patch.jet(points, (3 + k) * decay, width / 2).along.squaredNorm() - 1) / 2;
    return sides == Sides::free ? slower_rate(strains, decay) : std::log(strains[0] / strains[2]) / (2 * decay);
}

void compare(const char* column, Sides sides, const std::string& picture) {
    const ReferenceTable table = reference_table("inplane_shear_lag_decay.csv");
    ComparedCurve curve(picture, "gamma b", "E1/G12", "gamma b");
    for (const auto& row : table.rows) {
        const double measured = width * decay_rate(sheet_of(row), sides), ratio = number(row, "E1") / number(row, "G12");
        check("decay rate gamma b",
              {number(row, column), "-", table.source, Kind::closed_form,
               "E1 " + row.at("E1") + ", E2 " + row.at("E2") + ", G12 " + row.at("G12") + ", nu12 " + row.at("nu12"),
               sides == Sides::free ? 2e-4 : 1e-4,
               sides == Sides::free ? "of the waves of the end load the third is not quite gone"
                                    : "strains of 1e-5, 16 spans across"},
              measured);
        curve.add(ratio, number(row, column), measured);
    }
    curve.draw_both();
}

}  // namespace

TEST_CASE("a load in balance with itself on the end of a strip with free sides fades as by Airy's function") {
    compare("gamma1*b free edges (first even)", Sides::free, "Shear lag: decay of an end load, free sides");
}

TEST_CASE("a load in balance with itself on the end of a strip between rollers fades as by Airy's function") {
    compare("m1*b lateral rollers (first cosine)", Sides::on_rollers, "Shear lag: decay of an end load, sides on rollers");
}
