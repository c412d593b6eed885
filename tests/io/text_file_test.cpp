#include "io/text_file.h"

#include "io/file_error.h"
#include "io/input_error.h"
#include "io/utf8.h"
#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>
#include <fstream>
#include <string>

namespace swale {
namespace {

std::string complaint(const std::filesystem::path& path) {
    try {
        read_text_file(path);
    } catch (const InputErrors& errors) {
        return errors.what();
    }
    return "no complaint";
}

std::string complaint_about_content(const std::string& content) {
    const ScratchFolder folder;
    const std::filesystem::path path = folder.path() / "case.toml";
    std::ofstream(path, std::ios::binary) << content;
    return complaint(path);
}

bool holds(const std::string& text, const std::string& phrase) {
    return text.find(phrase) != std::string::npos;
}

}  // namespace

TEST_CASE("a text is read verbatim") {
    const ScratchFolder folder;
    const std::string content = "title = \"\u00D6stlich\"\r\n\n# end";
    std::ofstream(folder.path() / "case.toml", std::ios::binary) << content;
    CHECK(read_text_file(folder.path() / "case.toml") == content);
}

TEST_CASE("what is no file of text is refused with the reason") {
    const ScratchFolder folder;
    CHECK(holds(complaint(folder.path() / "absent.toml"), "no such file"));
    CHECK(holds(complaint(folder.path()), "a folder"));
    CHECK(holds(complaint("/dev/null"), "not a regular file"));
    CHECK(holds(complaint(""), "no such file"));
    CHECK(holds(complaint(folder.path() / std::string(5000, 'a')), "no such file"));
    CHECK(holds(complaint_about_content(""), "empty"));
    CHECK(holds(complaint_about_content(" \n\t\n"), "empty"));
    CHECK(holds(complaint_about_content(std::string(1024 * 1024 + 1, '#')), "too large"));
    CHECK(holds(complaint_about_content(std::string("a = 1\nb\0", 8)), "case.toml:2: the file holds a NUL byte"));
    CHECK(holds(complaint_about_content("a = 1\n\n\"\xFF\""), "case.toml:3: the file is not UTF-8"));
}

TEST_CASE("a refusal says what the file should be") {
    const ScratchFolder folder;
    const auto complaint_of = [&](const std::string& what) {
        try {
            read_text_file(folder.path() / "absent.toml", what);
        } catch (const InputErrors& errors) {
            return std::string(errors.what());
        }
        return std::string();
    };
    CHECK(holds(complaint_of("readings as CSV"), "readings as CSV"));
    CHECK(holds(complaint(folder.path()), "a case in TOML"));
}

TEST_CASE("a file that fails while it is read is a matter of files and not of input") {
    if (!std::filesystem::exists("/proc/self/mem")) return;
    CHECK_THROWS_AS(read_text_file("/proc/self/mem"), FileError);
}

TEST_CASE("UTF-8 is told from other bytes") {
    for (const char* good : {"", "plain", "\u00E4", "\u20AC", "\U0001F600", "\xEF\xBB\xBF"})
        CHECK(first_invalid_utf8(good) == std::string(good).size());
    // lone and missing continuation, overlong forms, surrogate, beyond the last point
    for (const char* bad : {"\x80", "\xC3", "\xC3(", "\xC0\x80", "\xE0\x80\x80", "\xED\xA0\x80", "\xF0\x80\x80\x80",
                            "\xF4\x90\x80\x80", "\xF5\x80\x80\x80", "\xE2\x82"})
        CHECK(first_invalid_utf8(bad) == 0);
    CHECK(first_invalid_utf8("ab\xFF") == 2);
}

}  // namespace swale
