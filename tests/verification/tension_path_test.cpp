#include "solver/transition/tension_path.h"

#include "tests/verification/slack_belt.h"

#include <doctest/doctest.h>

using namespace swale;

namespace {

TensionPath path_of(const TransitionCase& transition, int rows) {
    const GridTask task = coarse_task(transition);
    NewtonTimes times;
    return tension_path(transition, task.sets, task.patch_in_space, false, rows, {}, times);
}

TensionPathRow row(double tension, std::optional<double> symmetric) {
    TensionPathRow made;
    made.tension = tension;
    made.eigenvalue_symmetric = symmetric;
    return made;
}

}  // namespace

TEST_CASE("as the tension falls strains and the stiffness against tipping fall with it") {
    TransitionCase transition = benchmark::fabric_transition(2000, 0, 1);
    transition.layout.trough.sets = 2;
    transition.states = {{"low", 6e3, {}}, {"high", 48e3, {}}};
    const TensionPath path = path_of(transition, 4);
    REQUIRE(path.rows.size() == 4);
    CHECK(path.rows.front().tension == 48e3);
    CHECK(path.rows.back().tension == 6e3);
    for (std::size_t k = 0; k < path.rows.size(); ++k) {
        REQUIRE_MESSAGE(path.rows[k].converged, path.rows[k].reason);
        REQUIRE((path.rows[k].eigenvalue_symmetric && path.rows[k].eigenvalue_antisymmetric));
        if (k == 0) continue;
        CHECK(path.rows[k].edge_strain_max.value < path.rows[k - 1].edge_strain_max.value);
        CHECK(path.rows[k].centre_strain_min.value < path.rows[k - 1].centre_strain_min.value);
        CHECK(*path.rows[k].eigenvalue_antisymmetric < *path.rows[k - 1].eigenvalue_antisymmetric);
    }
    CHECK(!path.antisymmetric_zero);
}

TEST_CASE("one tension alone is followed down to a quarter of it") {
    TransitionCase transition = benchmark::fabric_transition(2000, 0, 2);
    transition.layout.trough.sets = 2;
    const TensionPath path = path_of(transition, 2);
    REQUIRE(path.rows.size() == 2);
    CHECK(path.rows[1].tension == doctest::Approx(path.rows[0].tension / 4));
}

TEST_CASE("a crossing of zero lies on the straight line between two rows and skips those without eigenvalue") {
    const auto of = &TensionPathRow::eigenvalue_symmetric;
    CHECK(*zero_crossing({row(40, 3), row(30, 1), row(20, {}), row(10, -1)}, of) == doctest::Approx(20));
    CHECK(*zero_crossing({row(40, -1), row(30, 3)}, of) == doctest::Approx(37.5));
    CHECK(!zero_crossing({row(40, 3), row(10, 1)}, of));
    CHECK(!zero_crossing({}, of));
}
