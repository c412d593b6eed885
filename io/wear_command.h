#pragma once

#include <filesystem>
#include <optional>
#include <ostream>
#include <string>

namespace swale {

struct WearRequest {
    std::filesystem::path survey_file;           ///< may be empty if a field sheet is asked for
    std::optional<std::filesystem::path> out;    ///< absent: `<stem>-wear` in the current folder
    std::optional<std::filesystem::path> sheet;  ///< where to write the field sheet
    bool json = false;
};

/// `swale wear`: reads what worn return rolls say of their belt. Writes wear.html, wear.json and the survey. Returns 0; if the
/// survey names a transition that was solved, as `swale solve` would. Throws InputErrors, BadQuantity and FileError.
int run_wear(const WearRequest& request, std::ostream& answer);

}  // namespace swale
