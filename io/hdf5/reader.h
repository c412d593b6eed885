#pragma once

#include "io/hdf5/handle.h"

#include <string>
#include <vector>

namespace swale {

/// A group of an HDF5 file that is being read. Whatever is missing or of another kind throws FileError with the file and
/// the name in question.
class Hdf5Source {
  public:
    /// Opens a file's root group.
    explicit Hdf5Source(const std::filesystem::path& path);

    Hdf5Source group(const std::string& name) const;
    bool has_link(const std::string& name) const;
    bool has_attribute(const std::string& name) const;
    double number_attribute(const std::string& name) const;
    int integer_attribute(const std::string& name) const;
    std::string text_attribute(const std::string& name) const;
    std::vector<double> numbers(const std::string& name) const;
    std::string text(const std::string& name) const;
    std::vector<std::string> texts(const std::string& name) const;
    /// Number of links in this group.
    size_t size() const;

  private:
    Hdf5Source(Hdf5Handle handle, std::filesystem::path path) : path_(std::move(path)), handle_(std::move(handle)) {}
    void read_attribute(const std::string& name, hid_t type, void* value) const;

    std::filesystem::path path_;
    Hdf5Handle handle_;
};

}  // namespace swale
