#include "io/case_file.h"
#include "io/result_database.h"
#include "io/whole_file.h"
#include "solver/transition.h"
#include "tests/io/held_run.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>

using namespace swale;

namespace {

void check_same(double given, double restored) {
    CHECK(std::abs(restored - given) <= 1e-10 * (1 + std::abs(given)));
}

void check_same_readings(const StateResult& given, const StateResult& restored) {
    check_same(given.tension, restored.tension);
    check_same(given.far_strain, restored.far_strain);
    check_same(given.edge_strain_max.value, restored.edge_strain_max.value);
    check_same(given.centre_strain_min.value, restored.centre_strain_min.value);
    check_same(given.edge_tension_max.value, restored.edge_tension_max.value);
    check_same(given.tension_min.value, restored.tension_min.value);
    check_same(given.junction_bending_strain_max.value, restored.junction_bending_strain_max.value);
    check_same(given.surface_strain_max.value, restored.surface_strain_max.value);
}

/// "... residual 2.1e-9 ..." -> 2.1e-9
double residual_in(const std::string& sentence) {
    const size_t place = sentence.find("residual ");
    return place == std::string::npos ? INFINITY : std::strtod(sentence.c_str() + place + 9, nullptr);
}

}  // namespace

TEST_CASE("a stored run is restored without solving and gives the same readings in equilibrium") {
    const ScratchFolder folder;
    const RunRecord record = held_run(2);
    REQUIRE(record.result.states.at(0).status == SolveStatus::converged);
    write_whole_file(folder.path() / "result.h5", result_database(record, "2026-01-02T03:04:05Z"));

    const StoredRun stored = read_result_database(folder.path() / "result.h5");
    const TransitionCase transition = parse_case(stored.case_text, stored.case_file);
    const StoredState& state = stored.states.at(0);
    const StateResult restored = restore_state(transition, stored.sets, state.asked, state.shape);
    check_same_readings(record.result.states[0], restored);
    CAPTURE(restored.reason);
    CHECK(residual_in(restored.reason) < 1e-7);

    const StateResult& solved = record.result.states[0];
    REQUIRE(solved.mode_symmetric);
    REQUIRE(state.mode_symmetric);
    CHECK(state.mode_symmetric->motion == solved.mode_symmetric->motion);
    CHECK(state.mode_symmetric->motion.size() == restored.surface.points.size());
    CHECK(state.mode_symmetric->x == solved.mode_symmetric->x);
    REQUIRE(state.mode_antisymmetric);
    CHECK(state.mode_antisymmetric->y == solved.mode_antisymmetric->y);
}
