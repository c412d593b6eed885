#pragma once

#include <filesystem>
#include <string>

namespace swale {

/// The text of an input file, verbatim; `what` it should be goes into messages. Throws InputErrors if there is no such file, if
/// it is no regular file, empty, larger than a megabyte or no UTF-8 text; FileError if it can't be read.
std::string read_text_file(const std::filesystem::path& path, const std::string& what = "a case in TOML");

}  // namespace swale
