#pragma once

#include "solver/wear/pressure_shape.h"

#include <string>
#include <vector>

namespace swale {

/// Nodes of the memories that one belt is solved for.
struct ShapeNodes {
    std::vector<double> cupping;        ///< rise / width of a free belt, above 0; taken with both signs
    std::vector<double> crease;         ///< angle away from flat, above 0 [rad]
    std::vector<double> mixed_cupping;  ///< with both signs, together with
    std::vector<double> mixed_crease;   ///< each of these
    std::vector<double> stiffness;      ///< factors on D22
};

/// The factors are taken as ends and middle of the range.
ShapeNodes usual_nodes(double stiffness_low, double stiffness_high);

/// What of a memory a shape depends on.
struct Memory {
    double cupping = 0;  ///< rise / width, positive: the edges bend away from the roll
    double crease = 0;   ///< [rad], positive in the direction in which a belt on this side is creased
};

/// Pressure shapes of a belt on its return roll over its memory and its stiffness across, solved once, mixed in between: one
/// belt's answer to every survey.
class ShapeTable {
  public:
    /// Solves on two cores. `crease_sign`: +1 if creased wings bend away from the roll, -1 towards it.
    ShapeTable(const ReturnRun& run, const ShapeNodes& nodes, int crease_sign);

    /// Within the nodes; one of the memory's entries is 0, or both lie within the mixed nodes.
    PressureShape at(const Memory& memory, double stiffness) const;
    int solved() const { return solved_; }
    /// Sentences of those that found no equilibrium; their nodes take the shape of the node before.
    const std::vector<std::string>& failures() const { return failures_; }

  private:
    struct Grid {
        std::vector<double> cupping, crease;  ///< rise / width; [rad]
        std::vector<PressureShape> shape;     ///< crease fastest
        PressureShape at(double cupping, double crease) const;
    };
    struct Tables {
        Grid cupped, creased, mixed;
        std::vector<std::string> failures;
        int solved = 0;
    };
    static Tables solved_tables(const ReturnRun& run, const ShapeNodes& nodes, int crease_sign);
    static PressureShape at(const Tables& tables, const Memory& memory);

    std::vector<double> stiffness_;
    std::vector<Tables> tables_;  ///< one a factor
    std::vector<std::string> failures_;
    int solved_ = 0;
};

/// The section with D22 times a factor; D12 and D66 keep their shares of sqrt(D11 D22).
Section with_stiffness_across(Section section, double factor);

}  // namespace swale
