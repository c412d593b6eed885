#pragma once

#include <filesystem>
#include <ostream>

namespace swale {

struct ScreenRequest {
    std::filesystem::path case_file;
    bool json = false;
};

/// `swale screen`: the hand methods alone, on `answer`. Returns 0: they size, they do not judge. Throws InputErrors and
/// FileError.
int run_screen(const ScreenRequest& request, std::ostream& answer);

}  // namespace swale
