#pragma once

#include "mesh/patch.h"
#include "mesh/transition_layout.h"
#include "mesh/trough_profile.h"
#include "solver/equilibrium/supports.h"

#include <optional>

namespace swale {

/// Behaviour of a mode in y where half of the belt is modelled.
enum class Parity { symmetric, antisymmetric };

/// What the ends and held sets of a belt ask for.
struct SupportRequest {
    double underside = 0;  ///< [mm]
    double scale = 1;      ///< unstretched length per length of the centre line's path in space
    bool half = true;
    Parity parity = Parity::symmetric;
    std::optional<double> elongation;  ///< of a held far end [mm]; absent: one free displacement that a total tension pulls
    bool endless = false;              ///< the far end is left to the trough beyond it
    std::optional<Eigen::Matrix2Xd> section = {};  ///< control values (x, y) of the section on the pulley; absent: plane
    bool free_section = false;                     ///< the pulley holds height and slope alone
};

/// Control values (x, y) of a section that lies straight across the belt, as wide as it is unstretched.
Eigen::Matrix2Xd plane_section(const Patch& patch);

/// Supports of the belt: pulley line, far end, held sets, symmetry line.
Supports belt_supports(const TransitionLayout& layout, const Patch& patch, const SupportRequest& request);

/// How the mirror image at the plane of a set moves.
enum class SetPlane { symmetric, antisymmetric };

/// Supports of half a bay between the plane of a set (x = 0) and mid-span, which is a symmetry plane too, or free.
Supports bay_supports(const Patch& patch, SetPlane plane, Parity parity, bool free_end);

/// Control values of a held profile: column j is (y, z) of control point j across.
Eigen::Matrix2Xd interpolate_profile(const CubicBasis& across, const TroughProfile& profile);
/// Largest distance between a held profile and the spline laid on it [mm].
double profile_deviation(const CubicBasis& across, const TroughProfile& profile);

}  // namespace swale
