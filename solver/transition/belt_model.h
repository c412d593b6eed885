#pragma once

#include "materials/gravity.h"
#include "mesh/idler_set.h"
#include "mesh/patch.h"
#include "solver/equilibrium/dead_load.h"
#include "solver/equilibrium/system.h"
#include "solver/shell/shell_energy.h"
#include "solver/transition/belt_bulk.h"
#include "solver/transition/belt_contacts.h"
#include "solver/transition/belt_supports.h"
#include "solver/transition/endless_trough.h"
#include "solver/transition_case.h"
#include "solver/transition_result.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// One grid of one state: the belt as a system of equations.
struct BeltModel {
    Patch patch;       ///< over the unstretched belt
    double scale = 1;  ///< unstretched length per length of the centre line's path in space
    double end = 0;    ///< where it ends in space, unstretched if held [mm]
    bool half = true;
    std::shared_ptr<const ShellEnergy> shell;
    std::shared_ptr<const DeadLoad> weight;
    std::optional<BulkLoad> bulk;
    std::vector<BeltContact> contacts;
    std::vector<IdlerSet> idlers;                 ///< all sets of the model, held ones too
    std::shared_ptr<const EndlessTrough> beyond;  ///< the trough behind the last set; none: a symmetry plane there
    System system;

    /// Counts each modelled force for the whole belt: 2 for a half.
    double multiplicity() const { return half ? 2 : 1; }
    /// Position along x of the far end [mm].
    double far_end(const ControlPoints& points) const { return points(0, patch.index(patch.along.size() - 1, 0)); }
};

/// Gauss points of the shell that are enough on every grid: 3 a span and direction change the peaks by 1e-5, next to a held
/// corner by 2e-3.
inline constexpr int points_per_span = 2;

/// Builds the model of a state on a grid whose `along` is already scaled to the unstretched belt. `section`: control values
/// (x, y) of the section on the pulley, if it is not plane; `bulk`: what lies on the belt (belt_bulk).
BeltModel belt_model(const TransitionCase& transition, const TensionState& state, int sets, const Patch& patch, double scale,
                     int gauss_points = points_per_span, const std::shared_ptr<const EndlessTrough>& beyond = {},
                     const std::optional<Eigen::Matrix2Xd>& section = {}, std::optional<BulkLoad> bulk = {});

/// The model's system with the section on the pulley free in its plane.
System free_section_system(const TransitionCase& transition, const TensionState& state, const BeltModel& model);

/// Material x whose centre line lies at x in space [mm]: where the belt hangs through or lies off, a set is not met at scale
/// times its path.
double material_place(const BeltModel& model, const ControlPoints& points, double x);

/// The half model's terms for antisymmetric modes. On frictionless rolls a belt that is too stiff to lie in its trough tips
/// over in it all along; then a symmetry plane ends the belt.
struct OddSystem {
    System system;
    bool trough_tips = false;
};

OddSystem antisymmetric_system(const TransitionCase& transition, const TensionState& state, const BeltModel& model);

/// Every roll of the whole belt with its name, for pictures.
std::vector<NamedRoll> all_rolls(const TransitionLayout& layout, int sets, double underside);

}  // namespace swale
