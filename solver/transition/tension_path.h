#pragma once

#include "solver/transition/grid_solution.h"

namespace swale {

/// Follows the belt on one grid from the highest total tension of the case down to the lowest, each solution from the one
/// before, in `rows` equal steps of tension. With one tension only the path goes down to a quarter of it. Where two rows that
/// converged have an eigenvalue of either sign, the tension between them at which it vanishes is interpolated linearly.
/// Empty for a belt that is drawn instead of pulled.
TensionPath tension_path(const TransitionCase& transition, int sets, const Patch& patch_in_space, bool endless, int rows,
                         const NewtonWatcher& watcher, NewtonTimes& times);

/// The highest tension at which the eigenvalue that `of` picks from a row crosses zero; absent if it does not.
std::optional<double> zero_crossing(const std::vector<TensionPathRow>& rows, std::optional<double> TensionPathRow::*of);

}  // namespace swale
