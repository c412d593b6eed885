#include "solver/load/bulk_load.h"

#include "mesh/quadrature.h"
#include "solver/load/bulk_surface.h"

#include <algorithm>
#include <cmath>

namespace swale {

namespace {

// Points of the rule in a span. Depth has a kink at the free edge; it does not matter for the sum, since the surface is laid by
// the same rule.
constexpr int points_along = 3, points_across = 4;

// A section of the patch as a spline across.
struct SectionCurve {
    const CubicBasis& across;
    Eigen::Matrix3Xd control;

    SectionCurve(const Patch& patch, const ControlPoints& points, const BasisValues& along)
        : across(patch.across), control(Eigen::Matrix3Xd::Zero(3, patch.across.size())) {
        for (int a = 0; a < 4; ++a)
            control += along.value[a] * points.middleCols(patch.index(along.first + a, 0), across.size());
    }

    Eigen::Vector3d sum(const BasisValues& basis, const std::array<double, 4>& factor) const {
        Eigen::Vector3d sum = Eigen::Vector3d::Zero();
        for (int b = 0; b < 4; ++b) sum += factor[b] * control.col(basis.first + b);
        return sum;
    }
    Eigen::Vector3d at(double y) const {
        const BasisValues basis = across.at(y);
        return sum(basis, basis.value);
    }
};

BeltSection section_of(const SectionCurve& curve, const LineRule& across) {
    BeltSection section;
    for (const LinePoint& point : across.points) {
        const Eigen::Vector3d position = curve.sum(point.basis, point.basis.value);
        const Eigen::Vector3d slope = curve.sum(point.basis, point.basis.slope);
        section.points.push_back({position.y(), position.z(), point.weight * slope.y()});
    }
    section.edge = curve.across.end();
    section.free_edge = [&curve, half = curve.across.begin() == 0](double s) -> Eigen::Vector2d {
        const Eigen::Vector3d left = curve.at(s);
        if (half) return {left.y(), left.z()};
        const Eigen::Vector3d right = curve.at(-s);
        return {(left.y() - right.y()) / 2, (left.z() + right.z()) / 2};
    };
    return section;
}

// Share of a span of the belt that lies beyond x = `from`.
double loaded_share(const Patch& patch, const ControlPoints& points, int span, double from) {
    const double begin = patch.jet(points, patch.along.breaks()[span], 0).position.x();
    const double end = patch.jet(points, patch.along.breaks()[span + 1], 0).position.x();
    return end > from ? std::clamp((end - from) / (end - begin), 0.0, 1.0) : 0;
}

// p n dA with n dA = (dz, -dy) dx in the section; `line_weight` is the bulk's weight per area of the section [N/mm^2].
void add_pressure(const SectionCurve& curve, const LineRule& across, const BulkSurface& surface, double line_weight,
                  Eigen::Matrix3Xd& forces) {
    for (const LinePoint& point : across.points) {
        const Eigen::Vector3d place = curve.sum(point.basis, point.basis.value);
        const Eigen::Vector3d slope = curve.sum(point.basis, point.basis.slope);
        const double pressure = line_weight * surface.depth(place.y(), place.z());
        const Eigen::Vector3d force = pressure * point.weight * Eigen::Vector3d(0, slope.z(), -slope.y());
        for (int b = 0; b < 4; ++b) forces.col(point.basis.first + b) += point.basis.value[b] * force;
    }
}

}  // namespace

BulkLoad bulk_load(const Patch& patch, const ControlPoints& points, const BulkRequest& request) {
    const LineRule along = gauss_rule(patch.along, points_along), across = gauss_rule(patch.across, points_across);
    const double area = patch.across.begin() == 0 ? request.area / 2 : request.area;
    BulkLoad load{ControlPoints::Zero(3, patch.points()), 0, request.slope, 0};
    for (std::size_t k = 0; k < along.points.size(); ++k) {
        const LinePoint& line = along.points[k];
        const double share = loaded_share(patch, points, static_cast<int>(k) / points_along, request.from);
        if (share == 0) continue;
        const double length = share * line.weight * request.belt_passing;
        const SectionCurve curve(patch, points, line.basis);
        const BulkSurface surface = lay_bulk(section_of(curve, across), area, request.slope);
        Eigen::Matrix3Xd forces = Eigen::Matrix3Xd::Zero(3, patch.across.size());
        add_pressure(curve, across, surface, request.weight * length, forces);
        for (int a = 0; a < 4; ++a)
            load.forces.middleCols(patch.index(line.basis.first + a, 0), patch.across.size()) += line.basis.value[a] * forces;
        load.end_energy = -forces.cwiseProduct(curve.control).sum() / line.weight;
        load.length += length;
        load.highest_slope = std::max(load.highest_slope, surface.slope);
    }
    return load;
}

}  // namespace swale
