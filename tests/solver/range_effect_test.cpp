#include "solver/design/range_effect.h"

#include <doctest/doctest.h>

using namespace swale;

namespace {

StudiedState state(const std::string& name, double edge, double centre, double lowest) {
    Readings readings;
    readings.edge_strain_max.value = edge;
    readings.centre_strain_min.value = centre;
    readings.edge_tension_max.value = 100;
    readings.tension_min.value = lowest;
    readings.junction_bending_strain_max.value = 0.02;
    return {name, readings, ""};
}

enum { edge_strain, centre_strain, edge_tension, lowest_tension, junction_strain };

const StudiedRun as_given{{state("full", 0.010, 0.004, 50), state("empty", 0.005, 0.001, 0)}, {}};

}  // namespace

TEST_CASE("a range's effect is what lies between its ends in the state where that is most") {
    const StudiedRun low{{state("full", 0.009, 0.004, 50), state("empty", 0.004, 0.001, -5)}, {}};
    const StudiedRun high{{state("full", 0.011, 0.003, 50), state("empty", 0.0055, 0.001, 5)}, {}};
    const auto effects = range_effects(as_given, low, high);
    CHECK(effects[edge_strain].swing == doctest::Approx(0.3));
    CHECK(effects[edge_strain].state == "empty");
    CHECK(effects[edge_strain].low == 0.004);
    // What may vanish is compared with the edge.
    CHECK(effects[centre_strain].swing == doctest::Approx(0.1));
    CHECK(effects[centre_strain].state == "full");
    CHECK(effects[lowest_tension].swing == doctest::Approx(0.1));
    CHECK(effects[junction_strain].swing == 0);
    CHECK(StudiedDatum{{}, low, high, effects}.largest_swing() == doctest::Approx(0.3));
}

TEST_CASE("a value as given that lies outside those at the ends counts") {
    const StudiedRun both{{state("full", 0.009, 0.004, 50), state("empty", 0.005, 0.001, 0)}, {}};
    CHECK(range_effects(as_given, both, both)[edge_strain].swing == doctest::Approx(0.1));
}

TEST_CASE("an end without a solution leaves the other and a state without any leaves the other states") {
    StudiedRun low = as_given;
    low.states[0].readings.reset();
    const StudiedRun high{{state("full", 0.012, 0.004, 50), state("empty", 0.005, 0.001, 0)}, {}};
    const auto effects = range_effects(as_given, low, high);
    CHECK(effects[edge_strain].swing == doctest::Approx(0.2));
    CHECK_FALSE(effects[edge_strain].low.has_value());

    StudiedRun half_solved = as_given;
    half_solved.states[0].readings.reset();
    CHECK(range_effects(half_solved, low, high)[edge_strain].swing == 0);
}
