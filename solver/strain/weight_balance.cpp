#include "solver/strain/weight_balance.h"

#include <cmath>

namespace swale {

std::optional<BulkResult> weight_balance(const TransitionCase& transition, const BeltModel& model, const StateResult& result) {
    if (!model.bulk) return {};
    BulkResult bulk;
    bulk.mass_per_length = bulk_mass(transition);
    bulk.length = model.bulk->length;
    bulk.weight = bulk.mass_per_length * bulk.length * gravity;
    bulk.steepest = std::atan(model.bulk->highest_slope);
    const double weight = bulk.weight - model.multiplicity() * model.weight->forces().row(2).sum();
    double carried = result.far_end_force.z();
    for (const SupportForce& support : result.supports) carried += support.force.z();
    bulk.imbalance = carried / weight - 1;
    return bulk;
}

}  // namespace swale
