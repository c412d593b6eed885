#include "tests/verification/wrapped_belt.h"

#include "mesh/quadrature.h"
#include "solver/shell/shell_energy.h"

#include <algorithm>
#include <cmath>

namespace swale::verification {

namespace {

/// Laid on the cylinder up to half the wrap, straight beyond.
Eigen::Vector3d laid_on(const Wrap& wrap, double s, double y) {
    const double radius = Wrap::radius, turned = std::min(s / radius, wrap.angle / 2), beyond = s - radius * turned;
    return {radius * std::sin(turned) + beyond * std::cos(turned), y,
            radius * (std::cos(turned) - 1) - beyond * std::sin(turned)};
}

}  // namespace

double Wrap::layer() const {
    return std::sqrt(bending / tension);
}

double Wrap::foundation_layer() const {
    return std::pow(4 * bending / foundation, 0.25);
}

double Wrap::alpha() const {
    return std::acos(std::max(-1.0, 1 - unit_force / (2 * tension)));
}

double Wrap::lift_off() const {
    return radius * (angle / 2 - alpha());
}

double Wrap::line_force() const {
    return std::sqrt(tension * bending - bending * unit_force / 4) / radius;
}

Wrap wrap_on(double angle, double tension, double relative_foundation) {
    return {angle, tension, relative_foundation * tension * tension / Wrap::bending};
}

Patch patch_for(const Wrap& wrap, const FinePlace& fine) {
    const double length = std::max(wrap.lift_off(), 0.0) + 14 * wrap.layer();
    return strip(graded_breaks(0, length, wrap.layer() / 8, {fine}, {}), Wrap::width);
}

WrappedBelt wrapped_belt(const Wrap& wrap, const Patch& patch) {
    const Roll roll{{0, 0, -Wrap::radius}, Eigen::Vector3d::UnitY(), Eigen::Vector3d::UnitZ(),
                    Wrap::radius,          50 * Wrap::width,         1};
    // The corner of the law is rounded over a hundredth of the indentation on an arc or less.
    const ContactLaw law{wrap.foundation, 1e-6};
    const auto contact =
        std::make_shared<ContactEnergy>(patch, roll, law, 0.0, ContactWindow{0, patch.along.end(), 0, Wrap::width});
    Supports supports(patch.points());
    mirror_begin(supports, patch);
    supports.close();
    System system(patch, supports);
    system.add(std::make_shared<ShellEnergy>(patch, strip_section(wrap.membrane(), Wrap::bending)));
    system.add(contact);
    const Eigen::Vector3d direction(std::cos(wrap.angle / 2), 0, -std::sin(wrap.angle / 2));
    system.add(std::make_shared<DeadLoad>(end_load(patch, wrap.tension * Wrap::width * direction)));
    NewtonSettings settings;
    settings.tolerance = 1e-9;  // small reactions beside a large tension
    settings.step_cap = std::max(5.0, wrap.layer() / 5);
    settings.iterations = 200;
    const ControlPoints start = patch.follow([&](double s, double y) { return laid_on(wrap, s, y); });
    return {patch, equilibrium(system, start, settings), contact};
}

Bearing bearing_of(const WrappedBelt& belt) {
    double sum = 0, moment = 0;
    for (const LinePoint& point : gauss_rule(belt.patch.along, 6).points) {
        const double p = belt.contact->pressure_at(place(belt.patch, belt.points, point.position));
        sum += point.weight * p;
        moment += point.weight * p * point.position;
    }
    const double pressure = belt.contact->pressure_at(place(belt.patch, belt.points, 0));
    const double lift_off = (sum - std::sqrt(sum * sum - 2 * pressure * moment)) / pressure;
    return {pressure, sum - pressure * lift_off, lift_off};
}

}  // namespace swale::verification
