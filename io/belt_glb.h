#pragma once

#include "io/run_record.h"

#include <string>

namespace swale {

/// One converged state as binary glTF 2.0 for a slide or a viewer: the belt coloured by its longitudinal strain in the bands of
/// the report's map, the rolls and the pulley grey. Metres and y up, as glTF wants them: x along, y up, z to the right.
std::string belt_glb(const RunRecord& record, const StateResult& state);

}  // namespace swale
