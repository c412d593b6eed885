#include "solver/criteria/criteria.h"

#include <doctest/doctest.h>

using namespace swale;

namespace {

TransitionCase case_with_two_states() {
    TransitionCase transition;
    transition.belt.width = transition.layout.belt_width = 1000;
    transition.belt.rated_tension = 100;
    transition.layout.distance = 2400;
    transition.limits.edge_tension = Limit{1.15, false, "running"};
    transition.states = {{"running", 60e3, {}}, {"starting", 90e3, {}}};
    return transition;
}

StateResult state(const char* name) {
    StateResult result;
    result.name = name;
    result.status = SolveStatus::converged;
    result.edge_tension_max = {130, 1.0, 0.5, 2300, 500};
    result.tension_min = {2, {}, {}, 2400, 0};
    return result;
}

std::vector<StateResult> solved(const TransitionCase& transition) {
    std::vector<StateResult> states;
    for (const TensionState& asked : transition.states) states.push_back(state(asked.name.c_str()));
    return states;
}

const Judgement& named(const std::vector<Judgement>& judgements, const std::string& name, const std::string& of_state) {
    for (const Judgement& judgement : judgements)
        if (judgement.name == name && judgement.state == of_state) return judgement;
    FAIL("no judgement ", name, " of ", of_state);
    return judgements.front();
}

}  // namespace

TEST_CASE("each state is held against its own limits and those without against the case's") {
    TransitionCase transition = case_with_two_states();
    transition.states[1].limits = transition.limits;
    transition.states[1].limits->edge_tension = Limit{1.5, false, "starting"};
    const std::vector<Judgement> judgements = judge(transition, solved(transition));
    const Judgement &running = named(judgements, "edge tension / rated tension", "running"),
                    &starting = named(judgements, "edge tension / rated tension", "starting");
    CHECK(running.limit == 1.15);
    CHECK(running.passed == false);
    CHECK(starting.limit == 1.5);
    CHECK(starting.passed == true);
    CHECK(starting.source == "starting");
    CHECK(*starting.utilisation == doctest::Approx(1.3 / 1.5));
    CHECK(*starting.error == doctest::Approx(0.015));
}

TEST_CASE("another shape of a state is held against that state's limits") {
    TransitionCase transition = case_with_two_states();
    transition.states[1].limits = Limits{};
    std::vector<StateResult> states = solved(transition);
    states[1].others.emplace_back();
    CHECK(!named(judge(transition, states), "edge tension / rated tension", "starting, other shape 1").limit);
    transition.states[1].limits.reset();
    CHECK(named(judge(transition, states), "edge tension / rated tension", "starting, other shape 1").limit == 1.15);
}
