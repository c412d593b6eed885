#pragma once

#include "mesh/patch.h"

#include <limits>

namespace swale {

/// Bulk to lay on a belt.
struct BulkRequest {
    double weight = 0;                                       ///< per volume [N/mm^3]
    double area = 0;                                         ///< cross-section, of the whole belt [mm^2]
    double slope = 0;                                        ///< tangent of the surcharge angle
    double belt_passing = 1;                                 ///< length of bulk per unstretched length of belt
    double from = -std::numeric_limits<double>::infinity();  ///< x in space where the load begins [mm]
};

/// Forces of the bulk on a belt of given shape.
struct BulkLoad {
    ControlPoints forces;      ///< on the control points of the modelled part [N]
    double length = 0;         ///< of bulk on the belt [mm]
    double highest_slope = 0;  ///< that the bulk needs to stay on the belt
    double end_energy = 0;     ///< -F.x per unstretched length of the section nearest to the far end [N]
};

/// Lays the bulk on the belt section by section, each with the same area, and presses with it: p = weight times depth, square
/// to the belt as it lies across. No other stress square to the belt holds every column of the bulk up without friction between
/// the columns; then the vertical parts of p add up to the weight exactly. Along the belt nothing pushes: in steady motion the
/// bulk gains no speed, so that friction takes up what p has along x.
///
/// Of a half belt (`across` from 0) the half of the bulk. A span of which only a part is loaded bears that share of it.
BulkLoad bulk_load(const Patch& patch, const ControlPoints& points, const BulkRequest& request);

}  // namespace swale
