#pragma once

#include "materials/section.h"

#include <string>
#include <vector>

namespace swale {

/// The return run: a belt that hangs under its tension over flat rolls all alike. Far from any pulley, so that the roll's plane
/// and mid-span are planes of symmetry.
struct ReturnRun {
    Section section;
    double width = 0;          ///< [mm]
    double tension = 0;        ///< of the whole belt along the run [N]
    double spacing = 0;        ///< roll to roll [mm]
    double roll_diameter = 0;  ///< [mm]
    double junction = 0;       ///< |y| of the lines on which a belt would be creased [mm]
};

/// What shape a belt remembers: its stress-free curvature across. Positive bends the edges away from the roll. In the usual
/// conveyor the carrying side lies on the return rolls: there a belt that remembers its trough bends its edges towards the roll
/// and has negative memory.
struct BeltMemory {
    double cupping = 0;       ///< curvature over the whole width [1/mm]
    double left_crease = 0;   ///< angle at y = +junction, spread over two thicknesses to each side [rad]
    double right_crease = 0;  ///< at y = -junction [rad]
};

/// A place across the roll and the force per length of roll that the belt presses it with.
struct RollPressure {
    double y = 0;      ///< in space, from the belt's centre line [mm]
    double width = 0;  ///< of belt that the place stands for [mm]
    double force = 0;  ///< [N/mm]
    double gap = 0;    ///< of light under the belt there; negative: pressed in [mm]
};

/// What presses on a return roll.
struct RollContact {
    bool converged = false;
    std::string reason;                  ///< the solver's sentence
    std::vector<RollPressure> pressure;  ///< from the right edge to the left one
    double force = 0;                    ///< on the roll [N]; the weight of one spacing of belt
    double edge_gap = 0;                 ///< the higher edge above the roll; negative: pressed in [mm]
    double widest_gap = 0;               ///< of light between belt and roll anywhere [mm]
};

/// How finely the belt is divided: a factor on every span.
struct ReturnGrid {
    double factor = 1;
};

/// Solves the belt on its roll by the shell. Half of it where both creases are alike. No convergence is told in the result.
RollContact contact_on_return_roll(const ReturnRun& run, const BeltMemory& memory, const ReturnGrid& grid = {});

}  // namespace swale
