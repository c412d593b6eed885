#pragma once

#include "materials/section.h"
#include "solver/shell/shell_energy.h"
#include "tests/solver/plain_shell.h"

#include <functional>
#include <memory>
#include <string>
#include <vector>

/// What is compared of rules of quadrature for the shell: 2 x 2, 3 x 3 and 4 x 4 Gauss points a span, and the generalised Gauss
/// rule of the whole patch with 2.25. The shell is the plain twin, which takes any rule.
namespace swale::verification {

struct Rule {
    std::string name;
    std::function<LineRule(const CubicBasis&)> on;

    std::shared_ptr<PlainShell> shell(const Patch& patch, const Section& section, const NaturalCurvature& curvature) const;
};

Rule gauss(int points_per_span);
Rule of_patch();

/// None: the flat belt.
Eigen::Vector3d no_curvature(double x, double y);

/// Graded knots of the fabric belt of `benchmarks/published`, one set; 1: its coarse grid.
Patch fabric_grid(double grid);

/// Relative difference.
double off(double value, double reference);

}  // namespace swale::verification
