#pragma once

#include "io/hdf5/writer.h"
#include "solver/transition_case.h"
#include "solver/transition_result.h"

namespace swale {

/// What a result file says of one state, by the layout in io/result_database.h.
void write_state_group(const Hdf5Group& group, const TensionState& asked, const StateResult& state);

}  // namespace swale
