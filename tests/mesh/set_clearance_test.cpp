#include "mesh/set_clearance.h"

#include <doctest/doctest.h>

using namespace swale;

namespace {

// Pulley of 500 mm, rolls of 125 mm, tops level: the axes are 187.5 mm apart in height.
TransitionLayout flush() {
    TransitionLayout layout;
    layout.pulley.diameter = 500;
    layout.pulley.lift = 0;
    layout.trough.roll_diameter = 125;
    layout.trough.centre_offset = 0;
    return layout;
}

}  // namespace

TEST_CASE("rolls clear the pulley where the axes are both radii apart, sqrt(312.5^2 - 187.5^2) = 250 mm for level tops") {
    CHECK(stands_in_pulley(flush(), 249, 0, Support::rolls));
    CHECK_FALSE(stands_in_pulley(flush(), 251, 0, Support::rolls));
}

TEST_CASE("beside a lowered pulley a set may stand closer, with its centre roll before it not as close") {
    TransitionLayout layout = flush();
    layout.pulley.lift = -125;  // axes 312.5 mm apart in height
    CHECK_FALSE(stands_in_pulley(layout, 1, 0, Support::rolls));
    layout = flush();
    layout.trough.centre_offset = -40;
    CHECK(stands_in_pulley(layout, 289, 0, Support::rolls));
    CHECK_FALSE(stands_in_pulley(layout, 291, 0, Support::rolls));
}

TEST_CASE("held profiles have no rolls that stand in anything") {
    TransitionLayout layout = flush();
    CHECK_FALSE(stands_in_pulley(layout, 10, 0, Support::held));
    layout.pulley.support = Support::held;
    CHECK_FALSE(stands_in_pulley(layout, 10, 0, Support::rolls));
}

TEST_CASE("two sets are a roll apart and the centre roll's offset, whichever way it is") {
    Trough trough;
    trough.roll_diameter = 125;
    trough.centre_offset = -40;
    CHECK(clear_of_rolls(trough) == 165);
}
