#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace swale {

/// An empty folder of one test's own, removed with all in it at the end.
class ScratchFolder {
  public:
    ScratchFolder();
    ~ScratchFolder();
    ScratchFolder(const ScratchFolder&) = delete;
    ScratchFolder& operator=(const ScratchFolder&) = delete;

    const std::filesystem::path& path() const { return path_; }
    /// What lies in a folder below, sorted, hidden files included.
    std::vector<std::string> names(const std::string& below = "") const;

  private:
    std::filesystem::path path_;
};

/// The bytes of a file.
std::string file_text(const std::filesystem::path& path);

}  // namespace swale
