#include "solver/load/bulk_surface.h"

#include <algorithm>

namespace swale {

namespace {

// Where an increasing function of the number between low and high comes to its value.
template <class Function>
double bisect(double low, double high, double value, const Function& f) {
    for (int halving = 0; halving < 50; ++halving) {
        const double middle = (low + high) / 2;
        (f(middle) < value ? low : high) = middle;
    }
    return (low + high) / 2;
}

BulkSurface surface_from(const BeltSection& section, double s, double slope) {
    const Eigen::Vector2d edge = section.free_edge(s);
    return {edge.x(), edge.y(), slope};
}

constexpr double steepest = 10;  // no bulk stands like that; what it is asked for is reported

}  // namespace

double BulkSurface::depth(double y, double z) const {
    if (half_width <= 0) return 0;
    return std::max(0.0, level + slope * (half_width * half_width - y * y) / (2 * half_width) - z);
}

double bulk_area(const BeltSection& section, const BulkSurface& surface) {
    double area = 0;
    for (const SectionPoint& point : section.points) area += point.width * surface.depth(point.y, point.z);
    return area;
}

BulkSurface lay_bulk(const BeltSection& section, double area, double slope) {
    const auto reaching = [&](double s) { return surface_from(section, s, slope); };
    const auto standing = [&](double t) { return surface_from(section, section.edge, t); };
    if (bulk_area(section, reaching(section.edge)) >= area)
        return reaching(bisect(0, section.edge, area, [&](double s) { return bulk_area(section, reaching(s)); }));
    return standing(bisect(slope, steepest, area, [&](double t) { return bulk_area(section, standing(t)); }));
}

}  // namespace swale
