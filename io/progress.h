#pragma once

#include "solver/transition.h"

namespace swale {

/// Shows states and Newton iterations on one line of standard error that is written over and over; nothing at all if standard
/// error is no terminal. The line is wiped when the last copy of the listener goes.
ProgressListener terminal_progress();

/// One line of progress: "starting · fine grid · iteration 7 · residual 3.1e-04".
std::string in_print(const ProgressEvent& event);

}  // namespace swale
