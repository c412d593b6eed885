#include "io/whole_file.h"

#include "tests/io/scratch_folder.h"

#include <doctest/doctest.h>

#include <sys/resource.h>

#include <csignal>

using namespace swale;

namespace {

/// While it lives, no file of this process can grow beyond `bytes`: a disk that is full.
class FileSizeLimit {
  public:
    explicit FileSizeLimit(rlim_t bytes) : handler_(std::signal(SIGXFSZ, SIG_IGN)) {
        getrlimit(RLIMIT_FSIZE, &before_);
        const rlimit small{bytes, before_.rlim_max};
        setrlimit(RLIMIT_FSIZE, &small);
    }
    ~FileSizeLimit() {
        setrlimit(RLIMIT_FSIZE, &before_);
        std::signal(SIGXFSZ, handler_);
    }

  private:
    rlimit before_{};
    void (*handler_)(int);
};

}  // namespace

TEST_CASE("whole file: it holds the bytes given and replaces an older one") {
    const ScratchFolder folder;
    const auto path = folder.path() / "new" / "folder" / "a.txt";
    write_whole_file(path, "older");
    const std::string content("a\0b\n", 4);
    write_whole_file(path, content);
    CHECK(file_text(path) == content);
    CHECK(folder.names("new/folder") == std::vector<std::string>{"a.txt"});
}

TEST_CASE("whole file: a full disk leaves the older file as it was and nothing beside it") {
    const ScratchFolder folder;
    const auto path = folder.path() / "a.txt";
    write_whole_file(path, "older");
    {
        const FileSizeLimit full(4096);
        CHECK_THROWS_AS(write_whole_file(path, std::string(100000, 'x')), FileError);
    }
    CHECK(file_text(path) == "older");
    CHECK(folder.names() == std::vector<std::string>{"a.txt"});
}

TEST_CASE("whole file: a parent that is a file is refused with the path and the reason") {
    const ScratchFolder folder;
    write_whole_file(folder.path() / "file", "");
    const auto path = folder.path() / "file" / "a.txt";
    try {
        write_whole_file(path, "text");
        FAIL("no error");
    } catch (const FileError& error) {
        CHECK(std::string(error.what()).find(path.string()) == 0);
        CHECK(std::string(error.what()).find("Not a directory") != std::string::npos);
    }
    CHECK(folder.names() == std::vector<std::string>{"file"});
}

TEST_CASE("whole file: a folder or a device in its place is refused") {
    const ScratchFolder folder;
    CHECK_THROWS_AS(write_whole_file(folder.path(), "text"), FileError);
    CHECK_THROWS_AS(write_whole_file("/dev/full", "text"), FileError);
    CHECK(std::filesystem::is_character_file("/dev/full"));
}
