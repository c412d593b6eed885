#pragma once

#include <filesystem>
#include <optional>
#include <ostream>
#include <string>

namespace swale {

struct SizeRequest {
    std::filesystem::path case_file;
    std::optional<std::filesystem::path> out;  ///< absent: `<stem>-sized` in the current folder
    std::string shortest, longest;             ///< lengths; empty: those of the case's [size]
    std::string find;                          ///< "distance", "lift", "idlers", "all"; empty: as in the case's [size]
    bool json = false;
};

/// `swale size`: the arrangement at which every limit holds in every state with its estimated error: the shortest distance, the
/// best pulley lift, intermediate sets, or all of these. Writes the sized case file, the history and the results of the sized
/// case; a case with a survey is judged as it stands (run_as_built); where none passes those of the one that comes nearest.
/// Returns 0, or 1 if none within the bounds passes. Throws InputErrors, BadQuantity and FileError.
int run_size(const SizeRequest& request, std::ostream& answer);

}  // namespace swale
