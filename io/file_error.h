#pragma once

#include <filesystem>
#include <stdexcept>
#include <string>

namespace swale {

/// A file or folder that can't be read or written although its name is right: exit code 4. `reason` reads on from the path.
class FileError : public std::runtime_error {
  public:
    FileError(const std::filesystem::path& path, const std::string& reason)
        : std::runtime_error(path.string() + ": " + reason), file(path) {}
    std::filesystem::path file;
};

}  // namespace swale
