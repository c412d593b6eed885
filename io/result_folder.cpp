#include "io/result_folder.h"

#include "io/file_error.h"
#include "io/whole_file.h"

namespace swale {

std::filesystem::path default_result_folder(const std::filesystem::path& case_file) {
    return case_file.stem().string() + "-result";
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
