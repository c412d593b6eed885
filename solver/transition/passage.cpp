#include "solver/transition/passage.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

// A cover gives way by a part of its thickness, more if it is soft; deeper than this is no contact any more.
double deepest_indentation(const Roll& roll, const Section& section) {
    return std::max(0.5 * section.underside, 0.1 * roll.radius);
}

// Belt points near a roll: rows through the roll's section and on both sides of it.
template <class Visit>
void visit_near(const BeltModel& model, const BeltContact& contact, const ControlPoints& points, const Visit& visit) {
    const Roll& roll = contact.energy->roll();
    const CubicBasis &along = model.patch.along, &across = model.patch.across;
    const double at_roll = material_place(model, points, contact.x);
    for (int k = -10; k <= 10; ++k) {
        const double x = std::clamp(at_roll + k * roll.radius / 8, along.begin(), along.end());
        for (int l = 0; l <= 2 * across.spans(); ++l) {
            const double y = across.begin() + (across.end() - across.begin()) * l / (2.0 * across.spans());
            visit(k, model.patch.jet(points, x, y).position);
        }
    }
}

}  // namespace

std::string passage_through_rolls(const BeltModel& model, const ControlPoints& points, const Section& section) {
    for (const BeltContact& contact : model.contacts) {
        const Roll& roll = contact.energy->roll();
        const double deepest = deepest_indentation(roll, section);
        double indentation = 0, behind = 0;
        visit_near(model, contact, points, [&](int row, const Eigen::Vector3d& position) {
            const Eigen::Vector3d offset = position - roll.centre;
            if (std::abs(offset.dot(roll.axis)) > roll.half_length) return;
            indentation = std::max(indentation, section.underside - roll.distance(position));
            if (row == 0) behind = std::max(behind, -offset.dot(roll.up));
        });
        if (behind > 0)
            return fmt::format("the belt lies {:.1f} mm behind the axis of {} (it passed through the roll)", behind,
                               contact.name);
        if (indentation > deepest)
            return fmt::format("the belt is {:.1f} mm inside {}, more than {:.1f} mm", indentation, contact.name, deepest);
    }
    return {};
}

}  // namespace swale
