#pragma once

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
};

/// In the order of choice; the first is what a page opens with.
const std::vector<ViewField>& view_fields();

/// Least and largest value over the belt, without what lies within `excluded` of the pulley's line, where strains are singular.
struct FieldRange {
    double low = 0, high = 0;
};
FieldRange range_of(const ViewField& field, const StateResult& state);

}  // namespace swale
