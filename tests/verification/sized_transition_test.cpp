#include "benchmarks/published/fabric_belt.h"
#include "solver/design/trial.h"
#include "solver/sizing.h"
#include "solver/spread.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

// Sized transitions and their spread, against solutions of their own.

using namespace swale;

namespace {

TransitionCase fabric() {
    TransitionCase transition = benchmark::fabric_transition(2400, 0, 2);
    transition.belt.rated_tension = 50;
    transition.limits.edge_tension = Limit{1.15, false, "a test"};
    transition.limits.tension_min = Limit{0, false, "a test"};
    transition.states = {{"45 N/mm", 45.0 * 1200, {}}, {"15 N/mm", 15.0 * 1200, {}}};
    return transition;
}

SizingBounds bounds(SizingAim aim) {
    SizingBounds within;
    within.aim = aim;
    within.shortest = 600;
    within.longest = 6000;
    within.highest_lift = 130;
    within.most_idlers = 1;
    return within;
}

bool passes(const TransitionCase& transition) {
    return as_trial(solve_transition(transition)).passes();
}

}  // namespace

TEST_CASE("a sized distance passes a solution of its own and one per cent less does not") {
    const Sizing sizing = size_transition(fabric(), bounds(SizingAim::distance));
    REQUIRE(sizing.best);
    TransitionCase shorter = sizing.best->transition;
    CHECK(passes(shorter));
    shorter.layout.distance /= 1.01;
    CHECK(!passes(shorter));
    CHECK(sizing.best->headroom >= 0);
    CHECK(sizing.reason.find("binds") != std::string::npos);
    REQUIRE(!sizing.levers.empty());
    CHECK(sizing.levers.front().parameter == "distance");
    CHECK(sizing.levers.front().slope > 0);
}

TEST_CASE("where no distance passes the limit in the way is named with what would have to give") {
    TransitionCase hopeless = fabric();
    hopeless.belt.rated_tension = 38;  // the belt's mean tension alone is over the limit
    const Sizing sizing = size_transition(hopeless, bounds(SizingAim::distance));
    CHECK(!sizing.best);
    CHECK(sizing.reason.find("edge tension / rated tension in \"45 N/mm\" stands in the way") != std::string::npos);
    const auto tension = std::ranges::find(sizing.levers, "tension", &Lever::parameter);
    REQUIRE(tension != sizing.levers.end());
    REQUIRE(tension->needed);
    CHECK(*tension->needed < 0);
    CHECK(!sizing.levers.front().needed);  // farther than a first-order change of the distance tells
}

#ifdef SWALE_LONG_TESTS

TEST_CASE("the best lift leaves more than any of a row of lifts") {
    TransitionCase transition = fabric();
    transition.layout.distance = 1500;
    const Sizing sizing = size_transition(transition, bounds(SizingAim::lift));
    REQUIRE(!sizing.arrangements.empty());
    const double best = as_trial(sizing.result).least()->share;
    for (const double lift : {0.0, 30.0, 60.0, 90.0, 130.0}) {
        TransitionCase other = transition;
        other.layout.pulley.lift = lift;
        CHECK(as_trial(solve_transition(other)).least()->share <= best + 3e-3);
    }
}

TEST_CASE("all together is no longer than the distance alone and its angles are those in stock") {
    SizingBounds within = bounds(SizingAim::all);
    within.angles = {0.2, 0.4};
    const Sizing alone = size_transition(fabric(), bounds(SizingAim::distance)), all = size_transition(fabric(), within);
    REQUIRE(alone.best);
    REQUIRE(all.best);
    CHECK(all.best->transition.layout.distance <= alone.best->transition.layout.distance);
    for (const Arrangement& one : all.arrangements)
        for (const Station& station : one.transition.layout.stations)
            CHECK((std::abs(station.angle - 0.2) < 1e-9 || std::abs(station.angle - 0.4) < 1e-9));
    CHECK(passes(all.best->transition));
}

TEST_CASE("the spread to first order is that of belts drawn at random") {
    TransitionCase transition = fabric();
    transition.belt.rated_tension = 62;
    transition.layout.distance = 2200;
    Tolerances tolerances;
    tolerances.tension = 0.08;
    tolerances.membrane_stiffness = 0.1;
    tolerances.bending_stiffness = 0.2;
    tolerances.lift = 5;
    constexpr int samples = 60;
    const ToleranceSpread spread = spread_of(transition, tolerances, bounds(SizingAim::distance), samples);
    REQUIRE(spread.why_none == "");
    CHECK(spread.samples == samples);
    const CriterionSpread& edge =
        *std::ranges::find(spread.criteria, "edge tension / rated tension", &CriterionSpread::criterion);
    // A sample of n has the deviation within 1/sqrt(2n) of it; three of these.
    CHECK(*edge.sampled_deviation == doctest::Approx(edge.deviation).epsilon(3 / std::sqrt(2.0 * samples)));
    const double noise = 3 * std::sqrt(0.25 / samples);
    CHECK(std::abs(*spread.sampled_any_exceeds - spread.any_exceeds) <= noise);
    REQUIRE(spread.distance);
    TransitionCase safe = transition;
    safe.layout.distance = *spread.distance;
    const ToleranceSpread at_distance = spread_of(safe, tolerances, bounds(SizingAim::distance), 0);
    for (const CriterionSpread& one : at_distance.criteria) CHECK(one.exceeds <= tolerances.exceed + 0.01);
}

#endif
