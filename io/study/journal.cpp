#include "io/study/journal.h"

#include "io/file_error.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <unistd.h>
#include <nlohmann/json.hpp>

#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>
#include <utility>

namespace swale {

namespace {

namespace fs = std::filesystem;

std::string why() {
    return std::strerror(errno);
}

std::string bytes_of(const fs::path& path) {
    std::ifstream stream(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << stream.rdbuf();
    if (!stream) throw FileError(path, "can't be read");
    return bytes.str();
}

int case_number(const fs::path& path, int line, const std::string& text) {
    try {
        return nlohmann::json::parse(text).at("case").get<int>();
    } catch (const nlohmann::json::exception&) {
        throw FileError(path, fmt::format("line {} is damaged; set the file aside, or take that line out: its case is then "
                                          "solved again",
                                          line));
    }
}

/// Whole lines; what stands behind the last line end is not one.
JournalText parsed(const fs::path& path, const std::string& bytes) {
    JournalText journal;
    std::size_t begin = 0;
    for (int line = 1;; ++line) {
        const std::size_t end = bytes.find('\n', begin);
        if (end == std::string::npos) return journal;
        std::string text = bytes.substr(begin, end - begin);
        begin = end + 1;
        if (line == 1)
            journal.header = std::move(text);
        else
            journal.lines.insert_or_assign(case_number(path, line, text), std::move(text));
    }
}

std::size_t whole_lines(const std::string& bytes) {
    const std::size_t last = bytes.rfind('\n');
    return last == std::string::npos ? 0 : last + 1;
}

}  // namespace

JournalText read_journal(const fs::path& path) {
    if (!fs::is_regular_file(path)) throw FileError(path, "is not there");
    return parsed(path, bytes_of(path));
}

Journal::Journal(fs::path path, const std::string& header, const std::string& why_other) : path_(std::move(path)) {
    file_ = open(path_.c_str(), O_RDWR | O_CREAT | O_APPEND | O_CLOEXEC, 0644);
    if (file_ < 0) throw FileError(path_, "can't be opened for writing: " + why());
    try {
        if (flock(file_, LOCK_EX | LOCK_NB) != 0) throw FileError(path_, "another process is writing it");
        read(header, why_other);
    } catch (...) {
        close(file_);
        throw;
    }
}

Journal::~Journal() {
    close(file_);
}

void Journal::read(const std::string& header, const std::string& why_other) {
    const std::string bytes = bytes_of(path_);
    const std::size_t whole = whole_lines(bytes);
    if (whole < bytes.size() && ftruncate(file_, static_cast<off_t>(whole)) != 0)
        throw FileError(path_, "can't be cut to its whole lines: " + why());
    if (whole == 0) return write(header + "\n");
    JournalText journal = parsed(path_, bytes.substr(0, whole));
    if (journal.header != header) throw FileError(path_, why_other);
    lines_ = std::move(journal.lines);
}

void Journal::add(int number, const std::string& line) {
    write(line + "\n");
    lines_.insert_or_assign(number, line);
}

// A write that is cut short, by a full disk, is taken back.
void Journal::write(const std::string& text) {
    const off_t before = lseek(file_, 0, SEEK_END);
    std::size_t done = 0;
    while (done < text.size()) {
        const ssize_t wrote = ::write(file_, text.data() + done, text.size() - done);
        if (wrote < 0 && errno == EINTR) continue;
        if (wrote <= 0) {
            const std::string reason = why();
            if (ftruncate(file_, before) != 0) throw FileError(path_, "can't be written, nor cut back: " + reason);
            throw FileError(path_, "can't be written: " + reason);
        }
        done += static_cast<std::size_t>(wrote);
    }
    if (fdatasync(file_) != 0) throw FileError(path_, "can't be brought to the disk: " + why());
}

}  // namespace swale
