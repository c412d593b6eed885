#include "solver/transition/run_on.h"

#include "benchmarks/published/fabric_belt.h"
#include "mesh/transition_layout.h"
#include "solver/shell/shell_energy.h"
#include "solver/strain/run_on_line.h"
#include "solver/transition.h"
#include "tests/verification/reference.h"
#include "tests/verification/strip.h"

#include <doctest/doctest.h>
#include <Eigen/Eigenvalues>
#include <Eigen/LU>

#include <cmath>
#include <memory>
#include <numbers>
#include <optional>
#include <vector>

// A flat sheet between rollers that is drawn by N11 = n0 + n1 cos(k y), k = 2 pi/W, at x = L and runs on to a pulley at x = 0.
// Its displacements beyond the uniform ones are u = U(x) cos(k y) and v = V(x) sin(k y), with
//   A11 U'' + A12 k V' + A66 k (V' - k U) = 0,   A66 (V'' - k U') - k (A12 U' + A22 k V) = 0,
// at the far end A11 U' + A12 k V = n1, V' = k U, and on the pulley U' = V' = 0 in steady motion, U = V = 0 for a plane
// section.

using namespace swale;
using namespace swale::verification;

namespace {

enum { x, y, z };

constexpr double width = 1200, length = 1000, k = 2 * std::numbers::pi / width;
constexpr double A11 = 8000, A22 = 2500, A12 = 500, A66 = 500;
constexpr double n0 = 2e-6 * A11, n1 = 0.6 * n0;  // so small that what is left out of linear theory is not seen
constexpr double radius = 322;

/// (U, V, U', V').
using State = Eigen::Vector4d;

/// The closed form: four exponentials, of which the end conditions choose the shares.
class LinearSheet {
  public:
    explicit LinearSheet(RunOn run_on) {
        Eigen::Matrix4d system = Eigen::Matrix4d::Zero();
        system(0, 2) = system(1, 3) = 1;
        system.row(2) << A66 * k * k / A11, 0, 0, -(A12 + A66) * k / A11;
        system.row(3) << 0, A22 * k * k / A66, (A12 + A66) * k / A66, 0;
        const Eigen::EigenSolver<Eigen::Matrix4d> solver(system);
        rates_ = solver.eigenvalues();
        waves_ = solver.eigenvectors();
        Eigen::Matrix4d at_pulley = Eigen::Matrix4d::Zero(), at_end = Eigen::Matrix4d::Zero();
        const int first = run_on == RunOn::steady ? 2 : 0;
        at_pulley(0, first) = at_pulley(1, first + 1) = 1;
        at_end.row(2) << 0, A12 * k, A11, 0;
        at_end.row(3) << -k, 0, 0, 1;
        const Eigen::Matrix4cd conditions = at_pulley * waves(0) + at_end * waves(length);
        shares_ = conditions.partialPivLu().solve(Eigen::Vector4cd(0, 0, n1, 0));
    }

    State at(double place) const { return (waves(place) * shares_).real(); }

  private:
    Eigen::Matrix4cd waves(double place) const { return waves_ * (rates_ * place).array().exp().matrix().asDiagonal(); }

    Eigen::Vector4cd rates_, shares_;
    Eigen::Matrix4cd waves_;
};

Section sheet_section() {
    Section section;
    section.membrane = orthotropic(A11, A22, A12, A66);
    section.bending = orthotropic(1, 1, 0, 0.5);  // takes no part
    section.thickness = 12;
    return section;
}

Patch sheet_patch() {
    std::vector<double> across = equal_breaks(width, 16);
    for (double& place : across) place -= width / 2;
    return {CubicBasis(equal_breaks(length, 40)), CubicBasis(across)};
}

/// In the plane between rollers, drawn by `times` the small load; absent: the section at x = 0 is free.
System sheet(const Patch& patch, const std::optional<Eigen::Matrix2Xd>& section, double times = 1) {
    const int last = patch.across.size() - 1, end = patch.along.size() - 1;
    Supports supports(patch.points());
    for (int p = 0; p < patch.points(); ++p) supports.fix({p, z}, 0);
    for (int i = 0; i <= end; ++i)
        for (const int side : {0, last}) supports.fix({patch.index(i, side), y}, side == 0 ? -width / 2 : width / 2);
    for (int j = 0; section && j <= last; ++j)
        for (const int component : {x, y}) supports.fix({j, component}, (*section)(component, j));
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, sheet_section()));
    ControlPoints pull = ControlPoints::Zero(3, patch.points());
    for (const LinePoint& place : gauss_rule(patch.across, 6).points)
        for (int b = 0; b < 4; ++b)
            pull(x, patch.index(end, place.basis.first + b)) +=
                times * place.weight * place.basis.value[b] * (n0 + n1 * std::cos(k * place.position));
    system.add(std::make_shared<DeadLoad>(pull), TermKind::load);
    return system;
}

/// 2/W times the integral of f(y) cos(k y), or sin(k y).
template <class Function>
double amplitude(const Patch& patch, const Function& f, double (*wave)(double)) {
    double sum = 0;
    for (const LinePoint& place : gauss_rule(patch.across, 4).points)
        sum += 2 / width * place.weight * f(place.position) * wave(k * place.position);
    return sum;
}

/// (U, V, U', V') of the shell at x.
State state_at(const Patch& patch, const ControlPoints& points, double place) {
    const auto of = [&](auto member, int component, double (*wave)(double)) {
        return amplitude(
            patch, [&](double across) { return (patch.jet(points, place, across).*member)[component]; }, wave);
    };
    State state(of(&SurfaceJet::position, x, std::cos), of(&SurfaceJet::position, y, std::sin),
                of(&SurfaceJet::along, x, std::cos), of(&SurfaceJet::along, y, std::sin));
    state[1] -= amplitude(
        patch, [](double across) { return across; }, std::sin);
    return state;
}

ControlPoints held(const Patch& patch, const Eigen::Matrix2Xd& section, double times = 1) {
    const System system = sheet(patch, section, times);
    ControlPoints start = flat(patch);
    start.topRows(2).leftCols(section.cols()) = section;
    return equilibrium(system, start);
}

ControlPoints steady(const Patch& patch) {
    ControlPoints points = held(patch, section_on_pulley(patch, flat(patch)));
    const System free_section = sheet(patch, {});
    for (int round = 0; round < 2; ++round) {
        const auto step = run_on_step(free_section, sheet_section(), points);
        REQUIRE(step);
        points = held(patch, section_on_pulley(patch, *step));
    }
    return points;
}

/// A head with two sets on a coarse pair of grids.
TransitionCase head(RunOn run_on) {
    TransitionCase transition = benchmark::fabric_transition(2000, 0, 2);
    transition.layout.pulley.end = BeltEnd::head;
    transition.layout.pulley.run_on = run_on;
    transition.layout.trough.sets = 2;
    return transition;
}

StateResult solved(const TransitionCase& transition) {
    StateResult state = solve_transition(transition).states.at(0);
    REQUIRE_MESSAGE(state.status == SolveStatus::converged, state.reason);
    return state;
}

const char* source = "four exponentials, own derivation (see above)";

void compare(const char* quantity, const State& closed, const State& measured, int component, const char* unit,
             const char* where) {
    check(quantity, {closed[component], unit, source, Kind::closed_form, where, 1e-4, "40 x 16 spans of the sheet"},
          measured[component]);
}

}  // namespace

TEST_CASE("a sheet that runs on in steady motion has the closed form's warp and strains") {
    const Patch patch = sheet_patch();
    const LinearSheet closed(RunOn::steady);
    const ControlPoints points = steady(patch);
    CHECK(run_on_departure(sheet(patch, {}), sheet_section(), points) < 1e-6 * n1 / A11);
    compare("warp U", closed.at(0), state_at(patch, points, 0), 0, "mm", "x = 0");
    compare("sideways V", closed.at(0), state_at(patch, points, 0), 1, "mm", "x = 0");
    compare("excess strain U'", closed.at(250), state_at(patch, points, 250), 2, "-", "x = 250 mm");
    compare("excess strain U'", closed.at(500), state_at(patch, points, 500), 2, "-", "x = 500 mm");
}

TEST_CASE("a sheet with a plane section has the closed form's strains and more of them than a steady one") {
    const Patch patch = sheet_patch();
    const LinearSheet closed(RunOn::plane), running_on(RunOn::steady);
    const ControlPoints points = held(patch, section_on_pulley(patch, flat(patch)));
    compare("excess strain U'", closed.at(0), state_at(patch, points, 0), 2, "-", "x = 0, plane");
    compare("excess strain U'", closed.at(250), state_at(patch, points, 250), 2, "-", "x = 250 mm, plane");
    for (const double place : {0.0, 250.0, 500.0, 750.0}) CHECK(closed.at(place)[2] > running_on.at(place)[2]);
}

TEST_CASE("under large strains the section's Newton steps converge faster and faster") {
    constexpr double times = 2e4;  // 4 % of strain, and 60 % of that as the wave
    const Patch patch = sheet_patch();
    const System free_section = sheet(patch, {}, times);
    ControlPoints points = held(patch, section_on_pulley(patch, flat(patch)), times);
    std::vector<double> departures;
    for (int round = 0; round < 3; ++round) {
        departures.push_back(run_on_departure(free_section, sheet_section(), points));
        points = held(patch, section_on_pulley(patch, run_on_step(free_section, sheet_section(), points).value()), times);
    }
    // A wrong derivative would leave both ratios alike.
    CHECK(departures[1] < 0.2 * departures[0]);
    CHECK(departures[2] < 2e-3 * departures[1]);
}

TEST_CASE("friction on the pulley is what the closed form's frozen shear asks for") {
    const Patch patch = sheet_patch();
    const State start = LinearSheet(RunOn::steady).at(0);
    const ControlPoints points = steady(patch);
    const double stretch = run_on_stretch(sheet(patch, {}), sheet_section(), points);
    const RunOnLine line = run_on_line(patch, points, sheet_section(), stretch, radius);
    // On the pulley N12 = -A66 k U sin(k y) and N22 = A22 k V cos(k y) + uniform; t = -(N12,y, N22,y).
    double most = 0;
    for (const LinePoint& place : gauss_rule(patch.across, 2).points) {
        const double angle = k * place.position;
        const Eigen::Vector2d t(A66 * k * k * start[0] * std::cos(angle), A22 * k * k * start[1] * std::sin(angle));
        most = std::max(most, t.norm() * radius / (n0 + A12 * k * start[1] * std::cos(angle)));
    }
    check("friction that sticking needs",
          {most, "-", source, Kind::closed_form, "radius 322 mm", 1e-2, "means over strips of 12 mm, 16 spans"}, line.friction);
    check("warp", {2 * std::abs(start[0]), "mm", source, Kind::closed_form, "crest to trough of U cos(k y)", 1e-4, "as above"},
          line.warp);
    CHECK(line.strain == doctest::Approx(n0 / A11).epsilon(1e-3));
}

TEST_CASE("a belt that starts with a plane section runs into the steady state by itself") {
    // A strip that has more stretch than the pulley's speed asks for lags behind: on the line dr/ds = r,X - stretch e_x for a
    // length s that has run on. Only the wave itself is taken on, since short waves would need shorter steps.
    const Patch patch = sheet_patch();
    const std::vector<double> places = patch.across.greville();
    const Eigen::PartialPivLU<Eigen::MatrixXd> interpolation(patch.across.collocation());
    const Eigen::Matrix2Xd plane = section_on_pulley(patch, flat(patch));
    Eigen::VectorXd cosine(places.size()), sine(places.size());
    for (std::size_t j = 0; j < places.size(); ++j) {
        cosine[j] = std::cos(k * places[j]);
        sine[j] = std::sin(k * places[j]);
    }
    Eigen::Vector2d warp = Eigen::Vector2d::Zero();
    constexpr double step = 80;
    for (double run = 0; run < 100 * step; run += step) {
        Eigen::Matrix2Xd section = plane;
        section.row(x) += warp[0] * interpolation.solve(cosine).transpose();
        section.row(y) += warp[1] * interpolation.solve(sine).transpose();
        warp += step * state_at(patch, held(patch, section), 0).tail<2>();
    }
    const State closed = LinearSheet(RunOn::steady).at(0);
    check("warp U after 8 m", {closed[0], "mm", source, Kind::closed_form, "x = 0", 1e-3, "the slow wave fades within 0.7 m"},
          warp[0]);
    check("sideways V after 8 m", {closed[1], "mm", source, Kind::closed_form, "x = 0", 2e-3, "the same, and a hundredth of U"},
          warp[1]);
}

TEST_CASE("in steady motion a head strains edge and centre less than a plane section does") {
    const StateResult plane = solved(head(RunOn::plane)), running_on = solved(head(RunOn::steady));
    CHECK_FALSE(plane.run_on.has_value());
    REQUIRE(running_on.run_on.has_value());
    CHECK(running_on.run_on->warp > 0.5);
    CHECK(running_on.edge_strain_max.value < plane.edge_strain_max.value - plane.edge_strain_max.error.value());
    CHECK(running_on.tension_min.value > plane.tension_min.value);
    double along = 0;
    for (const SupportForce& support : running_on.supports) along += support.force.x();
    CHECK(along == doctest::Approx(-running_on.tension).epsilon(1e-6));
}

TEST_CASE("a steady run-on is restored with its warped section and without solving") {
    const TransitionCase transition = head(RunOn::steady);
    const StateResult given = solved(transition);
    const StateResult restored = restore_state(transition, 2, transition.states.front(), given.shape);
    CHECK(restored.run_on.value().warp == given.run_on.value().warp);
    CHECK(restored.edge_strain_max.value == doctest::Approx(given.edge_strain_max.value).epsilon(1e-10));
    CHECK(restored.supports.at(0).force.isApprox(given.supports.at(0).force, 1e-8));
}

TEST_CASE("a flat weightless belt runs on without a warp, as narrow as its tension makes it") {
    TransitionCase transition = head(RunOn::steady);
    transition.layout.trough.angle = 0;
    transition.belt.section.mass = 0;
    const StateResult state = solved(transition);
    CHECK(state.run_on->warp < 1e-4);
    CHECK(state.run_on->friction < 1e-4);
    CHECK(state.edge_strain_max.value == doctest::Approx(state.far_strain).epsilon(1e-5));
    const BeltSurface& surface = state.surface;
    const double half = surface.points[surface.across - 1].position.y();
    CHECK(half < 600 - 0.1);
    CHECK(half == doctest::Approx(surface.points.back().position.y()).epsilon(1e-6));
}

#ifdef SWALE_LONG_TESTS
TEST_CASE("a steady run-on is the same in the half and the full model") {
    TransitionCase transition = head(RunOn::steady);
    const StateResult half = solved(transition);
    transition.settings.model = Symmetry::full;
    const StateResult whole = solved(transition);
    CHECK(whole.run_on->warp == doctest::Approx(half.run_on->warp).epsilon(1e-5));
    CHECK(whole.edge_strain_max.value == doctest::Approx(half.edge_strain_max.value).epsilon(1e-6));
    CHECK(whole.tension_min.value == doctest::Approx(half.tension_min.value).epsilon(1e-5));
}
#endif
