#pragma once

#include <filesystem>
#include <optional>
#include <ostream>

namespace swale {

struct RangesRequest {
    std::filesystem::path case_file;
    std::optional<std::filesystem::path> out;  ///< absent: `<stem>-ranges` in the current folder
    bool json = false;
};

/// `swale ranges`: solves the case at both ends of every uncertain number of its belt and ranks the numbers by what they do to
/// the answer. Writes ranges.json. Returns 0; 1 if a limit is exceeded as given or at an end; 3 if a state of any run has no
/// solution. Throws InputErrors, also for a belt without uncertain numbers, and FileError.
int run_ranges(const RangesRequest& request, std::ostream& answer);

}  // namespace swale
