#include "solver/transition/end_pull.h"

#include <utility>

namespace swale {

std::shared_ptr<const DeadLoad> end_pull(const Patch& patch, double total) {
    ControlPoints forces = ControlPoints::Zero(3, patch.points());
    forces(0, patch.index(patch.along.size() - 1, 0)) = patch.across.begin() == 0 ? total / 2 : total;
    return std::make_shared<DeadLoad>(std::move(forces));
}

}  // namespace swale
