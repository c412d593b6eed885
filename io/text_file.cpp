#include "io/text_file.h"

#include "io/file_error.h"
#include "io/input_error.h"
#include "io/utf8.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fstream>

namespace swale {
namespace {

constexpr std::size_t largest = 1024 * 1024;  // bytes

[[noreturn]] void refuse(const std::filesystem::path& path, int line, const std::string& problem, const std::string& allowed) {
    throw InputErrors({{path.string(), line, "", problem, "", allowed}});
}

void check_file(const std::filesystem::path& path, const std::string& what) {
    std::error_code error;
    const auto status = std::filesystem::status(path, error);
    const bool impossible_name = error == std::errc::filename_too_long;
    if (status.type() == std::filesystem::file_type::not_found || impossible_name)
        refuse(path, 0, "there is no such file", what);
    if (error) throw FileError(path, "can't be read: " + error.message());
    if (std::filesystem::is_directory(status)) refuse(path, 0, "this is a folder, not a file", what);
    if (!std::filesystem::is_regular_file(status)) refuse(path, 0, "this is not a regular file", what);
}

void check_text(const std::filesystem::path& path, const std::string& text, const std::string& what) {
    if (text.find_first_not_of(" \t\r\n") == std::string::npos) refuse(path, 0, "the file is empty", what);
    const std::size_t bad = std::min(text.find('\0'), first_invalid_utf8(text));
    if (bad >= text.size()) return;
    const auto line = 1 + std::count(text.begin(), text.begin() + static_cast<std::ptrdiff_t>(bad), '\n');
    const std::string problem = text[bad] == '\0' ? "the file holds a NUL byte" : "the file is not UTF-8 text";
    refuse(path, static_cast<int>(line), problem, what + ", UTF-8 text");
}

}  // namespace

std::string read_text_file(const std::filesystem::path& path, const std::string& what) {
    check_file(path, what);
    std::ifstream file(path, std::ios::binary);
    if (!file) throw FileError(path, std::string("can't be read: ") + std::strerror(errno));
    std::string text(largest + 1, '\0');
    file.read(text.data(), static_cast<std::streamsize>(text.size()));
    if (file.bad()) throw FileError(path, "can't be read to its end");
    text.resize(static_cast<std::size_t>(file.gcount()));
    if (text.size() > largest) refuse(path, 0, "the file is too large for " + what, "up to one megabyte of TOML");
    check_text(path, text, what);
    return text;
}

}  // namespace swale
