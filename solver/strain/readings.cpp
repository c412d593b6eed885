#include "solver/strain/readings.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace swale {

bool ReadingRange::holds(double x) const {
    if (x < begin || x > end) return false;
    return std::none_of(held_lines.begin(), held_lines.end(), [&](double line) { return std::abs(x - line) < excluded; });
}

ReadingRange reading_range(const TransitionLayout& layout, const Section& section, const BeltModel& model) {
    ReadingRange range;
    range.excluded = std::max(0.05 * layout.belt_width, 4 * section.thickness);
    const bool wrapped = model.patch.along.begin() < 0;
    range.begin = wrapped ? 0 : range.excluded;
    range.end = model.patch.along.end() - (layout.trough.support == Support::held ? range.excluded : 0);
    for (const IdlerSet& set : model.idlers)
        if (set.support == Support::held) range.held_lines.push_back(set.x * model.scale);
    return range;
}

std::array<Reading*, 7> Readings::all() {
    return {&edge_strain_max,    &centre_strain_min,  &edge_tension_max, &tension_min, &junction_bending_strain_max,
            &surface_strain_max, &wing_line_force_max};
}

namespace {

// Sample places of a basis inside [from, to]: a few in every span and both ends, since a peak may lie on the border.
std::vector<double> places(const CubicBasis& basis, int per_span, double from, double to) {
    std::vector<double> xs;
    for (int s = 0; s < basis.spans(); ++s)
        for (int k = 0; k < per_span; ++k)
            xs.push_back(basis.breaks()[s] + (basis.breaks()[s + 1] - basis.breaks()[s]) * k / per_span);
    xs.push_back(basis.end());
    std::erase_if(xs, [&](double x) { return x < from || x > to; });
    for (const double border : {from, to})
        if (border > basis.begin() && border < basis.end()) xs.push_back(border);
    return xs;
}

void raise(Reading& reading, double value, double x, double y, bool& first) {
    if (first || value > reading.value) reading = {value, {}, {}, x, y};
    first = false;
}

// Largest value of `measure` over the given points.
template <class Measure>
Reading largest(const BeltProbe& probe, const std::vector<double>& xs, const std::vector<double>& ys, const ReadingRange& range,
                const Measure& measure) {
    Reading reading;
    bool first = true;
    for (const double x : xs)
        if (range.holds(x))
            for (const double y : ys) raise(reading, measure(probe.at(x, y)), x, y, first);
    return reading;
}

Reading negated(Reading reading) {
    reading.value = -reading.value;
    return reading;
}

// Contact pressure integrated along the belt, per width of the wing roll.
Reading wing_line_force(const BeltModel& model, const ControlPoints& points) {
    Reading reading;
    bool first = true;
    for (const BeltContact& contact : model.contacts)
        if (contact.place == RollPlace::wing)
            for (const auto& [y, force] : contact.energy->line_force(points))
                raise(reading, force, material_place(model, points, contact.x), y, first);
    if (first) reading.value = std::numeric_limits<double>::quiet_NaN();  // no wing rolls: not defined
    return reading;
}

}  // namespace

Readings take_readings(const BeltProbe& probe, const TransitionLayout& layout, const Section& section, const BeltModel& model) {
    const ReadingRange range = reading_range(layout, section, model);
    const std::vector<double> xs = places(probe.patch().along, 4, range.begin, range.end);
    const std::vector<double> ys = places(probe.patch().across, 2, -1e300, 1e300);
    const double edge = probe.edge(), near = 0.1 * layout.belt_width, junction = layout.junction();
    const std::vector<double> edges = model.half ? std::vector{edge} : std::vector{edge, -edge};
    std::vector<double> at_junction = ys;
    std::erase_if(at_junction, [&](double y) { return std::abs(std::abs(y) - junction) > near; });

    Readings r;
    r.edge_strain_max = largest(probe, xs, edges, range, [](const SurfacePoint& p) { return p.strain; });
    r.centre_strain_min = negated(largest(probe, xs, {0}, range, [](const SurfacePoint& p) { return -p.strain; }));
    r.edge_tension_max = largest(probe, xs, edges, range, [](const SurfacePoint& p) { return p.force[0]; });
    r.tension_min = negated(largest(probe, xs, ys, range, [](const SurfacePoint& p) { return -p.force[0]; }));
    r.junction_bending_strain_max = largest(probe, xs, at_junction, range, [&](const SurfacePoint& p) {
        return std::abs(p.curvature[1]) * section.farther_face();
    });
    // A strain of Green as stretch less one: sqrt(1 + 2 e) - 1.
    r.surface_strain_max = largest(probe, xs, ys, range, [](const SurfacePoint& p) {
        return std::sqrt(1 + 2 * std::max(principal_strain(p.top_strain), principal_strain(p.bottom_strain))) - 1;
    });
    r.wing_line_force_max = wing_line_force(model, probe.points());
    return r;
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
