#pragma once

#include "materials/section.h"
#include "mesh/patch.h"
#include "solver/equilibrium/system.h"
#include "solver/newton/newton.h"
#include "solver/shell/shell_energy.h"

#include <memory>
#include <vector>

/// What the published problems of cylindrical shells share: a flat patch, x along the axis and y around, that is rolled up by
/// its stress-free curvature to a cylinder about the x axis with its crown, y = 0, on top; point loads; planes of symmetry.
namespace swale::verification {

/// Plane stress: A = E h/(1 - nu^2), D = A h^2/12.
Section isotropic_section(double modulus, double poisson, double thickness);

/// A unidirectional ply in its own axes.
struct Ply {
    double along, across, shear;  ///< E1, E2, G12
    double poisson;               ///< nu12
};
/// Equal plies from the bottom up, each `true` if its fibres lie along the axis; symmetric, so that B = 0.
Section cross_ply_section(const Ply& ply, const std::vector<bool>& axial, double thickness);

/// Spans of equal size over [0, length] x [0, arc].
Patch panel(double length, double arc, int spans_along, int spans_around);

/// The surface meets the cylinder at the Greville abscissae.
ControlPoints rolled_up(const Patch& patch, double radius);
/// k22 = -1/R: the crown is on top and the normal outside.
NaturalCurvature cylinder_curvature(double radius);

/// An edge of the patch as two rows of control points, the edge itself and its neighbour.
enum class Edge { begin, end, crown, far };
int points_on(const Patch& patch, Edge edge);
int edge_point(const Patch& patch, Edge edge, int k, int row = 0);

/// `component` of position is held where `start` has it.
void hold(Supports& supports, const Patch& patch, Edge edge, int component, const ControlPoints& start);
/// No slope of `component` normal to the edge.
void level(Supports& supports, const Patch& patch, Edge edge, int component);
/// The edge lies on a plane of symmetry `component` = 0.
void mirror(Supports& supports, const Patch& patch, Edge edge, int component);

/// A load and the equilibrium under it.
struct LoadedState {
    double load = 0;
    ControlPoints points;
};

/// A shell under one force on one component of a control point that is a corner of the patch; `share` of the whole load acts on
/// the modelled part, negative if the load acts against the component.
class PointLoadedShell {
  public:
    /// `open` are supports before their close().
    PointLoadedShell(const Patch& patch, std::shared_ptr<const Term> shell, const Supports& open, Freedom loaded, double share);

    const Patch& patch() const { return patch_; }
    Freedom loaded() const { return loaded_; }

    /// The shell without load as the grid has it: a spline is no exact cylinder, so that small stresses are let out.
    ControlPoints at_rest(const ControlPoints& start) const;
    /// Equilibrium under a load; the test ends here if there is none.
    LoadedState under(double load, const ControlPoints& start) const;
    /// Equilibrium with the loaded point held at `position` of its component; the load is its reaction.
    LoadedState held_at(double position, const ControlPoints& start) const;

    /// Free of the load: its tangent and residual.
    const System& free_system() const { return free_; }
    /// The load one on the unknowns.
    Eigen::VectorXd unit_load() const;

    NewtonSettings settings;

  private:
    System with_load(double load) const;
    double reaction(const ControlPoints& points) const;

    Patch patch_;
    std::shared_ptr<const Term> shell_;
    Supports open_;
    Freedom loaded_;
    double share_;
    System free_;
};

/// Linear response: K u = f with the tangent of the shell at rest.
ControlPoints linear_displacements(const System& system, const ControlPoints& at_rest, const Eigen::VectorXd& load);

}  // namespace swale::verification
