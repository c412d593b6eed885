#pragma once

#include "mesh/roll.h"

#include <Eigen/Core>

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// A reported quantity with its place in the unstretched belt. Whole-belt coordinates; mm.
struct Reading {
    double value = 0;
    std::optional<double> error;          ///< estimated discretisation error, same unit as value; absent if not estimated
    std::optional<double> far_end_error;  ///< of cutting off the trough; absent if not estimated
    double x = 0;
    double y = 0;
};

/// Force of one roll or of the pulley on the belt [N], whole belt (both halves), +z up.
struct SupportForce {
    std::string name;  ///< "pulley", "station 1 centre", "set 1 wing +y"
    double x = 0;      ///< in space [mm]
    Eigen::Vector3d force = Eigen::Vector3d::Zero();
    std::optional<double> lift_off;                     ///< smallest clearance [mm], 0 when touching; absent for held supports
    std::optional<std::array<double, 2>> touched = {};  ///< y of the belt that lies on the roll, from and to [mm]
    /// Estimated, of grid and far end together; absent if not estimated.
    std::optional<double> force_error = {}, lift_off_error = {};
};

/// One point of the belt. Voigt order (along, across, shear), shear and twist doubled; curvature positive when edges go up.
struct SurfacePoint {
    double x = 0, y = 0;                                        ///< material coordinates [mm]
    Eigen::Vector3d position = Eigen::Vector3d::Zero();         ///< in space [mm]
    Eigen::Vector3d displacement = Eigen::Vector3d::Zero();     ///< from the flat unstretched belt at z = 0 [mm]
    double strain = 0;                                          ///< longitudinal stretch less one
    Eigen::Vector3d membrane_strain = Eigen::Vector3d::Zero();  ///< Green-Lagrange
    Eigen::Vector3d curvature = Eigen::Vector3d::Zero();        ///< [1/mm]
    Eigen::Vector3d top_strain = Eigen::Vector3d::Zero();       ///< on the carrying face
    Eigen::Vector3d bottom_strain = Eigen::Vector3d::Zero();    ///< on the face on the rolls
    Eigen::Vector3d force = Eigen::Vector3d::Zero();            ///< N [N/mm]
    Eigen::Vector3d moment = Eigen::Vector3d::Zero();           ///< M [N]
    double contact_pressure = 0;                                ///< [MPa], mean over the contact sub-cell
};

/// Structured sample of the whole belt: point (i, j) is points[i * across + j], i along, j across from -W/2 to +W/2.
struct BeltSurface {
    int along = 0;
    int across = 0;
    std::vector<SurfacePoint> points;
};

/// A row of points across the belt at a named place ("mid-transition", "station 1", "set 2").
struct CrossSection {
    std::string name;
    std::vector<SurfacePoint> points;
};

/// The same x read at edge, innermost junction and centre.
struct AlongRow {
    SurfacePoint edge, junction, centre;
};

/// What fixes the solution: enough to restore it without solving.
struct BeltShape {
    std::vector<double> knots_along;   ///< open cubic knot vector, material x [mm]
    std::vector<double> knots_across;  ///< material y [mm]; from 0 if half is modelled
    Eigen::Matrix3Xd control_points;   ///< column (i * n_across + j) [mm]
};

struct NewtonRecord {
    std::string grid;  ///< "coarse", "fine", "longer trough"
    int unknowns = 0;
    int iterations = 0;
    double residual = 0;  ///< relative, at the end
    double tolerance = 0;
};

enum class SolveStatus { converged, not_converged };

/// The reported quantities of one solved grid.
struct Readings {
    Reading edge_strain_max, centre_strain_min;
    Reading edge_tension_max, tension_min;  ///< [N/mm]
    Reading junction_bending_strain_max, surface_strain_max;
    Reading wing_line_force_max;  ///< [N/mm]; NaN without wing rolls
    Reading roll_force_max;       ///< of one roll of the modelled sets, its resultant [N]; NaN without rolls

    /// In a fixed order, so that grids can be compared entry by entry.
    std::array<Reading*, 8> all() {
        return {&edge_strain_max,    &centre_strain_min,   &edge_tension_max, &tension_min, &junction_bending_strain_max,
                &surface_strain_max, &wing_line_force_max, &roll_force_max};
    }
};

/// What the belt bears in the trough far from the transition, to compare with.
struct RunningTrough {
    double junction_bending_strain = 0;
    double wing_line_force = 0;                 ///< [N/mm]
    std::map<std::string, double> roll_forces;  ///< resultants by the roll's name in its set, "centre", "wing +y" [N]
};

/// Coefficient of friction between belt and pulley that is taken for granted. From memory (fairly sure): rubber on a dry pulley
/// 0.3 to 0.45, less when wet.
inline constexpr double assumed_friction = 0.3;

/// The line at which a belt in steady motion runs on to a pulley and begins to stick.
struct RunOnLine {
    double strain = 0;       ///< stretch less one, the same over the width
    double warp = 0;         ///< how far the last part of a line straight across the belt arrives behind the first [mm]
    double friction = 0;     ///< largest coefficient of friction that sticking needs
    double friction_y = 0;   ///< where [mm]
    double beyond_grip = 0;  ///< share of the width that needs more than `assumed_friction`
};

/// Another equilibrium of the same state, on the coarse grid; its readings are without errors.
struct OtherEquilibrium : Readings {
    std::string start;             ///< what it was found from, in print
    double energy_difference = 0;  ///< potential energy of the whole belt above that of the state's own shape [N mm]
    double distance = 0;           ///< largest, of the two surfaces [mm]
    double x = 0, y = 0;           ///< where, in the unstretched belt [mm]
    std::optional<double> eigenvalue_symmetric, eigenvalue_antisymmetric;  ///< [N/mm^3]
    BeltShape shape;
};

/// How the belt would move first of all that are symmetric, or antisymmetric, in y: the tangent's lowest eigenvector.
struct BeltMode {
    std::vector<Eigen::Vector3d> motion;  ///< at the points of the state's surface, in their order; the largest has length 1
    double x = 0, y = 0;                  ///< of the largest [mm]; of two alike the one at +y
};

/// The bulk that a state bears.
struct BulkResult {
    double mass_per_length = 0;  ///< [t/mm]
    double length = 0;           ///< of it on the modelled belt [mm]
    double weight = 0;           ///< of that: density times cross-section times length [N]
    double steepest = 0;         ///< surcharge angle at which it stays on the belt where that is flattest [rad]
    /// What carries the belt from below, less the weight of belt and bulk, as a share of that weight.
    double imbalance = 0;
};

struct StateResult : Readings {
    std::string name;
    SolveStatus status = SolveStatus::not_converged;
    std::string reason;  ///< sentence with both numbers; also for a converged state: why it stopped

    double tension = 0;         ///< [N]
    double pulley_tension = 0;  ///< [N]
    double far_strain = 0;
    std::optional<double> far_strain_error = {};              ///< estimated, of grid and far end together
    Eigen::Vector3d far_end_force = Eigen::Vector3d::Zero();  ///< of what is behind the far end on the belt [N]
    double excluded = 0;                                      ///< [mm]
    std::vector<SupportForce> supports;
    std::optional<BulkResult> bulk;                                        ///< of a loaded state
    std::optional<double> eigenvalue_symmetric, eigenvalue_antisymmetric;  ///< [N/mm^3]

    std::vector<AlongRow> along;
    std::vector<CrossSection> across;
    BeltSurface surface;
    std::optional<BeltMode> mode_symmetric, mode_antisymmetric;
    BeltShape shape;
    std::vector<OtherEquilibrium> others;            ///< looked for where a strip is slack
    std::optional<RunningTrough> running_trough;     ///< of an endless trough
    std::optional<RunOnLine> run_on;                 ///< of a steady run-on
    std::map<std::string, double> criterion_errors;  ///< by name, of values that are no readings; grid and far end together
    std::vector<NewtonRecord> newton;
    std::vector<std::string> notes;  ///< cautions about this state in sentences (deviation of a held profile, ...)
};

/// Verdict of one criterion in one state. Absent: not judged, or not defined.
struct Judgement {
    std::string name;
    std::string state;
    std::optional<double> value;
    std::optional<double> limit;
    std::string unit;  ///< in print; "1" for a strain, empty for another ratio
    std::optional<double> utilisation;
    std::optional<bool> passed;
    bool advisory = false;
    std::string source;
    std::optional<double> x, y;        ///< where [mm]
    std::optional<double> error = {};  ///< of the value, grid and far end together
    bool at_least = false;             ///< the limit is a lower one
    std::string where = {};            ///< in print, if it has a name: "set 1 wing +y"
};

/// The belt at one tension of a path, on the coarse grid; readings and eigenvalues only if it converged.
struct TensionPathRow : Readings {
    double tension = 0;  ///< [N]
    bool converged = false;
    std::string reason;                                                    ///< why it stopped, both numbers
    std::optional<double> eigenvalue_symmetric, eigenvalue_antisymmetric;  ///< [N/mm^3]
};

/// What becomes of the belt as the tension falls.
struct TensionPath {
    std::vector<TensionPathRow> rows;                          ///< highest tension first
    std::optional<double> symmetric_zero, antisymmetric_zero;  ///< tension at which the eigenvalue vanishes [N]
};

struct Cost {
    int degrees_of_freedom = 0;
    int newton_iterations = 0;
    double seconds = 0;
    /// Sums over both threads, so they may add up to more than `seconds`. Assembly: the shell's energies, gradients and
    /// tangents.
    double assembly_seconds = 0, contact_seconds = 0, factorisation_seconds = 0, stability_seconds = 0, recovery_seconds = 0;
    double peak_memory_MB = 0;  ///< of the process until the end of the solution
};

/// A roll or pulley of the model with its name, for pictures.
struct NamedRoll {
    std::string name;
    Roll roll;
};

struct TransitionResult {
    std::vector<StateResult> states;  ///< in the order of the case
    std::vector<Judgement> criteria;
    std::vector<NamedRoll> rolls;  ///< of the whole belt
    TensionPath path;              ///< empty unless asked for
    int sets = 0;                  ///< full sets in the model
    Cost cost;
};

/// For whoever watches a long run.
struct ProgressEvent {
    std::string state;
    std::string phase;  ///< "coarse grid", "fine grid", "longer trough", "stability"
    int iteration = 0;
    double residual = 0;  ///< relative
};

}  // namespace swale
