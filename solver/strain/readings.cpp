#include "solver/strain/readings.h"

#include "mesh/belt_grid.h"
#include "mesh/quadrature.h"
#include "solver/strain/line_force.h"
#include "solver/strain/support_forces.h"

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
        if (set.support == Support::held) range.held_lines.push_back(set.path * model.scale);
    return range;
}

namespace {

// Along: a few places in every span inside [from, to], and both ends, since a peak may lie on the border.
std::vector<double> places_along(const CubicBasis& basis, double from, double to) {
    constexpr int per_span = 4;
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

// Across: the centre line, the edges, and two Gauss points a span. There the curvature of a cubic spline is most exact: its
// piecewise linear course overshoots a peak at the knots by h^2/12 of its second derivative. Against grids of half the spans
// the junction's curvature was 0.1 % off there and 1 % at the knots.
std::vector<double> places_across(const CubicBasis& basis) {
    std::vector<double> ys{basis.begin(), basis.end()};
    if (basis.begin() < 0) ys.push_back(0);
    for (const LinePoint& point : gauss_rule(basis, 2).points) ys.push_back(point.position);
    return ys;
}

void raise(Reading& reading, double value, double x, double y, bool& first) {
    if (first || value > reading.value) reading = {value, {}, {}, x, y};
    first = false;
}

// The belt at every place of the range, read once for all quantities.
std::vector<SurfacePoint> read_belt(const BeltProbe& probe, const ReadingRange& range) {
    const std::vector<double> ys = places_across(probe.patch().across);
    std::vector<SurfacePoint> points;
    for (const double x : places_along(probe.patch().along, range.begin, range.end))
        if (range.holds(x))
            for (const double y : ys) points.push_back(probe.at(x, y));
    return points;
}

// Behind the model stands the running trough, its nearest bay as good as any: what a raised pulley keeps off the rolls for many
// metres, junction and centre, is strained most there.
std::vector<SurfacePoint> read_trough(const TroughBay& bay, const Section& section, double model_end) {
    const double bay_end = bay.patch.along.end();
    std::vector<SurfacePoint> points = read_belt(BeltProbe(bay.patch, bay.points, section), {0, bay_end, {}, 0});
    for (SurfacePoint& point : points) point.x = model_end + bay_end - point.x;
    return points;
}

// Largest value of `measure` over the points that `wanted` picks.
template <class Wanted, class Measure>
Reading largest(const std::vector<SurfacePoint>& points, const Wanted& wanted, const Measure& measure) {
    Reading reading;
    bool first = true;
    for (const SurfacePoint& point : points)
        if (wanted(point)) raise(reading, measure(point), point.x, point.y, first);
    return reading;
}

Reading negated(Reading reading) {
    reading.value = -reading.value;
    return reading;
}

Reading junction_reading(const std::vector<SurfacePoint>& points, const TransitionLayout& layout, const Section& section) {
    const double near = 0.1 * layout.belt_width;
    const std::vector<double> junctions = layout.junctions();
    const auto near_one = [&](const SurfacePoint& p) {
        return std::ranges::any_of(junctions, [&](double junction) { return std::abs(std::abs(p.y) - junction) <= near; });
    };
    return largest(points, near_one, [&](const SurfacePoint& p) { return std::abs(p.curvature[1]) * section.farther_face(); });
}

// Contact pressure integrated along the belt, per width of the wing roll, as far as grid and cover can tell.
Reading wing_line_force(const BeltModel& model, const ControlPoints& points, const Section& section) {
    Reading reading;
    bool first = true;
    const LineForceResolution resolution{boundary_layers(section).across, section.underside};
    for (const BeltContact& contact : model.contacts) {
        if (contact.place != RollPlace::wing) continue;
        const LineForcePeak peak = largest_line_force(contact.energy->line_force(points), model.patch.across, resolution);
        raise(reading, peak.force, material_place(model, points, contact.x), peak.y, first);
    }
    if (first) reading.value = std::numeric_limits<double>::quiet_NaN();  // no wing rolls: not defined
    return reading;
}

// The pulley's is another matter: it bears the belt's pull.
Reading largest_roll_force(const BeltModel& model, const ControlPoints& points) {
    Reading reading;
    bool first = true;
    for (const BeltContact& contact : model.contacts) {
        if (contact.place == RollPlace::pulley) continue;
        const double force = roll_force(contact, model.half, points).norm();
        raise(reading, force, material_place(model, points, contact.x), contact.energy->roll().centre.y(), first);
    }
    if (first) reading.value = std::numeric_limits<double>::quiet_NaN();  // no rolls: not defined
    return reading;
}

}  // namespace

Readings take_readings(const BeltProbe& probe, const TransitionLayout& layout, const Section& section, const BeltModel& model) {
    std::vector<SurfacePoint> points = read_belt(probe, reading_range(layout, section, model));
    if (model.beyond && layout.same_fore_and_aft())
        for (const SurfacePoint& point : read_trough(model.beyond->bay, section, probe.end())) points.push_back(point);
    const double edge = probe.edge();
    const auto anywhere = [](const SurfacePoint&) { return true; };
    const auto at_edge = [&](const SurfacePoint& p) { return std::abs(p.y) == edge; };
    const auto at_centre = [](const SurfacePoint& p) { return p.y == 0; };

    Readings r;
    r.edge_strain_max = largest(points, at_edge, [](const SurfacePoint& p) { return p.strain; });
    r.centre_strain_min = negated(largest(points, at_centre, [](const SurfacePoint& p) { return -p.strain; }));
    r.edge_tension_max = largest(points, at_edge, [](const SurfacePoint& p) { return p.force[0]; });
    r.tension_min = negated(largest(points, anywhere, [](const SurfacePoint& p) { return -p.force[0]; }));
    r.junction_bending_strain_max = junction_reading(points, layout, section);
    // A strain of Green as stretch less one: sqrt(1 + 2 e) - 1.
    r.surface_strain_max = largest(points, anywhere, [](const SurfacePoint& p) {
        return std::sqrt(1 + 2 * std::max(principal_strain(p.top_strain), principal_strain(p.bottom_strain))) - 1;
    });
    r.wing_line_force_max = wing_line_force(model, probe.points(), section);
    r.roll_force_max = largest_roll_force(model, probe.points());
    return r;
}

Reading junction_bending_strain(const BeltProbe& probe, const TransitionLayout& layout, const Section& section,
                                const ReadingRange& range) {
    return junction_reading(read_belt(probe, range), layout, section);
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
