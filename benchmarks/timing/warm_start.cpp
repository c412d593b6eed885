// What a study would save if each case started from its neighbour over distance in place of cold: processor time of the coarse
// grid either way beside that of the whole case.
//   swale_warm_start
#include "benchmarks/published/fabric_belt.h"
#include "solver/transition.h"
#include "solver/transition/cold_start.h"
#include "solver/transition/grid_ladder.h"
#include "solver/transition/path_map.h"

#include <algorithm>
#include <cstdio>
#include <ctime>
#include <optional>
#include <utility>

namespace swale::benchmark {
namespace {

constexpr int sets = 3;

double processor_seconds() {
    timespec now{};
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return static_cast<double>(now.tv_sec) + 1e-9 * static_cast<double>(now.tv_nsec);
}

template <class Work>
double time_of(const Work& work) {
    const double begin = processor_seconds();
    work();
    return processor_seconds() - begin;
}

TransitionCase case_of(bool cords, double widths, double per_width) {
    TransitionCase transition = fabric_transition(widths * 1200, 0, 1);
    if (cords) {
        transition.belt.section.membrane = orthotropic(72000, 60, 20, 20);
        transition.belt.section.bending = orthotropic(60e3, 4e3, 1e3, 2e3);
    }
    transition.states[0].total = per_width * 1200;
    transition.settings.accuracy = 0.05;
    return transition;
}

GridTask coarse_task(const TransitionCase& transition) {
    const TensionState& state = transition.states[0];
    return {transition, state,           sets, coarse_grid(transition, sets), first_scale(transition, state), "coarse grid",
            1e-6,       points_per_span, true};
}

// Sizing goes from one distance to the next like this.
GridStart carried_along(const GridSolution& known, const PathMap& map, double scale) {
    return [&known, map, scale](const Patch& patch) {
        const CubicBasis& along = known.model.patch.along;
        return patch.interpolate([&](double x, double y) -> Eigen::Vector3d {
            const double before = std::clamp(map.from(x / scale) * known.model.scale, along.begin(), along.end());
            const PathMap::Shift shift = map.shift(x / scale);
            return known.model.patch.jet(known.points, before, y).position + Eigen::Vector3d(shift.x, 0, shift.z);
        });
    };
}

struct Known {
    TransitionCase transition;
    GridSolution coarse;
};

GridSolution solve_warm(const TransitionCase& transition, const Known& known) {
    NewtonTimes times;
    GridTask task = coarse_task(transition);
    task.scale = known.coarse.model.scale;
    const auto map = PathMap::between(known.transition.layout, transition.layout, sets, transition.belt.section.underside);
    return solve_grid(task, carried_along(known.coarse, *map, task.scale), {}, times);
}

struct Sums {
    double cold = 0, warm = 0, whole = 0;
    int cases = 0;
};

void try_chain(bool cords, double per_width, Sums& sums) {
    std::optional<Known> known;
    for (const double widths : {1.05, 1.5, 2.1, 3.0, 4.2, 6.0}) {
        const TransitionCase transition = case_of(cords, widths, per_width);
        NewtonTimes times;
        std::optional<GridSolution> cold, warm;
        const double cold_s = time_of([&] { cold = solve_cold(coarse_task(transition), {}, times); });
        if (known) {
            sums.warm += time_of([&] { warm = solve_warm(transition, *known); });
            sums.cold += cold_s;
            sums.whole += time_of([&] { solve_transition(transition); });
            ++sums.cases;
            std::printf("| %g N/mm | %g | %d | %d%s |\n", per_width, widths, cold->record.iterations, warm->record.iterations,
                        warm->converged ? "" : ", not converged");
        }
        known.emplace(Known{transition, *std::move(cold)});
    }
}

}  // namespace
}  // namespace swale::benchmark

int main() {
    using namespace swale::benchmark;
    for (const bool cords : {false, true}) {
        Sums sums;
        std::printf("\n%s\n\n| tension | distance / width | iterations cold | warm |\n|---|---|---|---|\n",
                    cords ? "Steel cord" : "Fabric");
        for (const double tension : {8.0, 20.0, 40.0}) try_chain(cords, cords ? 3 * tension : tension, sums);
        std::printf("\nprocessor time of a case [s]: coarse grid cold %.3f, warm %.3f, whole case %.3f\n",
                    sums.cold / sums.cases, sums.warm / sums.cases, sums.whole / sums.cases);
    }
}
