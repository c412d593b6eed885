#pragma once

#include <filesystem>
#include <optional>
#include <ostream>

namespace swale {

struct SolveRequest {
    std::filesystem::path case_file;
    std::optional<std::filesystem::path> out;  ///< absent: the default folder
    bool json = false;                         ///< summary.json on standard output in place of the answer for people
};

/// `swale solve`: reads the case, solves it, writes the result files and answers on `answer`. Returns the exit code of the
/// verdict; throws InputErrors and FileError.
int run_solve(const SolveRequest& request, std::ostream& answer);

}  // namespace swale
