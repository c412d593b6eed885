#include "solver/design/distance_search.h"
#include "solver/design/optimum.h"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <functional>
#include <vector>

using namespace swale;

namespace {

using Headrooms = std::function<double(double distance)>;

// Headroom of a strip whose excess goes with 1/L^2, none left at the root.
Headrooms strip(double root) {
    return [=](double distance) { return 1 - root * root / (distance * distance); };
}

struct Found {
    std::vector<DistanceTrial> tried;
    std::optional<double> distance;
};

// Slopes by difference, or none.
Found closed_in(double shortest, double longest, double start, const Headrooms& headroom, bool slopes) {
    DistanceSearch search(shortest, longest, 0.005);
    Found found;
    const auto try_at = [&](double distance) {
        Headroom edge{"edge tension / rated tension", "running", headroom(distance), 1, {}};
        if (slopes) edge.slopes = {(headroom(distance + 0.01) - headroom(distance - 0.01)) / 0.02};
        found.tried.push_back({distance, {{edge}, ""}});
        search.take(found.tried.back());
    };
    try_at(std::clamp(start, std::ceil(shortest), std::floor(longest)));
    while (const auto guess = search.next()) {
        REQUIRE(found.tried.size() < 40);
        try_at(guess->distance);
    }
    if (search.passing()) found.distance = search.passing()->distance;
    return found;
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

TEST_CASE("the shortest distance passes and is found closely in few trials from either side") {
    for (const double start : {700.0, 2000.0, 9000.0})
        for (const bool slopes : {true, false}) {
            const Found found = closed_in(600, 12000, start, strip(1750), slopes);
            REQUIRE(found.distance);
            CHECK(*found.distance >= 1750);
            CHECK(*found.distance <= 1750 * 1.005 + 1);
            CHECK(found.tried.size() <= (slopes ? 8 : 12));
        }
    CHECK(closed_in(600, 12000, 2000, strip(1750), true).tried.size() <= 4);
}

TEST_CASE("a distance just below the answer was seen to fail") {
    const Found found = closed_in(600, 12000, 2000, strip(1750), true);
    const auto fails_near = [&](const DistanceTrial& t) {
        return !t.trial.passes() && t.distance >= *found.distance / 1.005 - 1;
    };
    CHECK(std::ranges::any_of(found.tried, fails_near));
}

TEST_CASE("a kink or a jump in the headroom does not fool the search") {
    const auto jump = [](double distance) { return distance >= 3210 ? 0.4 : -1.0; };
    const auto kink = [](double distance) {
        return std::min(1 - 1750.0 * 1750 / (distance * distance), (distance - 2500) / 1e5);
    };
    for (const bool slopes : {true, false}) {
        const Found over_jump = closed_in(600, 12000, 2000, jump, slopes),
                    over_kink = closed_in(600, 12000, 2000, kink, slopes);
        REQUIRE(over_jump.distance);
        CHECK(*over_jump.distance >= 3210);
        CHECK(*over_jump.distance <= 3210 * 1.005 + 1);
        REQUIRE(over_kink.distance);
        CHECK(*over_kink.distance == doctest::Approx(2500).epsilon(0.005));
    }
}

TEST_CASE("the bounds are kept whole mm inside") {
    CHECK(!closed_in(600, 1500, 1000, strip(1750), true).distance);
    CHECK(*closed_in(2000, 5000, 3000, strip(1750), true).distance == 2000);
    CHECK(*closed_in(609.6, 14630.4, 1200, strip(100), true).distance == 610);
    const Found none = closed_in(609.6, 1219.2, 1200, strip(3000), true);
    CHECK(!none.distance);
    CHECK(none.tried.back().distance == 1219);
    for (const DistanceTrial& trial : closed_in(1000, 3000, 9000, strip(1750), true).tried) {
        CHECK(trial.distance >= 1000);
        CHECK(trial.distance <= 3000);
    }
}

TEST_CASE("a whole solution that fails where trials passed sends the search on to a longer distance") {
    DistanceSearch search(600, 12000, 0.005);
    Headroom passes{"edge", "running", 0.001, 1, {1e-3}}, fails{"edge", "running", -0.002, 1, {1e-3}};
    search.take({2000, {{passes}, ""}});
    search.take({1991, {{Headroom{"edge", "running", -0.009, 1, {}}}, ""}});
    CHECK(!search.next());
    search.take({2000, {{fails}, ""}});
    REQUIRE(search.next());
    CHECK(search.next()->distance > 2000);
    CHECK(search.next()->distance < 2020);
}

TEST_CASE("the most that two limits leave lies where they meet") {
    const Parameter plain{"x", "1", 1e-3, false, {}, {}};
    const std::vector<Variable> variables{{plain, 0, 10}, {plain, -5, 5}};
    // Falls with x, and grows with x but falls away from y = 1: they meet at x = 4, y = 1.
    const ValuesTrial trial = [](const std::vector<double>& v) {
        Headroom one{"one", "running", 1 - 0.1 * v[0], 1, {-0.1, 0}};
        Headroom two{"two", "running", 0.2 + 0.1 * v[0] - 0.05 * std::pow(v[1] - 1, 2), 1, {0.1, -0.1 * (v[1] - 1)}};
        return Trial{{one, two}, ""};
    };
    const Optimum most = most_headroom(variables, {{1, -3}, {9, 4}}, trial, 20);
    CHECK(most.least() == doctest::Approx(0.6).epsilon(0.005));
    CHECK(most.values[0] == doctest::Approx(4).epsilon(0.02));
    const Optimum least = least_first_value(variables, {9, 4}, 0.3, trial, 20);
    CHECK(least.values[0] == doctest::Approx(1).epsilon(0.05));
    CHECK(least.least() >= 0.3);
}

TEST_CASE("a step passes only with the estimated error on top") {
    TransitionResult result;
    result.states = {state_with_edge_tension(90)};
    result.criteria = {edge(1.14, 0.005)};
    CHECK(as_trial(result).passes());
    CHECK(as_trial(result).least()->share == doctest::Approx(0.005 / 1.15));
    result.criteria = {edge(1.14, 0.02)};
    CHECK(!as_trial(result).passes());
    CHECK(as_trial(result).least()->name() == "edge tension / rated tension in \"running\"");
}

TEST_CASE("a lower limit of zero is measured by the edge tension; what only advises is left out") {
    TransitionResult result;
    result.states = {state_with_edge_tension(80)};
    Judgement lowest{"lowest tension", "running", 4.0, 0.0, "N/mm", {}, true, false, "", 0, 0, 0.0, true};
    Judgement advice{"edge strain", "running", 0.02, 0.008, "1", 2.5, {}, true, "", 0, 0};
    result.criteria = {lowest, advice};
    CHECK(as_trial(result).least()->share == doctest::Approx(0.05));
    result.criteria[0].value = -4.0;
    CHECK(!as_trial(result).passes());
}

TEST_CASE("a state without a solution does not pass and says why") {
    TransitionResult result;
    result.states = {state_with_edge_tension(80)};
    result.states[0].status = SolveStatus::not_converged;
    result.states[0].reason = "residual 1 > 2";
    CHECK(!as_trial(result).passes());
    CHECK(as_trial(result).why_none.find("residual 1 > 2") != std::string::npos);
}

TEST_CASE("another shape of a state that breaks a limit stands in the way") {
    TransitionResult result;
    result.states = {state_with_edge_tension(80)};
    Judgement other = edge(1.3, 0);
    other.state = "running, other shape 1";
    result.criteria = {edge(0.9, 0), other};
    CHECK(!as_trial(result).passes());
    CHECK(as_trial(result).least()->name().find("other shape 1") != std::string::npos);
}
