#include "mesh/belt_grid.h"

#include "benchmarks/published/fabric_belt.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace swale;

namespace {

const TransitionLayout layout = benchmark::fabric_transition(2400, 0, 1).layout;

Section belt_with(double along, double across) {
    Section section = benchmark::fabric_transition(2400, 0, 1).belt.section;
    section.bending = orthotropic(along, across, 0.2 * across, 0.3 * across);
    return section;
}

Patch grid_for(const Section& section, const TransitionLayout& of = layout) {
    return belt_grid(of, {4, section.underside, 1, true, boundary_layers(section)});
}

// Longest span that touches [from, to].
double longest_span(const CubicBasis& basis, double from, double to) {
    double longest = 0;
    for (int s = basis.span_of(from); s <= basis.span_of(to); ++s)
        longest = std::max(longest, basis.breaks()[s + 1] - basis.breaks()[s]);
    return longest;
}

}  // namespace

TEST_CASE("belt grid: at the roll ends and at the edge every belt has spans that resolve its contact pressure") {
    // At the junction within the ends of the rolls and a cover's thickness; D22 of 2.5, 8 and 25 N m.
    for (const double across : {2.5e3, 8e3, 25e3}) {
        const Section section = belt_with(20e3, across);
        const CubicBasis basis = grid_for(section).across;
        const double rule = std::pow(64 * across / section.foundation, 0.25), junction = layout.junction();
        CHECK(longest_span(basis, junction - 20, junction + 20) <= rule);
        CHECK(longest_span(basis, basis.end() - 10, basis.end()) <= rule);
    }
}

TEST_CASE("belt grid: a belt soft along has shorter spans at the first full set and no others behind the second") {
    const CubicBasis stiff = grid_for(belt_with(70e3, 25e3)).along, soft = grid_for(belt_with(7e3, 25e3)).along;
    CHECK(longest_span(soft, 2395, 2405) < 0.6 * longest_span(stiff, 2395, 2405));
    const auto behind = [](const CubicBasis& basis) {
        return std::count_if(basis.breaks().begin(), basis.breaks().end(),
                             [](double x) { return x > 3600; });  // the second set
    };
    CHECK(behind(soft) == behind(stiff));
}

TEST_CASE("belt grid: a stiff belt that shears little has the grid of a belt that asks for nothing") {
    Section section = belt_with(80e3, 30e3);
    section.membrane(2, 2) = 0.1 * section.membrane(0, 0);
    const Patch asks_nothing = belt_grid(layout, {4, 7.25, 1, true}), stiff = grid_for(section);
    CHECK(stiff.along.breaks() == asks_nothing.along.breaks());
    CHECK(stiff.across.breaks() == asks_nothing.across.breaks());
}

TEST_CASE("belt grid: the edge of a belt of stiff cords in soft rubber has spans as short as its shear lag, and few") {
    Section section = belt_with(80e3, 30e3);
    section.membrane(2, 2) = 0.005 * section.membrane(0, 0);
    const CubicBasis across = grid_for(section).across, plain = belt_grid(layout, {4, 7.25, 1, true}).across;
    CHECK(longest_span(across, across.end() - 4, across.end()) <= 100 * std::sqrt(0.005));
    CHECK(across.spans() <= plain.spans() + 4);
}

TEST_CASE("belt grid: a finer corner shortens spans behind the pulley and at the edge, and no others") {
    const GridRequest usual{4, 7.25, 1, true, {}}, fine{4, 7.25, 1, true, {}, 0.25};
    const Patch plain = belt_grid(layout, usual), corner = belt_grid(layout, fine);
    const double edge = plain.across.end();
    CHECK(longest_span(corner.along, 0, 20) < 0.35 * longest_span(plain.along, 0, 20));
    CHECK(longest_span(corner.across, edge - 5, edge) < 0.35 * longest_span(plain.across, edge - 5, edge));
    CHECK(longest_span(corner.along, 2300, 3600) == doctest::Approx(longest_span(plain.along, 2300, 3600)).epsilon(0.05));
    CHECK(corner.along.spans() * corner.across.spans() < 1.6 * plain.along.spans() * plain.across.spans());
}

TEST_CASE("belt grid: the softest belt has a bounded grid") {
    const Patch patch = grid_for(belt_with(1, 1));
    CHECK(patch.along.spans() < 100);
    CHECK(patch.across.spans() < 50);
}

TEST_CASE("belt grid: the bending of a belt has no say in a held transition") {
    TransitionLayout held = layout;
    held.trough.support = Support::held;
    held.pulley.support = Support::held;
    held.trough.junction_radius = 150;
    const Patch stiff = grid_for(belt_with(80e3, 30e3), held), soft = grid_for(belt_with(7e3, 2.5e3), held);
    CHECK(stiff.along.breaks() == soft.along.breaks());
    CHECK(stiff.across.breaks() == soft.across.breaks());
}

TEST_CASE("belt grid: behind a raised pulley the spans are shortest where the belt's path meets the set") {
    TransitionLayout raised = layout;
    raised.pulley.lift = 300;
    const CubicBasis along = grid_for(belt_with(70e3, 25e3), raised).along;
    const double path = std::hypot(2400, 300);
    CHECK(std::any_of(along.breaks().begin(), along.breaks().end(), [&](double s) { return std::abs(s - path) < 1e-9; }));
    CHECK(longest_span(along, path - 10, path + 10) <= 33);  // 30 at the roll, growing
    CHECK(along.end() == doctest::Approx(path + 3.5 * 1200).epsilon(1e-12));
    CHECK(path_length(raised, 4) == along.end());
}
