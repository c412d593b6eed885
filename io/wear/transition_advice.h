#pragma once

#include "solver/transition.h"

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

namespace swale {

/// What the junction bears in one state of a transition, and in the trough far from it.
struct JunctionLoad {
    std::string state;
    bool converged = false;
    std::string reason;
    double strain = 0, trough_strain = 0;          ///< junction bending strain; trough: 0 if not known
    double line_force = 0, trough_line_force = 0;  ///< of the wing roll [N/mm]
};

/// The transition that goes with a creased belt, and the change that would help.
struct TransitionAdvice {
    std::string file, title, verdict;
    double distance = 0;  ///< as given [mm]
    std::vector<JunctionLoad> loads;
    std::vector<std::string> exceeded;        ///< limits
    std::optional<double> changed;            ///< a distance that helps [mm]
    bool changed_meets_limits = false;        ///< shortest that meets every limit; else half as long again, to compare
    std::vector<JunctionLoad> changed_loads;  ///< at that distance
    std::string no_change;                    ///< why there is none
    int exit_code = 0;                        ///< as of `swale solve`
};

/// Solves the case; where a limit is exceeded looks for the shortest distance that meets all of them, elsewhere for what half a
/// distance more would change. Throws InputErrors and FileError.
TransitionAdvice transition_advice(const std::filesystem::path& case_file, const ProgressListener& progress = {});

/// Sentences that tie a crease to it.
std::vector<std::string> sentences(const TransitionAdvice& advice);

}  // namespace swale
