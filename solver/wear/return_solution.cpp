#include "solver/wear/return_solution.h"

#include "solver/newton/newton.h"

#include <fmt/format.h>

#include <algorithm>
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

// Looks for the place of mid-span at which its reaction is the tension: first by the stretch of a straight belt, then by the
// secant, since a belt that hangs through gives way more easily.
class MidSpan {
  public:
    MidSpan(const ReturnRun& run, double place)
        : place_(place), compliance_(run.spacing / 2 / (run.width * run.section.membrane(0, 0))) {}

    double place() const { return place_; }

    void move(double lacking) {
        if (moved_ != 0 && lacking != lacking_before_) {
            const double secant = moved_ / (lacking_before_ - lacking);
            if (secant > 0) compliance_ = std::clamp(secant, compliance_ / 4, compliance_ * 4);
        }
        moved_ = compliance_ * lacking;
        lacking_before_ = lacking;
        place_ += moved_;
    }

  private:
    double place_, compliance_, moved_ = 0, lacking_before_ = 0;
};

}  // namespace

ReturnSolution solve_return(const ReturnRun& run, const BeltMemory& memory, const Patch& patch, const ControlPoints& start) {
    ReturnSolution solution{start, {}};
    MidSpan mid_span(run, start(1, patch.index(0, patch.across.size() - 1)));
    for (int round = 1; round <= most_rounds; ++round) {
        const ReturnModel model = return_model(run, memory, patch, mid_span.place());
        const NewtonOutcome outcome =
            minimise(model.system, model.system.supports().project(solution.points), settings_of_return());
        solution.points = model.system.supports().expand(outcome.q);
        const double tension = tension_at_mid_span(model, solution.points);
        const bool there = std::abs(run.tension - tension) < tension_accuracy * run.tension;
        if (there || !outcome.converged || round == most_rounds) {
            solution.contact = read_contact(run, model, solution.points);
            solution.contact.converged = outcome.converged && there;
            solution.contact.reason =
                fmt::format("{}; tension {:.4g} N of {:.4g} N after {} rounds", outcome.sentence, tension, run.tension, round);
            break;
        }
        mid_span.move(run.tension - tension);
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
