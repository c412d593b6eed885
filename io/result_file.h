#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace swale {

/// One file of a result: where it goes inside the result's folder, and all its bytes.
struct ResultFile {
    std::filesystem::path name;
    std::string content;
};

using ResultFileList = std::vector<ResultFile>;

}  // namespace swale
