#include "tests/io/sample_run.h"

#include <cmath>
#include <limits>

namespace swale {

namespace {

constexpr int along = 4, across = 3;

SurfacePoint point_at(double x, double y) {
    SurfacePoint point;
    point.x = x;
    point.y = y;
    point.position = {1.002 * x, 0.99 * y, std::abs(y) / 7};
    point.displacement = point.position - Eigen::Vector3d(x, y, 0);
    point.strain = 0.002 + 1e-9 * y * y + 1e-7 * x;
    point.membrane_strain = {point.strain, -0.001, 1e-5 * y};
    point.curvature = {1e-5, 1e-3 + 1e-6 * y, 3e-7 * x};
    point.top_strain = point.membrane_strain - 7 * point.curvature;
    point.bottom_strain = point.membrane_strain + 7 * point.curvature;
    point.force = 8000 * point.membrane_strain;
    point.moment = 25000 * point.curvature;
    point.contact_pressure = x / 3e4;
    return point;
}

BeltSurface sample_surface() {
    BeltSurface surface{along, across, {}};
    for (int i = 0; i < along; ++i)
        for (int j = 0; j < across; ++j) surface.points.push_back(point_at(800.0 * i, 600.0 * (j - 1)));
    return surface;
}

BeltMode sample_mode() {
    BeltMode mode{{}, 1600, 0};
    for (int k = 0; k < along * across; ++k) mode.motion.emplace_back(0.001 * k, -0.01 * k, k == 7 ? 1 : 0.05 * k);
    return mode;
}

BeltShape sample_shape() {
    BeltShape shape;
    shape.knots_along = {0, 0, 0, 0, 1200.0 / 7, 2400, 2400, 2400, 2400};
    shape.knots_across = {0, 0, 0, 0, 600, 600, 600, 600};
    shape.control_points.resize(3, 5 * 4);
    for (int i = 0; i < 60; ++i) shape.control_points.data()[i] = std::sqrt(2.0 + i);
    return shape;
}

StateResult converged_state() {
    StateResult state;
    state.name = "running full";
    state.status = SolveStatus::converged;
    state.reason = "residual 3.1e-9 < 1e-8 after 4 iterations";
    state.tension = 45000;
    state.pulley_tension = 44321.5;
    state.far_strain = 1.0 / 213;
    state.excluded = 60;
    state.edge_strain_max = {0.0084, 0.0001, 0.00002, 2210, -600};
    state.centre_strain_min = {0.0011, 0.00003, std::nullopt, 2300, 0};
    state.edge_tension_max = {67.2, 0.8, std::nullopt, 2210, -600};
    state.tension_min = {3.5, 0.2, std::nullopt, 2300, 0};
    state.junction_bending_strain_max = {0.0123, 0.0004, std::nullopt, 2400, -237.5};
    state.surface_strain_max = {0.0151, std::nullopt, std::nullopt, 2400, -240};
    state.wing_line_force_max = {std::numeric_limits<double>::quiet_NaN(), std::nullopt, std::nullopt, 0, 0};
    state.roll_force_max = {1220.655, 3, std::nullopt, 2400, 430};
    state.supports = {{"pulley", 0, {-12, 0, 1830}, 0.0},
                      {"set 1 centre", 2400, {0, 0, -0.0}, 4.25},
                      {"set 1 wing +y", 2400, {3, -700, 1000}, 0.0, {{262.5, 540}}},
                      {"set 2 centre", 3600, {0, 0, 400}, std::nullopt}};
    state.bulk = BulkResult{180e-6, 5400, 9532.06, 0.4, 1e-7};
    state.eigenvalue_symmetric = 1.5e-5;
    for (int i = 0; i < along; ++i)
        state.along.push_back({point_at(800.0 * i, 600), point_at(800.0 * i, 237), point_at(800.0 * i, 0)});
    state.across = {{"mid-transition", {point_at(1200, -600), point_at(1200, 600)}}, {"set 1", {point_at(2400, 0)}}};
    state.surface = sample_surface();
    state.mode_symmetric = sample_mode();
    state.shape = sample_shape();
    state.run_on = {0.0048, 2.2, std::numeric_limits<double>::infinity(), 598, 0.03};
    state.newton = {{"coarse", 800, 9, 2e-9, 1e-8}, {"fine", 1700, 4, 3.1e-9, 1e-8}};
    state.notes = {"the far end is nearer than two shear-lag lengths"};
    return state;
}

StateResult unsolved_state() {
    StateResult state;
    state.name = "starting, \"wet\"";
    state.reason = "residual 3.1e-4 > 1e-8 after 60 iterations, tension 62 kN";
    state.newton = {{"coarse", 800, 60, 3.1e-4, 1e-8}};
    return state;
}

TransitionCase sample_case() {
    TransitionCase transition;
    transition.title = "Salt reclaim R3, tail transition";
    transition.belt.width = 1200;
    transition.belt.section.membrane = orthotropic(8000, 2500, 500, 500);
    transition.belt.section.bending = orthotropic(70e3, 25e3, 5e3, 8e3);
    transition.belt.data = {{"A11", 8000, "N/mm", {"given", "case file"}}};
    transition.layout.belt_width = 1200;
    transition.layout.distance = 2400;
    transition.layout.trough.centre_roll = 465;
    transition.layout.trough.roll_gap = 10;
    transition.states = {{"running full", 45000, std::nullopt, true}, {"starting, \"wet\"", 62000, std::nullopt}};
    return transition;
}

std::vector<NamedRoll> sample_rolls() {
    const Roll pulley{{0, 0, -322.25}, {0, 1, 0}, {0, 0, 1}, 315, 700, 5};
    const Eigen::Vector3d axis(0, std::cos(0.6), std::sin(0.6)), up(0, -std::sin(0.6), std::cos(0.6));
    return {{"pulley", pulley}, {"set 1 wing +y", {{2400, 430, 50}, axis, up, 76.2, 232.5, 5}}};
}

}  // namespace

RunRecord sample_run() {
    RunRecord record{sample_case(), {}, "title = \"Salt reclaim R3\"  # § verbatim, with a tab\t\n", "cases/salt.toml"};
    record.result.states = {converged_state(), unsolved_state()};
    record.result.criteria = {
        {"edge tension", "running full", 0.84, 1.15, "", 0.84 / 1.15, true, false, "handbook practice", 2210, -600},
        {"edge strain", "running full", 0.0084, 0.008, "1", 1.05, false, true, "common practice", 2210, -600},
        {"lowest tension", "running full", 3.5, 0, "N/mm", std::nullopt, true, false, "mechanics", 2300, 0, std::nullopt, true},
        {"junction strain", "running full", 0.0123, std::nullopt, "1", std::nullopt, std::nullopt, false,
         "no published limit is known", 2400, -237.5},
        {"edge tension", "starting, \"wet\"", std::nullopt, 1.15, "", std::nullopt, std::nullopt, false, "handbook practice",
         std::nullopt, std::nullopt},
        {"roll force", "running full", 1220.655, 4000, "N", 0.305, true, false, "given in the case file", 2400, 430, 3.0, false,
         "set 1 wing +y"}};
    record.result.rolls = sample_rolls();
    record.result.sets = 4;
    record.result.cost = {1700, 73, 0.91, 0.4, 0.1, 0.2, 0.05, 0.02};
    return record;
}

}  // namespace swale
