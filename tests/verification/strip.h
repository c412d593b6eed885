#pragma once

#include "materials/section.h"
#include "mesh/patch.h"
#include "solver/equilibrium/dead_load.h"
#include "solver/equilibrium/system.h"
#include "solver/newton/newton.h"

/// What the strips of closed forms share: no Poisson effect, so that a wide strip bends to a cylinder like a beam.
namespace swale::verification {

/// Stiffness A [N/mm] and D [N mm] both ways, shear and twist those of an isotropic plate with nu = 0.
Section strip_section(double membrane, double bending);

/// One span across.
Patch strip(std::vector<double> breaks, double width);
std::vector<double> equal_breaks(double length, int spans);

ControlPoints flat(const Patch& patch);

/// Holds the first section at x = 0 and the height, and its slope.
void clamp_begin(Supports& supports, const Patch& patch, double height = 0);
/// Keeps the strip in its plane, y as unstretched.
void keep_plane(Supports& supports, const Patch& patch);
/// The first section lies on a plane of symmetry x = 0: no slope, free to rise.
void mirror_begin(Supports& supports, const Patch& patch);

/// Dead load on the last section, spread evenly over the width [N].
DeadLoad end_load(const Patch& patch, const Eigen::Vector3d& total);

/// Equilibrium from `start`; the test ends here if there is none.
ControlPoints equilibrium(const System& system, const ControlPoints& start, const NewtonSettings& settings = {});

/// Moment of the reactions that hold the slope of the first section [N mm]: those of the second row of control points times its
/// distance from the first.
double clamp_moment(const System& system, const ControlPoints& points);

/// At mid-width: position, angle of the tangent against x [rad], curvature r'' . n [1/mm].
Eigen::Vector3d place(const Patch& patch, const ControlPoints& points, double x);
double turn(const Patch& patch, const ControlPoints& points, double x);
double curvature(const Patch& patch, const ControlPoints& points, double x);

}  // namespace swale::verification
