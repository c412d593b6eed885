#include "solver/sizing.h"

#include <doctest/doctest.h>

#include <cmath>

using namespace swale;

namespace {

// Headroom of a strip whose excess goes with 1/L^2, none left at the root.
DistanceTrial strip(double root, int* trials = nullptr) {
    return [=](double distance) {
        if (trials) ++*trials;
        const double headroom = 1 - root * root / (distance * distance);
        return SizingStep{distance, headroom >= 0, headroom, "edge"};
    };
}

StateResult state_with_edge_tension(double tension) {
    StateResult state;
    state.name = "running";
    state.status = SolveStatus::converged;
    state.edge_tension_max.value = tension;
    return state;
}

Judgement edge(double value, double error) {
    return {"edge tension / rated tension", "running", value, 1.15, "", value / 1.15, value <= 1.15, false, "", 0, 0, error};
}

}  // namespace

TEST_CASE("the shortest distance passes, is found closely and in few trials from either side") {
    for (const double start : {700.0, 2000.0, 9000.0}) {
        int trials = 0;
        const Sizing sizing = shortest_distance({600, 12000, start}, strip(1750, &trials));
        REQUIRE(sizing.distance);
        CHECK(*sizing.distance >= 1750);
        CHECK(*sizing.distance <= 1750 * 1.005);
        CHECK(trials <= 11);  // of which five only to come near from 9000
        CHECK(sizing.steps.size() == static_cast<std::size_t>(trials));
        CHECK(sizing.step_at(*sizing.distance).passed);
        CHECK(sizing.reason == "edge binds");
    }
}

TEST_CASE("a kink or a jump in the headroom does not fool the search") {
    const auto jump = [](double distance) {
        return SizingStep{distance, distance >= 3210, distance >= 3210 ? 0.4 : -1, "jump"};
    };
    const Sizing over_jump = shortest_distance({600, 12000, 2000}, jump);
    REQUIRE(over_jump.distance);
    CHECK(*over_jump.distance >= 3210);
    CHECK(*over_jump.distance <= 3210 * 1.005);
    const auto kink = [](double distance) {
        const double headroom = std::min(1 - 1750.0 * 1750 / (distance * distance), (distance - 2500) / 1e5);
        return SizingStep{distance, headroom >= 0, headroom, "kink"};
    };
    const Sizing over_kink = shortest_distance({600, 12000, 2000}, kink);
    REQUIRE(over_kink.distance);
    CHECK(*over_kink.distance == doctest::Approx(2500).epsilon(0.005));
}

TEST_CASE("the bounds are kept and said") {
    const Sizing none = shortest_distance({600, 1500, 1000}, strip(1750));
    CHECK(!none.distance);
    CHECK(none.reason.find("even at 1500 mm edge stands in the way") == 0);
    const Sizing all = shortest_distance({2000, 5000, 3000}, strip(1750));
    CHECK(*all.distance == 2000);
    CHECK(all.reason == "the shortest that was allowed");
    for (const SizingStep& step : shortest_distance({1000, 3000, 9000}, strip(1750)).steps) {
        CHECK(step.distance >= 1000);
        CHECK(step.distance <= 3000);
    }
}

TEST_CASE("a step passes only with the estimated error on top") {
    TransitionResult result;
    result.states = {state_with_edge_tension(90)};
    result.criteria = {edge(1.14, 0.005)};
    CHECK(sizing_step(2000, result).passed);
    CHECK(sizing_step(2000, result).headroom == doctest::Approx(0.005 / 1.15));
    result.criteria = {edge(1.14, 0.02)};
    CHECK(!sizing_step(2000, result).passed);
    CHECK(sizing_step(2000, result).binding == "edge tension / rated tension in \"running\"");
}

TEST_CASE("a lower limit of zero is measured by the edge tension; what only advises is left out") {
    TransitionResult result;
    result.states = {state_with_edge_tension(80)};
    Judgement lowest{"lowest tension", "running", 4.0, 0.0, "N/mm", {}, true, false, "", 0, 0, 0.0, true};
    Judgement advice{"edge strain", "running", 0.02, 0.008, "1", 2.5, {}, true, "", 0, 0};
    result.criteria = {lowest, advice};
    CHECK(sizing_step(2000, result).headroom == doctest::Approx(0.05));
    result.criteria[0].value = -4.0;
    CHECK(!sizing_step(2000, result).passed);
}

TEST_CASE("a state without a solution does not pass and says why") {
    TransitionResult result;
    result.states = {state_with_edge_tension(80)};
    result.states[0].status = SolveStatus::not_converged;
    result.states[0].reason = "residual 1 > 2";
    CHECK(!sizing_step(2000, result).passed);
    CHECK(sizing_step(2000, result).binding.find("residual 1 > 2") != std::string::npos);
}

TEST_CASE("bounds between whole mm end the search") {
    const Sizing all = shortest_distance({609.6, 14630.4, 1200}, strip(100));
    CHECK(*all.distance == 610);
    const Sizing none = shortest_distance({609.6, 1219.2, 1200}, strip(3000));
    CHECK(!none.distance);
    CHECK(none.steps.back().distance == 1219);
}

TEST_CASE("another shape of a state that breaks a limit stands in the way") {
    TransitionResult result;
    result.states = {state_with_edge_tension(80)};
    Judgement other = edge(1.3, 0);
    other.state = "running, other shape 1";
    result.criteria = {edge(0.9, 0), other};
    CHECK(!sizing_step(2000, result).passed);
    CHECK(sizing_step(2000, result).binding.find("other shape 1") != std::string::npos);
}
