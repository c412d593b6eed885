#pragma once

#include "mesh/idler_set.h"
#include "mesh/patch.h"
#include "solver/contact/contact_energy.h"
#include "solver/equilibrium/dead_load.h"
#include "solver/equilibrium/system.h"
#include "solver/shell/shell_energy.h"
#include "solver/transition/belt_supports.h"
#include "solver/transition_case.h"
#include "solver/transition_result.h"

#include <memory>
#include <string>
#include <vector>

namespace swale {

enum class RollPlace { pulley, centre, wing };

/// A roll that the modelled part of the belt may touch.
struct BeltContact {
    std::string name;    ///< "pulley", "set 1 centre", "set 1 wing +y"
    std::string mirror;  ///< name of its mirror image where half is modelled, else empty
    RollPlace place = RollPlace::centre;
    double x = 0;  ///< in space [mm]
    std::shared_ptr<const ContactEnergy> energy;
};

/// One grid of one state: the belt as a system of equations.
struct BeltModel {
    Patch patch;       ///< over the unstretched belt
    double scale = 1;  ///< unstretched length per length of the centre line's path in space
    bool half = true;
    std::shared_ptr<const ShellEnergy> shell;
    std::shared_ptr<const DeadLoad> weight;
    std::vector<BeltContact> contacts;
    std::vector<IdlerSet> idlers;  ///< all sets of the model, held ones too
    System system;

    /// Counts each modelled force for the whole belt: 2 for a half.
    double multiplicity() const { return half ? 2 : 1; }
    /// Position along x of the far end [mm].
    double far_end(const ControlPoints& points) const { return points(0, patch.index(patch.along.size() - 1, 0)); }
};

/// Gravity [mm/s^2].
inline constexpr double gravity = 9806.65;

/// Builds the model of a state on a grid whose `along` is already scaled to the unstretched belt.
BeltModel belt_model(const TransitionCase& transition, const TensionState& state, int sets, const Patch& patch, double scale,
                     int gauss_points = 3);

/// Material x whose centre line lies at x in space [mm]: where the belt hangs through or lies off, a set is not met at scale
/// times its path.
double material_place(const BeltModel& model, const ControlPoints& points, double x);

/// The same terms under other parity, for modes of the half model.
System system_with(const TransitionCase& transition, const TensionState& state, const BeltModel& model, Parity parity);

/// Every roll of the whole belt with its name, for pictures.
std::vector<NamedRoll> all_rolls(const TransitionLayout& layout, int sets, double underside);

}  // namespace swale
