#pragma once

#include "io/picture/field_map.h"
#include "io/run_record.h"

namespace swale {

/// Longitudinal strain on the flattened belt with sets, rolls, junctions, its peak and its limit. Of a converged state.
FieldMap strain_map(const RunRecord& record, const StateResult& state);

}  // namespace swale
