#pragma once

#include "io/file_error.h"

#include <filesystem>
#include <string_view>

namespace swale {

/// Writes a file that appears whole or not at all: into a temporary beside it, to the disk, then renamed over `path`.
/// Missing parent folders are created. Throws FileError and leaves nothing behind if any step fails; an older file of
/// that name then stays as it was. Refuses to replace what is not a regular file (a folder, a device).
void write_whole_file(const std::filesystem::path& path, std::string_view content);

}  // namespace swale
