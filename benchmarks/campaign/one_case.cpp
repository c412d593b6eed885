#include "benchmarks/campaign/one_case.h"

#include "benchmarks/campaign/case_text.h"
#include "benchmarks/campaign/outcome.h"
#include "benchmarks/reading_names.h"
#include "solver/transition.h"

#include <cstdio>

namespace swale::benchmark {

namespace {

void print_readings(const StateResult& state) {
    Readings readings = state;
    std::printf("\n| reading | value | error | far-end error | x mm | y mm |\n|---|---|---|---|---|---|\n");
    for (std::size_t k = 0; k < reading_names.size(); ++k) {
        const Reading& r = *readings.all()[k];
        std::printf("| %s | %.5g | %.2g | %.2g | %.0f | %.0f |\n", reading_names[k], r.value, r.error.value_or(-1),
                    r.far_end_error.value_or(-1), r.x, r.y);
    }
}

void print_supports(const StateResult& state) {
    std::printf("\n| support | x mm | Fx N | Fy N | Fz N | lift-off mm |\n|---|---|---|---|---|---|\n");
    for (const SupportForce& s : state.supports)
        std::printf("| %s | %.0f | %.1f | %.1f | %.1f | %.2f |\n", s.name.c_str(), s.x, s.force.x(), s.force.y(), s.force.z(),
                    s.lift_off.value_or(0));
}

void print_state(const TransitionCase& transition, const TransitionResult& result, const StateResult& state) {
    const Record record = judge_state(transition, result, state);
    std::printf("\n## %s: %s\n\n%s\n", state.name.c_str(), record.outcome.c_str(), state.reason.c_str());
    for (const std::string& kind : record.kinds) std::printf("- %s\n", kind.c_str());
    for (const std::string& note : state.notes) std::printf("- note: %s\n", note.c_str());
    std::printf("\n| grid | unknowns | iterations | residual | tolerance |\n|---|---|---|---|---|\n");
    for (const NewtonRecord& n : state.newton)
        std::printf("| %s | %d | %d | %.1e | %.1e |\n", n.grid.c_str(), n.unknowns, n.iterations, n.residual, n.tolerance);
    if (state.status != SolveStatus::converged) return;
    std::printf("\nimbalance along %.1e, across %.1e, vertical %.1e; along a roll's axis %.1e; eigenvalues %.3g, %.3g N/mm^3\n",
                record.along, record.across, record.vertical, record.axial, record.eigenvalue_symmetric,
                record.eigenvalue_antisymmetric);
    print_readings(state);
    print_supports(state);
}

void tell(const ProgressEvent& event) {
    std::fprintf(stderr, "%s, %s, iteration %d: %.3e\n", event.state.c_str(), event.phase.c_str(), event.iteration,
                 event.residual);
}

}  // namespace

void print_one_case(const TransitionCase& transition, int index, bool whole_course) {
    std::printf("# Case %d: %s\n\n```toml\n%s```\n", index, case_line(transition).c_str(), case_text(transition).c_str());
    std::fflush(stdout);
    const TransitionResult result = solve_transition(transition, whole_course ? ProgressListener(tell) : ProgressListener());
    std::printf("\n%d sets, %.1f s\n", result.sets, result.cost.seconds);
    for (const StateResult& state : result.states) print_state(transition, result, state);
}

}  // namespace swale::benchmark
