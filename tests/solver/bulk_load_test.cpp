#include "solver/load/bulk_load.h"

#include "mesh/trough_profile.h"
#include "solver/load/bulk_section.h"
#include "solver/load/bulk_surface.h"
#include "solver/transition/state_notes.h"
#include "tests/solver/term_checks.h"

#include <doctest/doctest.h>

#include <cmath>
#include <numbers>

using namespace swale;

namespace {

constexpr double degree = std::numbers::pi / 180, inch = 25.4;
constexpr double angle = 35 * degree, surcharge = 20 * degree;
const double slope = std::tan(surcharge);

TransitionLayout layout_of(double width, double centre_roll, double trough_angle) {
    TransitionLayout layout;
    layout.belt_width = width;
    layout.trough.angle = trough_angle;
    layout.trough.centre_roll = centre_roll;
    layout.distance = 2400;
    return layout;
}

/// A belt 1200 mm wide that is bent up at |y| = 232.5 mm, or a straight one at any angle across.
double kinked(double y) {
    return std::max(0.0, std::abs(y) - 232.5);
}

BeltSection kinked_section(double wing_angle) {
    const auto at = [=](double s) {
        const double wing = kinked(s);
        return Eigen::Vector2d(s - wing + wing * std::cos(wing_angle), wing * std::sin(wing_angle));
    };
    BeltSection section{{}, at, 600};
    constexpr int pieces = 4800;
    for (int k = 0; k < pieces; ++k) {
        const double s = 600.0 * k / pieces, next = 600.0 * (k + 1) / pieces;
        const Eigen::Vector2d middle = at((s + next) / 2);
        section.points.push_back({middle.x(), middle.y(), at(next).x() - at(s).x()});
    }
    return section;
}

/// Half a trough or all of it, 1000 mm long.
Patch trough_patch(bool half) {
    const std::vector<double> right{0, 150, 230, 270, 400, 520, 560, 600};
    std::vector<double> breaks = right;
    if (!half) {
        breaks.clear();
        for (auto y = right.rbegin(); y != right.rend(); ++y) breaks.push_back(-*y);
        breaks.insert(breaks.end(), right.begin() + 1, right.end());
    }
    return {CubicBasis({0, 300, 500, 1000}), CubicBasis(breaks)};
}

ControlPoints in_trough(const Patch& patch) {
    const TroughProfile profile{angle, 190, 150, 0};
    return patch.follow([&](double x, double y) {
        const Eigen::Vector2d place = profile.at(y);
        return Eigen::Vector3d(1.01 * x, place.x(), place.y() + 1e-5 * x * x);
    });
}

constexpr double unit_weight = 1.2e-5;  // [N/mm^3]
const BulkRequest request{unit_weight, 150e3, slope, 1.01};

}  // namespace

TEST_CASE("bulk section: trapezium and parabola of ISO 5048 near the circular arc of the handbook's table") {
    // CEMA, 35 deg, 48 in, 20 deg: 1.804 ft^2, from memory (fairly sure); centre roll 0.371 W + 0.25 in, free edge
    // 0.055 W + 0.9 in. Its arc of 36.8 in holds 80.0 in^2, the parabola 82.1: 0.8 % of the whole.
    const TransitionLayout layout = layout_of(48 * inch, (0.371 * 48 + 0.25) * inch, angle);
    const double width = (48 - 2 * (0.055 * 48 + 0.9)) * inch;
    CHECK(bulk_section(layout, width, surcharge) / (144 * inch * inch) == doctest::Approx(1.804).epsilon(0.01));
}

TEST_CASE("bulk section: a flat belt bears the heap alone and nothing at no surcharge") {
    const TransitionLayout flat = layout_of(1200, 465, 0);
    CHECK(usable_width(1200) == 1030);
    CHECK(usable_width(2400) == 2150);
    CHECK(bulk_section(flat, 1030, surcharge) == doctest::Approx(1030 * 1030 * slope / 6).epsilon(1e-12));
    CHECK(bulk_section(flat, 1030, 0) == 0);
}

TEST_CASE("bulk section: the standard's own sums of three rolls and what they become for two and five") {
    TransitionLayout layout = layout_of(1200, 465, angle);
    const double l3 = 465, b = 1030, c = std::cos(angle), s = std::sin(angle);
    const double three = std::pow(l3 + (b - l3) * c, 2) * slope / 6 + (l3 + (b - l3) / 2 * c) * (b - l3) / 2 * s;
    CHECK(bulk_section(layout, b, surcharge) == doctest::Approx(three).epsilon(1e-12));
    layout.trough.rolls = 5;  // inner wings at the outer angle: three rolls again
    layout.trough.inner_roll = 120;
    layout.trough.inner_angle = angle;
    CHECK(bulk_section(layout, b, surcharge) == doctest::Approx(three).epsilon(1e-12));
    layout.trough.inner_angle = 0;  // or flat: a longer centre roll
    CHECK(bulk_section(layout, b, surcharge) ==
          doctest::Approx(bulk_section(layout_of(1200, 465 + 240, angle), b, surcharge)).epsilon(1e-12));
    layout.trough.rolls = 2;  // a V holds b^2 sin 2 lambda / 8 under the line
    CHECK(bulk_section(layout, b, 0) == doctest::Approx(b * b * std::sin(2 * angle) / 8).epsilon(1e-12));
}

TEST_CASE("bulk section: of a case by its fill or by its free edge") {
    const TransitionLayout layout = layout_of(1200, 465, angle);
    const double full = bulk_section(layout, 1030, surcharge);
    Bulk bulk{1.2e-9, surcharge, 0.8, {}, {}};
    CHECK(bulk_section(layout, bulk) == doctest::Approx(0.8 * full));
    bulk.free_edge = 85;
    CHECK(bulk_section(layout, bulk) == doctest::Approx(full));
    CHECK(bulk_fill(layout, bulk) == doctest::Approx(1));
}

TEST_CASE("bulk surface: in a kinked trough the section's closed form leaves its free edge") {
    for (const double width : {400.0, 800.0, 1030.0}) {
        const double area = bulk_section(layout_of(1200, 465, angle), width, surcharge);
        const BulkSurface surface = lay_bulk(kinked_section(angle), area / 2, slope);
        const double wing = kinked(width / 2);
        CHECK(surface.half_width == doctest::Approx(width / 2 - wing + wing * std::cos(angle)).epsilon(1e-3));
        CHECK(surface.level == doctest::Approx(wing * std::sin(angle)).scale(1).epsilon(2e-3));
        CHECK(surface.slope == slope);
        CHECK(bulk_area(kinked_section(angle), surface) == doctest::Approx(area / 2).epsilon(1e-10));
    }
}

TEST_CASE("bulk surface: on a flat belt a heap spreads to where its parabola ends") {
    const double area = 40e3;  // of the half: 1/3 b^2 slope
    CHECK(lay_bulk(kinked_section(0), area, slope).half_width == doctest::Approx(std::sqrt(3 * area / slope)).epsilon(1e-4));
}

TEST_CASE("bulk surface: more than stays on the belt stands steeper from its edges") {
    const double area = 75e3;
    const BulkSurface surface = lay_bulk(kinked_section(0), area, slope);
    CHECK(surface.half_width == 600);
    CHECK(surface.slope == doctest::Approx(3 * area / (600.0 * 600)).epsilon(1e-4));
}

TEST_CASE("bulk load: its vertical forces are the weight to the last digits") {
    for (const bool half : {true, false}) {
        const Patch patch = trough_patch(half);
        const BulkLoad load = bulk_load(patch, in_trough(patch), request);
        const double share = half ? 0.5 : 1;
        CHECK(load.length == doctest::Approx(1010).epsilon(1e-12));
        CHECK(load.forces.row(2).sum() == doctest::Approx(-share * unit_weight * 150e3 * 1010).epsilon(1e-10));
        CHECK(load.forces.row(0).norm() == 0);
        CHECK(load.highest_slope == slope);
    }
}

TEST_CASE("bulk load: both sides of a straight belt are pushed apart alike and as in the half") {
    const Patch half = trough_patch(true), full = trough_patch(false);
    const ControlPoints one = bulk_load(half, in_trough(half), request).forces;
    const ControlPoints both = bulk_load(full, in_trough(full), request).forces;
    CHECK(std::abs(both.row(1).sum()) < 1e-9 * both.row(2).norm());
    CHECK(one.row(1).sum() > 0);
    // Forces on the edge's control point, which the centre line does not touch.
    const int edge = half.across.size() - 1, same = full.across.size() - 1;
    for (int i = 0; i < half.along.size(); ++i) {
        const Eigen::Vector3d here = one.col(half.index(i, edge - 2)), there = both.col(full.index(i, same - 2));
        CHECK((here - there).norm() < 1e-9 * there.norm());
    }
}

TEST_CASE("bulk load: it presses square to the belt") {
    const Patch patch = trough_patch(true);
    const ControlPoints wedge =
        patch.follow([](double x, double y) { return Eigen::Vector3d(x, y * std::cos(angle), y * std::sin(angle)); });
    const Eigen::Vector3d sum = bulk_load(patch, wedge, request).forces.rowwise().sum();
    CHECK(sum.y() / sum.z() == doctest::Approx(-std::tan(angle)).epsilon(1e-10));
}

TEST_CASE("bulk load: spans before its beginning bear nothing and the one that it begins in bears its share") {
    const Patch patch = trough_patch(true);
    BulkRequest later = request;
    later.from = 1.01 * 400;  // the belt is stretched by 1 %
    const BulkLoad load = bulk_load(patch, in_trough(patch), later);
    CHECK(load.length == doctest::Approx(1.01 * 600).epsilon(1e-6));
    CHECK(load.forces.row(2).sum() == doctest::Approx(-0.5 * unit_weight * 150e3 * load.length).epsilon(1e-10));
    CHECK(load.forces.leftCols(patch.across.size()).norm() == 0);
}

TEST_CASE("bulk load: no force follows a small rise of the whole belt") {
    const Patch patch = trough_patch(true);
    const ControlPoints low = in_trough(patch), forces = bulk_load(patch, low, request).forces;
    const ControlPoints high = low.colwise() + Eigen::Vector3d(0, 0, 30);
    CHECK((bulk_load(patch, high, request).forces - forces).norm() < 1e-9 * forces.norm());
}

namespace {

std::vector<std::string> notes_of(BeltEnd end, std::optional<double> from, double fill, double steepest) {
    TransitionCase transition;
    transition.layout = layout_of(1200, 465, angle);
    transition.layout.pulley.end = end;
    transition.bulk = Bulk{1.2e-9, surcharge, fill, {}, from};
    StateResult result;
    result.bulk = BulkResult{};
    result.bulk->steepest = steepest;
    TensionState state;
    state.loaded = true;
    note_bulk(transition, state, result);
    return result.notes;
}

}  // namespace

TEST_CASE("bulk: loading on the transition of a tail end is warned of and good practice is not") {
    CHECK(notes_of(BeltEnd::tail, {}, 1, surcharge).empty());
    CHECK(notes_of(BeltEnd::head, {}, 1, surcharge).empty());
    CHECK(notes_of(BeltEnd::head, 1000, 1, surcharge).empty());
    const std::vector<std::string> notes = notes_of(BeltEnd::tail, 1000, 1, surcharge);
    REQUIRE(notes.size() == 1);
    CHECK(notes.front().find("never load on a transition") != std::string::npos);
}

TEST_CASE("bulk: overfilling and a flank too steep are warned of") {
    CHECK(notes_of(BeltEnd::head, {}, 1.2, surcharge).size() == 1);
    CHECK(notes_of(BeltEnd::head, {}, 1, 30 * degree).size() == 1);
}
