#pragma once

#include <filesystem>
#include <map>
#include <string>

namespace swale {

/// The log of a study: a header and one line a finished case. A line counts once its end is on the disk, so that a process that
/// is killed at any moment loses the cases it was at and no others. One process at a time writes it.
class Journal {
  public:
    /// Opens or makes `path`. A line that was cut short is taken off. Throws FileError if the file can't be read, written or
    /// locked, if its header is another one (with `why_other`), or if a line in its middle is damaged.
    Journal(std::filesystem::path path, const std::string& header, const std::string& why_other);
    ~Journal();
    Journal(const Journal&) = delete;
    Journal& operator=(const Journal&) = delete;

    /// Lines by case number, as they stand there.
    const std::map<int, std::string>& lines() const { return lines_; }
    bool has(int number) const { return lines_.contains(number); }
    /// Adds the line of a case and waits until it is on the disk. Throws FileError; the file is then as it was before.
    void add(int number, const std::string& line);

  private:
    void read(const std::string& header, const std::string& why_other);
    void write(const std::string& text);

    std::filesystem::path path_;
    int file_ = -1;
    std::map<int, std::string> lines_;
};

/// Header and lines of a journal that nobody writes any more. Throws FileError.
struct JournalText {
    std::string header;
    std::map<int, std::string> lines;
};
JournalText read_journal(const std::filesystem::path& path);

}  // namespace swale
