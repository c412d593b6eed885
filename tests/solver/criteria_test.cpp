#include "solver/criteria/criteria.h"

#include <doctest/doctest.h>

#include <cmath>

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

TEST_CASE("the force on one roll is held against the user's rating alone") {
    TransitionCase transition = case_with_two_states();
    std::vector<StateResult> states = solved(transition);
    for (StateResult& solved_state : states) {
        solved_state.roll_force_max = {3600, 10.0, 5.0, 2400, 400};
        solved_state.supports = {{"pulley", 0, {-6e4, 0, 0}, 0.0},
                                 {"station 1", 1200, {0, 0, 9e3}, {}},  // a held line
                                 {"set 1 centre", 2400, {0, 0, 900}, 0.0},
                                 {"set 1 wing +y", 2400, {0, 2400, 2700}, 0.0}};
    }
    CHECK(!named(judge(transition, states), "roll force", "running").passed);
    transition.limits.roll_force = Limit{4000, false, "test"};
    Judgement judgement = named(judge(transition, states), "roll force", "running");
    CHECK(judgement.passed == true);
    CHECK(*judgement.utilisation == doctest::Approx(0.9));
    CHECK(*judgement.error == 15);
    CHECK(judgement.where == "set 1 wing +y");

    states[0].roll_force_max.value = 4400;  // readings take in the running bays
    states[0].running_trough = RunningTrough{0.02, 5, {{"centre", 4400}, {"wing +y", 2000}}};
    judgement = named(judge(transition, states), "roll force", "running");
    CHECK(judgement.passed == false);
    CHECK(judgement.value == 4400);
    CHECK(judgement.where == "running trough");

    states[0].roll_force_max.value = std::nan("");
    judgement = named(judge(transition, states), "roll force", "running");
    CHECK(!judgement.value);
    CHECK(!judgement.passed);
}

TEST_CASE("lowest eigenvalues are held against zero as an advice, of another shape too") {
    const TransitionCase transition = case_with_two_states();
    std::vector<StateResult> states = solved(transition);
    states[0].eigenvalue_antisymmetric = -3e-6;
    states[0].mode_antisymmetric = BeltMode{{}, 2100, 350};
    states[0].others.emplace_back();
    states[0].others[0].eigenvalue_antisymmetric = 2e-6;
    const std::vector<Judgement> judgements = judge(transition, states);
    const Judgement& of_state = named(judgements, "antisymmetric wrinkling", "running");
    CHECK(of_state.value == -3e-6);
    CHECK(of_state.limit == 0);
    CHECK(of_state.advisory);
    CHECK(of_state.at_least);
    CHECK(!of_state.passed);
    CHECK(of_state.x == 2100);
    CHECK(named(judgements, "antisymmetric wrinkling", "running, other shape 1").value == 2e-6);
    CHECK(!named(judgements, "symmetric wrinkling", "running").value);
}

TEST_CASE("the first full set is seated as well as its least loaded roll") {
    const TransitionCase transition = case_with_two_states();
    std::vector<StateResult> states = solved(transition);
    const char* name = "set 1 roll force / running trough";
    states[0].supports = {{"set 1 centre", 2400, {0, 0, 90}, 0.0},
                          {"set 1 wing +y", 2400, {0, -300, 400}, 0.0},
                          {"set 2 centre", 3600, {0, 0, 0}, 3.0}};
    CHECK(!named(judge(transition, states), name, "running").value);  // no endless trough to compare with
    states[0].running_trough = RunningTrough{0.02, 5, {{"centre", 300}, {"wing +y", 250}}};
    Judgement seated = named(judge(transition, states), name, "running");
    CHECK(*seated.value == doctest::Approx(0.3));
    CHECK(seated.where == "set 1 centre");
    CHECK(!seated.limit);
    states[0].supports[1].force.setZero();
    seated = named(judge(transition, states), name, "running");
    CHECK(seated.value == 0);
    CHECK(seated.where == "set 1 wing +y");
}

TEST_CASE("the junction's radius is the farther face's distance over its bending strain") {
    TransitionCase transition = case_with_two_states();
    transition.belt.section.thickness = 14;
    transition.belt.section.underside = 5;
    std::vector<StateResult> states = solved(transition);
    states[0].junction_bending_strain_max = {0.02, 0.0004, {}, 2400, 237};
    const std::vector<Judgement> judgements = judge(transition, states);
    const Judgement& radius = named(judgements, "junction radius", "running");
    CHECK(*radius.value == doctest::Approx(450));
    CHECK(*radius.error == doctest::Approx(9));
    CHECK(!radius.limit);
    CHECK(!named(judgements, "junction radius", "starting").value);
}

TEST_CASE("the free span is the belt between the rolls that it lies on, the least of all sets and sides") {
    const TransitionCase transition = case_with_two_states();
    std::vector<StateResult> states = solved(transition);
    states[0].supports = {{"station 1 centre", 1200, Eigen::Vector3d::Zero(), 0.0, {{-200, 200}}},
                          {"station 1 wing +y", 1200, Eigen::Vector3d::Zero(), 5.0, {}},
                          {"set 1 centre", 2400, Eigen::Vector3d::Zero(), 0.0, {{-180, 170}}},
                          {"set 1 wing +y", 2400, Eigen::Vector3d::Zero(), 0.0, {{230, 500}}},
                          {"set 1 wing -y", 2400, Eigen::Vector3d::Zero(), 0.0, {{-500, -225}}},
                          {"set 2 centre", 3600, Eigen::Vector3d::Zero(), 0.0, {{-185, 185}}},
                          {"set 2 wing +y", 3600, Eigen::Vector3d::Zero(), 0.0, {{241, 500}}}};
    const std::vector<Judgement> judgements = judge(transition, states);
    const Judgement& span = named(judgements, "free span over the gap", "running");
    CHECK(span.value == 45);
    CHECK(span.where == "set 1");
    CHECK(!named(judgements, "free span over the gap", "starting").value);
}

TEST_CASE("on five rolls the free span is looked for over all four gaps and not over a roll that carries nothing") {
    const TransitionCase transition = case_with_two_states();
    std::vector<StateResult> states = solved(transition);
    const Eigen::Vector3d force = Eigen::Vector3d::Zero();
    states[0].supports = {{"set 1 centre", 2400, force, 0.0, {{-90, 90}}},
                          {"set 1 inner wing +y", 2400, force, 0.0, {{130, 290}}},
                          {"set 1 inner wing -y", 2400, force, 4.0, {}},
                          {"set 1 wing +y", 2400, force, 0.0, {{325, 500}}},
                          {"set 1 wing -y", 2400, force, 0.0, {{-500, -120}}}};
    CHECK(named(judge(transition, states), "free span over the gap", "running").value == 35);
}
