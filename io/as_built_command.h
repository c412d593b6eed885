#pragma once

#include "io/size_command.h"
#include "solver/sizing.h"

#include <ostream>
#include <string>

namespace swale {

/// `swale size` of a case with a survey: how far the transition as measured is from its limits, beside the one that was drawn,
/// and what single changes do to it. Writes `as-built.json` and the results of the one that was measured into the folder.
/// Returns the exit code of `solve` of the case.
int run_as_built(const SizeRequest& request, const std::string& text, const TransitionCase& given, const SizingBounds& bounds,
                 std::ostream& answer);

}  // namespace swale
