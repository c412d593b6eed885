#pragma once

#include "mesh/transition_layout.h"
#include "solver/transition_result.h"

#include <string>
#include <vector>

namespace swale {

/// A field that maps and the 3-D view show, in its unit of print.
struct ViewField {
    std::string id, name, unit;
    bool both_signs = false;    ///< shown about zero
    bool mirrored_odd = false;  ///< of half a model: changes its sign across the centre line
    double (*value)(const StateResult& state, size_t point);
    bool (*exists)(const StateResult& state) = [](const StateResult&) { return true; };
    double power = 1;    ///< of the share of the range that colours follow; below 1: small values are told apart
    double widened = 0;  ///< the page draws the largest value within so much along the belt, of what stands in lines [mm]
};

/// In the order of choice; the first is what a page opens with.
const std::vector<ViewField>& view_fields();

/// Lines besides the pulley's that hold the belt, such as a held far end: places along the belt [mm].
std::vector<double> held_lines(const TransitionLayout& layout, const StateResult& state);

/// Least and largest value over the belt, without what lies within `excluded` of the pulley's line or a held one, where strains
/// are singular.
struct FieldRange {
    double low = 0, high = 0;
};
FieldRange range_of(const ViewField& field, const StateResult& state, const std::vector<double>& held);

}  // namespace swale
