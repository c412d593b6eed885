#pragma once

#include "materials/section.h"
#include "mesh/patch.h"
#include "solver/equilibrium/dead_load.h"
#include "solver/equilibrium/system.h"

#include <functional>
#include <map>
#include <string>
#include <vector>

/// What the plates of closed forms and tables share: a rectangle a x b with one corner at the origin, flat at z = 0.
namespace swale::verification {

/// D as given [N mm]; A = 12 D/t^2 [N/mm], as of a homogeneous plate of thickness t [mm].
Section thin_plate(const Eigen::Matrix3d& bending, double thickness);

/// The law with the constants D11, D22, D12, D66 of a table's row.
Eigen::Matrix3d bending_of(const std::map<std::string, std::string>& row);

/// Angles of a layup such as "[0/90/0]" that is symmetric about its middle, from the top; empty for any other.
std::vector<int> symmetric_plies(const std::string& layup);
/// D [N mm] of plies at 0 and 90 degrees of the common benchmark laminate, h = 1 mm thick in all, E2 = 1 MPa: E1/E2 = 25,
/// G12/E2 = 0.5, nu12 = 0.25.
Eigen::Matrix3d cross_ply_bending(const std::vector<int>& plies);

/// Equal spans.
Patch plate(double length, double width, int along, int across);

enum class Edge { free, simple, clamped };
/// At x = 0, x = a, y = 0, y = b.
struct Edges {
    Edge begin, end, right, left;
};
constexpr Edges all_simple{Edge::simple, Edge::simple, Edge::simple, Edge::simple};
constexpr Edges all_clamped{Edge::clamped, Edge::clamped, Edge::clamped, Edge::clamped};

/// Height 0 at the simply supported and clamped edges, slope 0 at the clamped ones.
void hold_height(Supports& supports, const Patch& patch, const Edges& edges);
/// How a curve of equal spans that goes on smoothly (C2) from its end to its begin has its last control points, counted from
/// the end, in terms of the first three: row k of the weights.
constexpr double repeated[3][3] = {{1, 0, 0}, {2, -1, 0}, {6, -6, 1}};
/// Height repeats along the plate with its length as the wave; the sides at y = 0 and y = b are as given.
void repeat_height(Supports& supports, const Patch& patch, Edge sides);
/// x and y of every control point stay as they are.
void hold_in_plane(Supports& supports, const Patch& patch, const ControlPoints& points);

/// Flat under the uniform force (N11, N22, N12) [N/mm] of second Piola stress.
ControlPoints prestressed(const Patch& patch, const Section& section, const Eigen::Vector3d& force);

/// Load along z per area [MPa] as a function of material (x, y).
DeadLoad pressure(const Patch& patch, const std::function<double(double, double)>& load);

/// Moments (M11, M22, M12) [N] at a material point.
Eigen::Vector3d moments(const Patch& patch, const ControlPoints& points, const Section& section, double x, double y);

/// Where a falling function, such as the lowest eigenvalue over the load, meets zero: above zero at `from`, sought at `to` and
/// its doubles.
double crossing(const std::function<double(double)>& f, double from, double to);

/// The factor on `force` at which the lowest eigenvalue of the flat plate's tangent is zero. A flat plate's tangent does not
/// couple height and plane, so height alone is left unknown; `supports` are those of the height, not yet closed.
double buckling_factor(const Patch& patch, const Section& section, const Supports& supports, const Eigen::Vector3d& force);

}  // namespace swale::verification
