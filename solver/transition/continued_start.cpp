#include "solver/transition/continued_start.h"

#include "mesh/belt_grid.h"
#include "solver/strain/readings.h"

#include <algorithm>
#include <cmath>

namespace swale {

GridStart continued_start(const GridSolution& solution, double spacing) {
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

double continued_scale(const TransitionCase& transition, const GridSolution& solution, int sets, int more_sets) {
    const double far = far_strain(BeltProbe(solution.model.patch, solution.points, transition.belt.section));
    const double length = path_length(transition.layout, sets), longer = path_length(transition.layout, more_sets);
    return (length * solution.model.scale + (longer - length) / (1 + far)) / longer;
}

}  // namespace swale
