#include "solver/transition/continued_start.h"

#include "mesh/belt_grid.h"
#include "solver/strain/readings.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

// Where a bay is put behind the last it does not quite fit; the gap fades by this exponent a bay.
constexpr double fading = 2;

}  // namespace

GridStart continued_start(const GridSolution& solution, double spacing) {
    return [&solution, spacing](const Patch& patch) {
        const Patch& known = solution.model.patch;
        const double bay = spacing * solution.model.scale, last = known.along.end() - bay / 2;
        const auto at = [&](double x, double y) { return known.jet(solution.points, x, y).position; };
        return patch.interpolate([&](double x, double y) -> Eigen::Vector3d {
            if (x <= last) return at(x, y);
            const int bays = static_cast<int>(std::ceil((x - last) / bay - 1e-9));
            const Eigen::Vector3d shift(spacing, 0, 0), gap = at(last, y) - at(last - bay, y) - shift;
            // The gaps at the joints before this bay, each as far as it has faded.
            Eigen::Vector3d offset = Eigen::Vector3d::Zero();
            for (int joint = 0; joint < bays; ++joint) offset += gap * std::exp(-fading * (x - last - joint * bay) / bay);
            return at(x - bays * bay, y) + bays * shift + offset;
        });
    };
}

double continued_scale(const TransitionCase& transition, const GridSolution& solution, int sets, int more_sets) {
    const double far = far_strain(BeltProbe(solution.model.patch, solution.points, transition.belt.section));
    const double length = path_length(transition.layout, sets), longer = path_length(transition.layout, more_sets);
    return (length * solution.model.scale + (longer - length) / (1 + far)) / longer;
}

}  // namespace swale
