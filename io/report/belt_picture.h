#pragma once

#include "io/picture/drawing.h"
#include "io/run_record.h"

namespace swale {

/// The belt on its rolls and pulley from above and aside, with its longitudinal strain: what stands where nothing can be
/// turned. Of a converged state. `width` of the picture in pixels.
Drawing belt_picture(const RunRecord& record, const StateResult& state, double width);

}  // namespace swale
