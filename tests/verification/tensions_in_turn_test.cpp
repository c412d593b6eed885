#include "benchmarks/published/fabric_belt.h"
#include "solver/transition.h"

#include <doctest/doctest.h>

// Tensions of one transition, solved down from the highest, against each by itself.

using namespace swale;

namespace {

TransitionCase falling_tensions() {
    TransitionCase transition = benchmark::fabric_transition(2000, 60, 2);
    transition.layout.trough.sets.reset();
    transition.states = {{"high", 40e3, {}}, {"middle", 30e3, {}}, {"low", 20e3, {}}};
    return transition;
}

TransitionResult solved_alone(TransitionCase transition, std::size_t k) {
    transition.states = {transition.states[k]};
    return solve_transition(transition);
}

int iterations_on(const std::string& grid, const TransitionResult& result) {
    for (const NewtonRecord& record : result.states.front().newton)
        if (record.grid == grid) return record.iterations;
    return 0;
}

}  // namespace

TEST_CASE("tensions solved in turn are cases of their own, as each by itself, from a nearer start") {
    const TransitionCase transition = falling_tensions();
    const std::vector<TransitionResult> carried = solve_tensions(transition);
    REQUIRE(carried.size() == 3);
    int saved = 0;
    for (std::size_t k = 0; k < carried.size(); ++k) {
        const TransitionResult alone = solved_alone(transition, k);
        REQUIRE(carried[k].states.size() == 1);
        StateResult state = carried[k].states[0], other = alone.states[0];
        CHECK(state.name == transition.states[k].name);
        REQUIRE_MESSAGE(state.status == SolveStatus::converged, state.reason);
        CHECK(carried[k].criteria.size() == alone.criteria.size());
        for (std::size_t r = 0; r < state.all().size(); ++r) {
            const Reading &reading = *state.all()[r], &by_itself = *other.all()[r];
            CHECK(std::abs(reading.value - by_itself.value) < *by_itself.error + *by_itself.far_end_error);
        }
        // The end of an endless trough may miss its place by 1 mm, in 6 m.
        CHECK(state.edge_strain_max.value == doctest::Approx(other.edge_strain_max.value).epsilon(5e-4));
        saved += iterations_on("fine grid", alone) - iterations_on("fine grid", carried[k]);
    }
    CHECK(saved > 0);
}

TEST_CASE("tensions solved in turn give the same bits each time") {
    const TransitionCase transition = falling_tensions();
    const auto once = solve_tensions(transition), again = solve_tensions(transition);
    for (std::size_t k = 0; k < once.size(); ++k)
        CHECK(once[k].states[0].shape.control_points == again[k].states[0].shape.control_points);
}
