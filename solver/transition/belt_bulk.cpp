#include "solver/transition/belt_bulk.h"

#include "materials/gravity.h"
#include "solver/load/bulk_section.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

BulkRequest request_of(const TransitionCase& transition, double scale) {
    const Bulk& bulk = *transition.bulk;
    return {bulk.density * gravity, bulk_section(transition.layout, bulk), std::tan(bulk.surcharge), 1 / scale};
}

}  // namespace

double bulk_mass(const TransitionCase& transition) {
    return transition.bulk ? transition.bulk->density * bulk_section(transition.layout, *transition.bulk) : 0;
}

double loaded_from(const TransitionLayout& layout, const Bulk& bulk) {
    return bulk.from.value_or(layout.pulley.end == BeltEnd::head ? 0 : layout.distance);
}

std::optional<BulkLoad> belt_bulk(const TransitionCase& transition, const TensionState& state, const Patch& patch, double scale,
                                  const ControlPoints& points) {
    if (!transition.bulk || !state.loaded) return {};
    BulkRequest request = request_of(transition, scale);
    request.from = loaded_from(transition.layout, *transition.bulk);
    return bulk_load(patch, points, request);
}

std::optional<BulkLoad> bay_bulk(const TransitionCase& transition, const TensionState& state, const Patch& patch, double scale,
                                 const ControlPoints& points) {
    if (!transition.bulk || !state.loaded) return {};
    return bulk_load(patch, points, request_of(transition, scale));
}

double bulk_misfit(const std::optional<BulkLoad>& borne, const std::optional<BulkLoad>& asked) {
    if (!borne || !asked) return 0;
    return (asked->forces - borne->forces).colwise().norm().sum() / borne->forces.colwise().norm().sum();
}

}  // namespace swale
