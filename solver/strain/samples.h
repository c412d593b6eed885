#pragma once

#include "solver/strain/belt_probe.h"
#include "solver/transition/belt_model.h"

namespace swale {

/// Rows every 25 mm or closer: at edge, junction and centre.
std::vector<AlongRow> sample_along(const BeltProbe& probe, const TransitionLayout& layout);

/// Rows every 10 mm or closer at "mid-transition", every station and every full set. The contact pressure at a set is the
/// largest of its contact line, since the line is only some millimetres wide.
std::vector<CrossSection> sample_across(const BeltProbe& probe, const TransitionLayout& layout, const BeltModel& model);

/// The whole belt: the breaks across; along the breaks and more points at the rolls.
BeltSurface sample_surface(const BeltProbe& probe, const BeltModel& model);

}  // namespace swale
