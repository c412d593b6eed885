#include "benchmarks/published/fabric_belt.h"
#include "solver/design/single_change.h"
#include "solver/design/state_tangent.h"
#include "solver/transition.h"
#include "solver/transition/restored_model.h"
#include "tests/mesh/measured_as_drawn.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

// Derivatives from the tangent against the differences of two whole solutions.

using namespace swale;

namespace {

// The lowest tension is a sum of nearly as large parts of either sign: what it is compared with is that of the edge.
double scale_of(const Judgement& judgement, const std::vector<Judgement>& all) {
    double scale = std::abs(judgement.value.value_or(0));
    if (judgement.name != "lowest tension") return scale;
    for (const Judgement& other : all)
        if (other.name == "edge tension / rated tension") scale = std::max(scale, 10 * std::abs(other.value.value_or(0)));
    return scale;
}

// Tolerance: 1e-4 of the difference; and where a value changes by a hundredth of a share, 2e-5 of the value for as large a
// change of the parameter: forces are found to 1e-9, and the changes are shares of 1e-4.
void check_one(const Sensitivity& found, const Judgement& ahead, const Judgement& behind, double change, double floor) {
    if (!ahead.value || !behind.value) return;
    const double difference = (*ahead.value - *behind.value) / (2 * change);
    INFO(found.parameter, ", ", found.criterion, ": ", found.derivative.value(), " for ", difference);
    CHECK(found.criterion == ahead.name);
    CHECK(std::abs(*found.derivative - difference) <= 1e-4 * std::abs(difference) + floor);
}

void check_against_differences(const TransitionCase& transition, const std::vector<Parameter>& parameters) {
    const TransitionResult result = solve_transition(transition);
    const TensionState& state = transition.states.front();
    REQUIRE_MESSAGE(result.states.front().status == SolveStatus::converged, result.states.front().reason);
    const BeltShape& shape = result.states.front().shape;
    const StateTangent tangent(transition, state, result.sets, restored_model(transition, result.sets, state, shape),
                               shape.control_points);
    REQUIRE(tangent.why_none() == "");
    const std::vector<Sensitivity> found = sensitivities(transition, result, parameters);
    auto row = found.begin();
    for (const Parameter& parameter : parameters) {
        const double change = 5 * parameter.step, value = parameter.value(transition, state);
        const BeltMotion motion = tangent.motion(parameter);
        const auto ahead = tangent.solved(parameter, change, motion), behind = tangent.solved(parameter, -change, motion);
        REQUIRE(!ahead.empty());
        REQUIRE(ahead.size() == behind.size());
        for (std::size_t k = 0; k < ahead.size(); ++k, ++row)
            check_one(*row, ahead[k], behind[k], change, 2e-5 * scale_of(ahead[k], ahead) / std::max(std::abs(value), 1.0));
    }
}

TransitionCase fabric() {
    TransitionCase transition = benchmark::fabric_transition(2000, 80, 2);
    transition.layout.stations = {{1100, 0.35, {}, Support::rolls, {}}};
    transition.limits.lift_off = Limit{5, false, "a test"};
    return transition;
}

}  // namespace

TEST_CASE("derivatives with respect to the geometry are the differences of whole solutions") {
    check_against_differences(fabric(), geometry_parameters(fabric()));
}

#ifdef SWALE_LONG_TESTS

TEST_CASE("derivatives with respect to tension and belt are the differences of whole solutions") {
    check_against_differences(fabric(), belt_parameters(fabric()));
}

TEST_CASE("derivatives of a belt that ends at a plane count the length that it is given") {
    TransitionCase transition = fabric();
    transition.layout.trough.sets = 2;
    check_against_differences(transition, {geometry_parameters(transition).front(), belt_parameters(transition).front()});
}

TEST_CASE("derivatives under bulk count how it moves with the belt") {
    TransitionCase transition = fabric();
    transition.layout.pulley.end = BeltEnd::head;
    transition.bulk = Bulk{1.2e-9, 0.35, 0.6, {}, 1500.0};
    transition.states.front().loaded = true;
    transition.states.front().total = 60e3;
    check_against_differences(transition, {geometry_parameters(transition).front()});
}

TEST_CASE("derivatives of a surveyed transition are the differences of whole solutions") {
    TransitionCase transition = fabric();
    const std::vector<IdlerSet> sets = idler_sets(transition.layout, 1);
    MeasuredSet station = measured_as_drawn(transition.layout, sets[0]), first = measured_as_drawn(transition.layout, sets[1]);
    station.rolls[1].left.z() += 4;  // both wings alike
    station.rolls[2].right.z() += 4;
    station.angle = slope_of(station.rolls[1]);
    first.height = 8;
    transition.layout.stations[0].measured = std::make_shared<const MeasuredSet>(station);
    transition.layout.stations[0].angle = station.angle;
    measure_first_set(transition.layout, first);
    check_against_differences(transition, parameters_of_standing(transition, transition.states.front()));
}

#endif

TEST_CASE("a belt in steady run-on has no derivatives and says why") {
    TransitionCase transition = fabric();
    transition.layout.stations.clear();
    transition.layout.pulley.end = BeltEnd::head;
    transition.layout.pulley.run_on = RunOn::steady;
    const std::vector<Sensitivity> none =
        sensitivities(transition, solve_transition(transition), {geometry_parameters(transition).front()});
    REQUIRE(!none.empty());
    CHECK(!none.front().derivative);
    CHECK(none.front().why.find("friction") != std::string::npos);
}
