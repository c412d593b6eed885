#include "solver/wear/return_solution.h"

#include "solver/newton/newton.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace swale {

namespace {

constexpr double tension_accuracy = 0.005;
constexpr int most_rounds = 8;

// The force on the roll is wanted to a tenth of a per cent: a residual of 1e-5 of the forces is ample.
NewtonSettings settings_of_return() {
    NewtonSettings settings;
    settings.tolerance = 1e-5;
    settings.iterations = 120;
    return settings;
}

}  // namespace

ReturnSolution solve_return(const ReturnRun& run, const BeltMemory& memory, const Patch& patch, const ControlPoints& start) {
    ReturnSolution solution{start, {}};
    double mid_span = start(1, patch.index(0, patch.across.size() - 1));
    for (int round = 0; round < most_rounds; ++round) {
        const ReturnModel model = return_model(run, memory, patch, mid_span);
        const NewtonOutcome outcome =
            minimise(model.system, model.system.supports().project(solution.points), settings_of_return());
        solution.points = model.system.supports().expand(outcome.q);
        const double lacking = run.tension - tension_at_mid_span(model, solution.points);
        const bool there = std::abs(lacking) < tension_accuracy * run.tension;
        if (there || !outcome.converged || round + 1 == most_rounds) {
            solution.contact = read_contact(run, model, solution.points);
            solution.contact.converged = outcome.converged && there;
            solution.contact.reason =
                outcome.sentence + fmt::format(", tension {:.4g} N of {:.4g} N", run.tension - lacking, run.tension);
            break;
        }
        mid_span += lacking * run.spacing / 2 / (run.width * run.section.membrane(0, 0));
    }
    return solution;
}

// Where one step from the flat belt finds nothing, the memory grows in several.
RollContact contact_on_return_roll(const ReturnRun& run, const BeltMemory& memory, const ReturnGrid& grid) {
    const bool half = memory.left_crease == memory.right_crease;
    const Patch patch = return_patch(run, half, grid);
    RollContact contact;
    for (const int steps : {1, 4, 12}) {
        ControlPoints points = flat_on_roll(run, patch);
        for (int step = 1; step <= steps; ++step) {
            const double share = static_cast<double>(step) / steps;
            const BeltMemory part{share * memory.cupping, share * memory.left_crease, share * memory.right_crease};
            ReturnSolution solution = solve_return(run, part, patch, points);
            contact = std::move(solution.contact);
            if (!contact.converged) break;
            points = std::move(solution.points);
        }
        if (contact.converged) break;
    }
    return contact;
}

}  // namespace swale
