#include "solver/wear/return_model.h"

#include "materials/gravity.h"
#include "mesh/graded_breaks.h"
#include "solver/equilibrium/dead_load.h"
#include "solver/shell/shell_energy.h"
#include "solver/wear/return_supports.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace swale {

namespace {

constexpr double crease_reach = 2;  // to each side, in thicknesses: about the radius of a fold of the whole belt

// The belt's law with the axes exchanged. The carcass of a return run is pulled along: the linear law serves.
Section turned(Section section) {
    Eigen::PermutationMatrix<3> swap(Eigen::Vector3i(1, 0, 2));
    section.membrane = swap * section.membrane * swap;
    section.bending = swap * section.bending * swap;
    section.compression = {};
    return section;
}

NaturalCurvature natural_curvature(const ReturnRun& run, const BeltMemory& memory) {
    const double reach_of_crease = crease_reach * run.section.thickness, junction = run.junction;
    return [=](double x, double) {
        const bool creased = std::abs(std::abs(x) - junction) < reach_of_crease;
        const double angle = x > 0 ? memory.left_crease : memory.right_crease;
        return Eigen::Vector3d(memory.cupping + (creased ? angle / (2 * reach_of_crease) : 0), 0, 0);
    };
}

std::vector<double> mirrored(const std::vector<double>& half) {
    std::vector<double> whole;
    for (auto place = half.rbegin(); place != half.rend(); ++place) whole.push_back(-*place);
    whole.insert(whole.end(), half.begin() + 1, half.end());
    return whole;
}

std::vector<double> breaks_across(const ReturnRun& run, double factor) {
    const double edge = run.width / 2, reach_of_crease = crease_reach * run.section.thickness;
    const std::vector<double> pinned{run.junction - reach_of_crease, run.junction + reach_of_crease};
    return graded_breaks(0, edge, 30 * factor, {{edge, 8 * factor, 0, 0.4}, {run.junction, 28 * factor, 30, 0.5}}, pinned);
}

std::vector<double> breaks_along(const ReturnRun& run, double factor) {
    return graded_breaks(0, run.spacing / 2, 400 * factor, {{0, 6 * factor, 4, 0.6}}, {});
}

Roll return_roll(const ReturnRun& run) {
    Roll roll;
    roll.radius = run.roll_diameter / 2;
    roll.centre = {0, 0, -roll.radius};
    roll.axis = Eigen::Vector3d::UnitX();
    roll.half_length = run.width;
    return roll;
}

std::shared_ptr<const ContactEnergy> contact(const ReturnRun& run, const Patch& patch) {
    const ContactWindow window{patch.along.begin(), patch.along.end(), 0, std::min(contact_reach, patch.across.end())};
    return std::make_shared<ContactEnergy>(patch, return_roll(run), ContactLaw{run.section.foundation}, run.section.underside,
                                           window, 4, 5);
}

}  // namespace

Patch return_patch(const ReturnRun& run, bool half, const ReturnGrid& grid) {
    const std::vector<double> across = breaks_across(run, grid.factor);
    return {CubicBasis(half ? across : mirrored(across)), CubicBasis(breaks_along(run, grid.factor))};
}

ReturnModel return_model(const ReturnRun& run, const BeltMemory& memory, const Patch& patch, double mid_span) {
    const bool half = patch.along.begin() == 0;
    const Section section = turned(run.section);
    ReturnModel model{patch, half, contact(run, patch), System(patch, return_supports(patch, mid_span))};
    model.system.add(std::make_shared<ShellEnergy>(patch, section, natural_curvature(run, memory), 2));
    model.system.add(std::make_shared<DeadLoad>(area_load(patch, {0, 0, -section.mass * gravity})), TermKind::load);
    model.system.add(model.contact, TermKind::contact);
    return model;
}

double tension_at_mid_span(const ReturnModel& model, const ControlPoints& points) {
    const ControlPoints reaction = model.system.full_gradient(points);
    double tension = 0;
    for (int i = 0; i < model.patch.along.size(); ++i)
        tension += reaction(1, model.patch.index(i, model.patch.across.size() - 1));
    return model.half ? 2 * tension : tension;
}

ControlPoints flat_on_roll(const ReturnRun& run, const Patch& patch) {
    const double stretch = 1 + run.tension / (run.width * run.section.membrane(0, 0));
    return patch.follow([&](double x, double y) { return Eigen::Vector3d(x, stretch * y, run.section.underside); });
}

}  // namespace swale
