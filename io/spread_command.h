#pragma once

#include <filesystem>
#include <optional>
#include <ostream>

namespace swale {

struct SpreadRequest {
    std::filesystem::path case_file;
    std::optional<std::filesystem::path> out;  ///< absent: `<stem>-spread` in the current folder
    int samples = 0;
    bool json = false;
};

/// `swale spread`: what the case's tolerances do to each criterion, how often a limit is exceeded, and the distance that keeps
/// it below the wanted level. Writes spread.json and the case. Returns 0, 1 if a limit is exceeded more often than wanted, 3 if
/// the case has no solution. Throws InputErrors and FileError.
int run_spread(const SpreadRequest& request, std::ostream& answer);

}  // namespace swale
