#pragma once

#include <Eigen/Core>

#include <functional>
#include <vector>

namespace swale {

/// Top of the bulk over one cross-section of the belt: the parabola through both free edges, z = level at y = +-half_width,
/// that falls off there by `slope`.
struct BulkSurface {
    double half_width = 0;  ///< [mm]
    double level = 0;       ///< [mm]
    double slope = 0;       ///< tangent of the surcharge angle

    /// How high the bulk stands over a point of the belt, 0 beside it [mm].
    double depth(double y, double z) const;
};

/// One point of a rule across the belt: where it is, and the width that it stands for, seen from above [mm].
struct SectionPoint {
    double y = 0, z = 0, width = 0;
};

/// A cross-section of the belt: points of a rule for areas, and the place (y, z) of the free edge at a distance s from the
/// centre line, up to `edge`; the mean of both sides of a belt that does not lie straight.
struct BeltSection {
    std::vector<SectionPoint> points;
    std::function<Eigen::Vector2d(double s)> free_edge;
    double edge = 0;
};

/// Area between the surface and the belt, as far as the points go [mm^2].
double bulk_area(const BeltSection& section, const BulkSurface& surface);

/// The surface of that area and slope. Where it would reach over the belt's edge it begins there and stands steeper.
BulkSurface lay_bulk(const BeltSection& section, double area, double slope);

}  // namespace swale
