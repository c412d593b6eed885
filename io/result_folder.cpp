#include "io/result_folder.h"

#include "io/file_error.h"
#include "io/quantity.h"
#include "io/whole_file.h"

#include <fmt/format.h>

namespace swale {

std::filesystem::path default_result_folder(const std::filesystem::path& case_file) {
    return case_file.stem().string() + "-result";
}

void refuse_own_case(const std::filesystem::path& folder, const std::filesystem::path& case_file) {
    std::error_code none;
    if (std::filesystem::equivalent(folder / "case.toml", case_file, none))
        throw BadQuantity(
            fmt::format("--out: given \"{}\", whose case.toml is the case itself and would be written over; allowed: "
                        "another folder",
                        folder.string()));
}

void prepare_result_folder(const std::filesystem::path& folder) {
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    if (!std::filesystem::is_directory(folder)) throw FileError(folder, "can't be made a folder for the results");
    const std::filesystem::path trial = folder / ".swale-trial";
    write_whole_file(trial, "");
    std::filesystem::remove(trial, error);
}

}  // namespace swale
