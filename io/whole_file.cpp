#include "io/whole_file.h"

#include <fmt/format.h>

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <system_error>

namespace swale {

namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const fs::path& path, const std::string& step, int error) {
    throw FileError(path, fmt::format("can't {}: {}", step, std::generic_category().message(error)));
}

/// A new file in the folder of its target, removed again unless it was renamed.
class Temporary {
  public:
    explicit Temporary(const fs::path& target) : target_(target), path_(target) {
        for (int attempt = 0; file_ < 0; ++attempt) {
            path_.replace_filename(fmt::format(".{}.{}-{}.tmp", target.filename().string(), getpid(), attempt));
            file_ = open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
            if (file_ < 0 && (errno != EEXIST || attempt == 99)) fail(target_, "create it", errno);
        }
    }
    ~Temporary() {
        if (file_ >= 0) close(file_);
        if (!renamed_) unlink(path_.c_str());
    }
    Temporary(const Temporary&) = delete;
    Temporary& operator=(const Temporary&) = delete;

    void write(std::string_view content) {
        while (!content.empty()) {
            const ssize_t written = ::write(file_, content.data(), content.size());
            if (written < 0 && errno == EINTR) continue;
            if (written < 0) fail(target_, "write it", errno);
            content.remove_prefix(static_cast<size_t>(written));
        }
        if (fsync(file_) != 0) fail(target_, "write it to the disk", errno);
    }
    void rename_to_target() {
        const int closed = close(file_);
        file_ = -1;
        if (closed != 0) fail(target_, "close it", errno);
        if (rename(path_.c_str(), target_.c_str()) != 0) fail(target_, "put it in place", errno);
        renamed_ = true;
    }

  private:
    fs::path target_, path_;
    int file_ = -1;
    bool renamed_ = false;
};

void create_parent(const fs::path& path) {
    if (!path.has_parent_path()) return;
    std::error_code error;
    fs::create_directories(path.parent_path(), error);
    if (error) throw FileError(path, "can't create its folder: " + error.message());
}

/// The new name outlives a power cut once the folder is on the disk; a file system that can't do that is let pass.
void sync_parent(const fs::path& path) {
    const fs::path folder = path.has_parent_path() ? path.parent_path() : fs::path(".");
    const int handle = open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (handle < 0) return;
    fsync(handle);
    close(handle);
}

}  // namespace

void write_whole_file(const fs::path& path, std::string_view content) {
    create_parent(path);
    std::error_code unknown;
    const fs::file_status there = fs::status(path, unknown);
    if (fs::exists(there) && !fs::is_regular_file(there)) throw FileError(path, "is not a regular file, so it is not replaced");
    Temporary temporary(path);
    temporary.write(content);
    temporary.rename_to_target();
    sync_parent(path);
}

}  // namespace swale
