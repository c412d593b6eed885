#include "solver/strain/readings.h"

#include "mesh/belt_grid.h"
#include "mesh/quadrature.h"
#include "solver/strain/line_force.h"
#include "solver/strain/peak_kinds.h"
#include "solver/strain/read_places.h"
#include "solver/strain/support_forces.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace swale {

namespace {

std::vector<SurfacePoint> read_bay(const TroughBay& bay, const Section& section) {
    return read_belt(BeltProbe(bay.patch, bay.points, section), {0, bay.patch.along.end(), {}, 0});
}

// Behind the model stands the running trough, its nearest bay as good as any: what a raised pulley keeps off the rolls for many
// metres, junction and centre, is strained most there.
void add_running_bay(const BeltModel& model, const Section& section, std::vector<SurfacePoint>& points) {
    const TroughBay& bay = model.beyond->bay;
    for (SurfacePoint& point : read_bay(bay, section)) {
        point.x = model.patch.along.end() + bay.patch.along.end() - point.x;
        points.push_back(point);
    }
}

// The larger one; the first of all has none before it.
void raise(Reading& reading, double value, double x, double y) {
    if (std::isnan(reading.value) || value > reading.value) reading = {value, {}, {}, x, y};
}

Reading not_defined() {
    Reading reading;
    reading.value = std::numeric_limits<double>::quiet_NaN();
    return reading;
}

// Contact pressure integrated along the belt, per width of the wing roll, as far as grid and cover can tell.
Reading wing_line_force(const BeltModel& model, const ControlPoints& points, const Section& section) {
    Reading reading = not_defined();
    const LineForceResolution resolution{boundary_layers(section).across, section.underside};
    for (const BeltContact& contact : model.contacts) {
        if (contact.place != RollPlace::wing) continue;
        const LineForcePeak peak = largest_line_force(contact.energy->line_force(points), model.patch.across, resolution);
        raise(reading, peak.force, material_place(model, points, contact.x), peak.y);
    }
    return reading;
}

// The pulley's is another matter: it bears the belt's pull.
Reading largest_roll_force(const BeltModel& model, const ControlPoints& points) {
    Reading reading = not_defined();
    for (const BeltContact& contact : model.contacts) {
        if (contact.place == RollPlace::pulley) continue;
        const double force = roll_force(contact, model.half, points).norm();
        raise(reading, force, material_place(model, points, contact.x), contact.energy->roll().centre.y());
    }
    return reading;
}

// The rolls of the running bays bear most if the belt lies off the modelled sets.
void add_running_rolls(const TransitionCase& transition, const BeltModel& model, Reading& reading) {
    for (const auto& [name, force] : running_roll_forces(transition, model.beyond->bay)) {
        const auto alike = std::ranges::find_if(model.contacts, [&](const BeltContact& c) { return c.name.ends_with(name); });
        const double y = alike == model.contacts.end() ? 0 : alike->energy->roll().centre.y();
        raise(reading, force, model.patch.along.end(), y);
    }
}

}  // namespace

Readings take_readings(const TransitionCase& transition, const BeltModel& model, const ControlPoints& points) {
    const Section& section = transition.belt.section;
    const bool running = model.beyond && transition.layout.same_fore_and_aft();
    const BeltProbe probe(model.patch, points, section);
    std::vector<SurfacePoint> places = read_belt(probe, reading_range(transition.layout, section, model));
    if (running) add_running_bay(model, section, places);

    Readings readings;
    for (const PeakKind& kind : peak_kinds)
        readings.*kind.reading = peak(kind, places, {transition.layout, section, probe.edge()});
    readings.wing_line_force_max = wing_line_force(model, points, section);
    readings.roll_force_max = largest_roll_force(model, points);
    if (running) add_running_rolls(transition, model, readings.roll_force_max);
    return readings;
}

Reading junction_bending_strain(const TransitionCase& transition, const TroughBay& bay) {
    const Section& section = transition.belt.section;
    return peak(junction_kind, read_bay(bay, section), {transition.layout, section, bay.patch.across.end()});
}

double far_strain(const BeltProbe& probe) {
    double sum = 0, width = 0;
    for (const LinePoint& place : gauss_rule(probe.patch().across, 3).points) {
        sum += place.weight * probe.at(probe.end(), place.position).strain;
        width += place.weight;
    }
    return sum / width;
}

}  // namespace swale
