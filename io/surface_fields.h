#pragma once

#include "solver/transition_result.h"

#include <string>
#include <vector>

namespace swale {

/// One field on the belt's surface, as VTK and HDF5 files carry it. The name ends in its unit unless it is a plain number.
struct SurfaceField {
    std::string name;
    std::string unit;
    std::vector<std::string> components;  ///< empty for a scalar
    double (*value)(const SurfacePoint&, int component);

    int size() const { return components.empty() ? 1 : static_cast<int>(components.size()); }
};

/// x_mm, y_mm (material coordinates), strain (stretch less one), displacement_mm (from the flat unstretched belt at z = 0),
/// membrane_strain (Green-Lagrange), curvature_per_mm (positive when the edges go up), top_strain and bottom_strain (carrying
/// face, face on the rolls), N_N_per_mm, M_N (moment per width, N mm/mm), contact_pressure_MPa. Shear strain and twist are
/// the doubled ones of laminate theory, and their components' names say so.
const std::vector<SurfaceField>& surface_fields();

}  // namespace swale
