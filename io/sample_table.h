#pragma once

#include "solver/transition_result.h"

#include <vector>

namespace swale {

/// One column of a sample table. `name` ends in its unit as the csv files print it; `unit` is the unit alone.
template <class Row>
struct Column {
    const char* name;
    const char* unit;
    double (*value)(const Row&);
};

/// Edge, junction and centre side by side along the belt; spatial_x_mm is the centre line's. Tension is N11, force per
/// unstretched width; the junction's curvature is the one across the belt. z from the flat belt's mid-surface.
const std::vector<Column<AlongRow>>& along_columns();

/// One section across the belt.
const std::vector<Column<SurfacePoint>>& across_columns();

}  // namespace swale
