#pragma once

#include "solver/transition_case.h"

#include <string>

namespace swale {

/// How many full sets stand in for the endless trough, and why.
struct TroughLength {
    int sets = 0;
    std::string reason;      ///< a sentence
    bool cut_short = false;  ///< more sets were wanted than the program takes
};

/// The number given, or for "auto" enough sets that the trough is twice the belt's shear-lag length W/2pi sqrt(A11/A66), and
/// that a belt lifted off by a raised pulley lies down again before the far end: a free span under tension T and weight w
/// leaves a height h over sqrt(2 T h / w).
TroughLength trough_length(const TransitionCase& transition);

}  // namespace swale
