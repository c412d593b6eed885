#include "solver/transition/restored_model.h"

#include "mesh/belt_grid.h"
#include "solver/newton/newton.h"
#include "solver/transition/run_on.h"

#include <fmt/core.h>

#include <stdexcept>

namespace swale {

namespace {

// The endless trough that the stored belt ended in; none where it ended at a plane or a held section.
std::shared_ptr<const EndlessTrough> trough_beyond(const TransitionCase& transition, const TensionState& state, int sets,
                                                   const Patch& patch, double scale) {
    const Trough& trough = transition.layout.trough;
    if (trough.sets || trough.support == Support::held) return {};
    NewtonTimes times;
    const Patch in_space{patch.along.scaled(1 / scale), patch.across};
    return endless_trough(transition, state, in_space, sets, points_per_span, {}, times).trough;
}

CubicBasis basis_of(const std::vector<double>& knots) {
    if (knots.size() < 8) throw std::invalid_argument("a stored knot vector has fewer than eight knots");
    return CubicBasis({knots.begin() + 3, knots.end() - 3});
}

}  // namespace

BeltModel restored_model(const TransitionCase& transition, int sets, const TensionState& state, const BeltShape& shape) {
    const Patch patch{basis_of(shape.knots_along), basis_of(shape.knots_across)};
    if (shape.control_points.cols() != patch.points())
        throw std::invalid_argument(
            fmt::format("{} stored control points for a grid of {}", shape.control_points.cols(), patch.points()));
    const double scale = patch.along.end() / path_length(transition.layout, sets);
    return belt_model(transition, state, sets, patch, scale, points_per_span,
                      trough_beyond(transition, state, sets, patch, scale), section_on_pulley(patch, shape.control_points),
                      belt_bulk(transition, state, patch, scale, shape.control_points));
}

}  // namespace swale
