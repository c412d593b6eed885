#include "tests/verification/line_rules.h"

#include "benchmarks/published/fabric_belt.h"
#include "mesh/belt_grid.h"
#include "tests/verification/patch_rule.h"

#include <cmath>

namespace swale::verification {

std::shared_ptr<PlainShell> Rule::shell(const Patch& patch, const Section& section, const NaturalCurvature& curvature) const {
    return std::make_shared<PlainShell>(patch, section, curvature, on(patch.along), on(patch.across));
}

Rule gauss(int points_per_span) {
    const std::string n = std::to_string(points_per_span);
    return {n + " x " + n + " Gauss points a span",
            [points_per_span](const CubicBasis& basis) { return gauss_rule(basis, points_per_span); }};
}

Rule of_patch() {
    return {"rule of the whole patch", patch_rule};
}

Eigen::Vector3d no_curvature(double, double) {
    return Eigen::Vector3d::Zero();
}

Patch fabric_grid(double grid) {
    const TransitionCase fabric = benchmark::fabric_transition(2000, 104, grid);
    const Section& section = fabric.belt.section;
    return belt_grid(fabric.layout, {1, section.underside, grid, true, boundary_layers(section)});
}

double off(double value, double reference) {
    return std::abs(value / reference - 1);
}

}  // namespace swale::verification
