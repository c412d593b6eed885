#include "solver/strain/peak_kinds.h"

#include "solver/strain/belt_probe.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

using Point = const SurfacePoint&;
using Context = const PeakContext&;

bool anywhere(Point, Context) {
    return true;
}
bool at_edge(Point p, Context context) {
    return std::abs(p.y) == context.edge;
}
bool at_centre(Point p, Context) {
    return p.y == 0;
}
bool near_junction(Point p, Context context) {
    const double near = 0.1 * context.layout.belt_width;
    return std::ranges::any_of(context.layout.junctions(),
                               [&](double junction) { return std::abs(std::abs(p.y) - junction) <= near; });
}

double strain(Point p, Context) {
    return p.strain;
}
double tension(Point p, Context) {
    return p.force[0];
}
double bending_strain(Point p, Context context) {
    return std::abs(p.curvature[1]) * context.section.farther_face();
}
double face_strain(Point p, Context) {
    return std::sqrt(1 + 2 * std::max(principal_strain(p.top_strain), principal_strain(p.bottom_strain))) - 1;
}

}  // namespace

const std::array<PeakKind, 6> peak_kinds{{{&Readings::edge_strain_max, 1, at_edge, strain},
                                          {&Readings::centre_strain_min, -1, at_centre, strain},
                                          {&Readings::edge_tension_max, 1, at_edge, tension},
                                          {&Readings::tension_min, -1, anywhere, tension},
                                          {&Readings::junction_bending_strain_max, 1, near_junction, bending_strain},
                                          {&Readings::surface_strain_max, 1, anywhere, face_strain}}};

const PeakKind& junction_kind = peak_kinds[4];

Reading peak(const PeakKind& kind, const std::vector<SurfacePoint>& points, const PeakContext& context) {
    Reading reading;
    bool first = true;
    for (const SurfacePoint& point : points) {
        if (!kind.counts(point, context)) continue;
        const double value = kind.value(point, context);
        if (first || kind.sign * value > kind.sign * reading.value) reading = {value, {}, {}, point.x, point.y};
        first = false;
    }
    return reading;
}

}  // namespace swale
