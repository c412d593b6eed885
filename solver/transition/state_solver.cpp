#include "solver/transition/state_solver.h"

#include "mesh/belt_grid.h"
#include "solver/equilibrium/stopwatch.h"
#include "solver/strain/readings.h"
#include "solver/transition/stability_of_belt.h"
#include "solver/transition/start_surface.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>
#include <future>
#include <semaphore>
#include <utility>

namespace swale {

namespace {

// Sets that the longer trough has more, to see what cutting it off does.
int more_sets(int sets) {
    return sets + std::max(2, sets / 2);
}

// Residual and Gauss points that are enough where only the difference to another grid is wanted: two points a span change the
// peaks by 1e-5, next to the held corner by 2e-3.
constexpr double rough = 1e-6;
constexpr int few_points = 2;

Patch halved(const Patch& patch) {
    return {patch.along.halved(), patch.across.halved()};
}

Readings readings_of(const TransitionCase& transition, const GridSolution& solution) {
    const Section& section = transition.belt.section;
    return take_readings(BeltProbe(solution.model.patch, solution.points, section), transition.layout, section, solution.model);
}

// The belt of a shorter trough, its last bay repeated.
GridStart continued(const GridSolution& solution, double spacing) {
    return [&solution, spacing](const Patch& patch) {
        const Patch& known = solution.model.patch;
        const double last = known.along.end() - 0.5 * spacing * solution.model.scale, bay = spacing * solution.model.scale;
        return patch.follow([&](double x, double y) {
            const int bays = std::max(0, static_cast<int>(std::ceil((x - last) / bay - 1e-9)));
            Eigen::Vector3d position = known.jet(solution.points, x - bays * bay, y).position;
            position.x() += bays * spacing;
            return position;
        });
    };
}

// The difference of two grids bounds the finer one's error as long as halving the spans more than halves it.
void estimate_errors(StateResult& result, Readings coarse, std::optional<Readings> longer) {
    const auto of_result = result.all(), of_coarse = coarse.all();
    for (std::size_t k = 0; k < of_result.size(); ++k) {
        of_result[k]->error = std::abs(of_result[k]->value - of_coarse[k]->value);
        if (longer) of_result[k]->far_end_error = std::abs(longer->all()[k]->value - of_coarse[k]->value);
    }
}

void note_accuracy(const TransitionCase& transition, StateResult& result) {
    const double value = std::abs(result.edge_strain_max.value), error = *result.edge_strain_max.error;
    if (error <= transition.settings.accuracy * value) return;
    result.notes.push_back(fmt::format("edge strain: discretisation error {:.2f} % of the value, {:.2f} % wanted",
                                       100 * error / value, 100 * transition.settings.accuracy));
}

// The trough is long enough only if the belt lies in its last set.
void note_floating_end(const TransitionLayout& layout, int sets, StateResult& result) {
    if (layout.trough.support == Support::held) return;
    const std::string last = fmt::format("set {} ", sets);
    const bool seated = std::any_of(result.supports.begin(), result.supports.end(), [&](const SupportForce& support) {
        return support.name.starts_with(last) && support.force.norm() > 0;
    });
    if (!seated)
        result.notes.push_back(
            fmt::format("the belt lies in no roll of {}the last of the model: more sets are needed, and the "
                        "far-end error says nothing",
                        last));
}

void note_instability(const std::optional<double>& eigenvalue, const char* kind, StateResult& result) {
    if (!eigenvalue)
        result.notes.push_back(fmt::format("stability against {} modes was not found out", kind));
    else if (*eigenvalue < 0)
        result.notes.push_back(
            fmt::format("warning: lowest {} eigenvalue {:.2g} < 0 N/mm^3 on the coarse grid: this shape is unstable "
                        "there, the belt may tip or wrinkle{}",
                        kind, *eigenvalue, kind[0] == 'a' ? "; compare with model = \"full\"" : ""));
}

}  // namespace

StateSolver::StateSolver(const TransitionCase& transition, int sets, ProgressListener listener)
    : transition_(transition),
      sets_(sets),
      listener_(std::move(listener)),
      coarse_patch_(belt_grid(transition.layout, {sets, transition.belt.section.underside, transition.settings.grid,
                                                  transition.settings.model == Symmetry::half})) {}

NewtonWatcher StateSolver::watcher(const TensionState& state, const std::string& phase) const {
    return [this, name = state.name, phase](int iteration, double residual) { tell({name, phase, iteration, residual}); };
}

void StateSolver::tell(const ProgressEvent& event) const {
    const std::lock_guard lock(telling_);
    if (listener_) listener_(event);
}

GridSolution StateSolver::solve_coarse(const TensionState& state, NewtonTimes& times) const {
    const std::string phase = "coarse grid";
    const double scale = first_scale(transition_, state);
    if (neighbour_) {
        const double longer_by = scale / first_scale(transition_, neighbour_state_);  // the strips' difference in strain
        const GridTask task{transition_, state, sets_,     coarse_patch_, neighbour_->model.scale * longer_by,
                            phase,       rough, few_points};
        GridSolution warm = solve_grid(
            task, [&](const Patch&) { return neighbour_->points; }, watcher(state, phase), times);
        if (warm.converged) return warm;
    }
    const StartSurface surface(transition_.layout, sets_, transition_.belt.section.underside);
    const GridTask task{transition_, state, sets_, coarse_patch_, scale, phase, rough, few_points};
    const auto cold = [&](const Patch& patch) {
        const double stretch = state.elongation ? 1 + *state.elongation / patch.along.end() : 1;
        return patch.follow([&](double x, double y) {
            Eigen::Vector3d position = surface.at(x / scale, y);
            position.x() *= stretch;
            return position;
        });
    };
    return solve_grid(task, cold, watcher(state, phase), times);
}

GridSolution StateSolver::solve_finer(const TensionState& state, const GridSolution& coarse, NewtonTimes& times) const {
    const std::string phase = "fine grid";
    const GridTask task{
        transition_, state, sets_, halved(coarse_patch_), coarse.model.scale, phase, NewtonSettings{}.tolerance};
    const Patch own = halved(coarse.model.patch);  // breaks equal to the bit, as a refinement needs
    return solve_grid(
        task, [&](const Patch&) { return coarse.model.patch.refine(coarse.points, own); }, watcher(state, phase), times);
}

std::optional<GridSolution> StateSolver::solve_longer(const TensionState& state, const GridSolution& coarse,
                                                      NewtonTimes& times) const {
    if (transition_.layout.trough.support == Support::held) return {};
    const std::string phase = "longer trough";
    const int sets = more_sets(sets_);
    const Patch patch =
        belt_grid(transition_.layout, {sets, transition_.belt.section.underside, transition_.settings.grid, coarse.model.half});
    // The bays added are as strained as the far end of the shorter trough.
    const double length = model_length(transition_.layout, sets_), longer_length = model_length(transition_.layout, sets);
    const double far = far_strain(BeltProbe(coarse.model.patch, coarse.points, transition_.belt.section));
    const double scale = (length * coarse.model.scale + (longer_length - length) / (1 + far)) / longer_length;
    const GridTask task{transition_, state, sets, patch, scale, phase, rough, few_points};
    GridSolution longer = solve_grid(task, continued(coarse, transition_.layout.trough.spacing), watcher(state, phase), times);
    if (!longer.converged) return {};
    return longer;
}

StateResult StateSolver::not_converged(const TensionState& state, const std::vector<NewtonRecord>& before,
                                       const GridSolution& solution) const {
    StateResult failed;
    failed.name = state.name;
    failed.newton = before;
    failed.newton.push_back(solution.record);
    const std::string load = state.total ? fmt::format("tension {:.6g} kN", *state.total / 1e3)
                                         : fmt::format("drawn by {:.6g} mm", state.elongation.value_or(0));
    failed.reason = fmt::format("{}, {}: {}", solution.record.grid, load, solution.sentence);
    return failed;
}

StateResult StateSolver::finish(const TensionState& state, const GridSolution& coarse) {
    if (!coarse.converged) return not_converged(state, {}, coarse);
    SolverTimes times;
    const GridSolution fine = solve_finer(state, coarse, times.newton);
    if (!fine.converged) return not_converged(state, {coarse.record}, fine);
    const std::optional<GridSolution> longer = solve_longer(state, coarse, times.newton);

    StateResult result = timed(times.recovery, [&] { return recover_state(transition_, state, fine.model, fine.points); });
    result.status = SolveStatus::converged;
    result.reason = fine.sentence;
    result.newton = {coarse.record, fine.record};
    std::optional<Readings> long_readings;
    if (longer) {
        result.newton.push_back(longer->record);
        long_readings = readings_of(transition_, *longer);
    }
    estimate_errors(result, readings_of(transition_, coarse), long_readings);
    note_accuracy(transition_, result);
    tell({state.name, "stability", 0, 0});
    const BeltStability lowest =
        timed(times.stability, [&] { return stability_of_belt(transition_, state, coarse.model, coarse.points); });
    result.eigenvalue_symmetric = lowest.symmetric;
    result.eigenvalue_antisymmetric = lowest.antisymmetric;
    note_instability(lowest.symmetric, "symmetric", result);
    note_instability(lowest.antisymmetric, "antisymmetric", result);
    note_floating_end(transition_.layout, sets_, result);
    if (!longer && transition_.layout.trough.support == Support::rolls)
        result.notes.push_back("the longer trough did not converge: no far-end error");
    account(times);
    return result;
}

std::vector<StateResult> StateSolver::solve(const std::vector<TensionState>& states) {
    std::counting_semaphore<2> cores(2);  // outlives the threads that release it
    std::vector<std::future<StateResult>> finishing;
    for (const TensionState& state : states) {
        SolverTimes times;
        const auto coarse = std::make_shared<const GridSolution>(solve_coarse(state, times.newton));
        account(times);
        if (coarse->converged) {
            neighbour_ = coarse;
            neighbour_state_ = state;
        }
        cores.acquire();
        finishing.push_back(std::async(std::launch::async, [this, &cores, &state, coarse] {
            struct Release {
                std::counting_semaphore<2>& of;
                ~Release() { of.release(); }
            } release{cores};
            return finish(state, *coarse);
        }));
    }
    std::vector<StateResult> results;
    for (auto& future : finishing) results.push_back(future.get());
    return results;
}

void StateSolver::account(const SolverTimes& times) {
    const std::lock_guard lock(telling_);
    times_ += times;
}

SolverTimes& SolverTimes::operator+=(const SolverTimes& other) {
    newton += other.newton;
    stability += other.stability;
    recovery += other.recovery;
    return *this;
}

}  // namespace swale
