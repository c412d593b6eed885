#pragma once

#include <filesystem>
#include <optional>
#include <ostream>
#include <string>

namespace swale {

struct SizeRequest {
    std::filesystem::path case_file;
    std::optional<std::filesystem::path> out;  ///< absent: `<stem>-sized` in the current folder
    std::string shortest, longest;             ///< lengths; empty: half and twelve belt widths
    bool json = false;
};

/// `swale size`: the shortest distance at which every limit holds in every state with its estimated error, intermediate sets at
/// the same shares of it. Writes the sized case file, the history and the results of the sized case. Returns 0, or 1 if no
/// distance within the bounds passes. Throws InputErrors, BadQuantity and FileError.
int run_size(const SizeRequest& request, std::ostream& answer);

}  // namespace swale
