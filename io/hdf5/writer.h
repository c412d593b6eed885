#pragma once

#include "io/hdf5/handle.h"

#include <string>
#include <vector>

namespace swale {

/// A group in an HDF5 file that is being written. Groups, data sets and attributes keep the order in which they were made and
/// carry no time stamp, so equal content makes equal bytes.
class Hdf5Group {
  public:
    Hdf5Group group(const std::string& name) const;

    void attribute(const std::string& name, double value) const;
    void attribute(const std::string& name, int value) const;
    void attribute(const std::string& name, const std::string& value) const;

    /// Array of numbers, row-major, with its unit as attribute "unit" ("1" for plain numbers). Returned to take more
    /// attributes.
    Hdf5Group numbers(const std::string& name, const std::string& unit, const std::vector<hsize_t>& shape,
                      const std::vector<double>& values) const;
    /// The same in one chunk, its bytes shuffled and deflated: for fields, of which there are many.
    Hdf5Group packed_numbers(const std::string& name, const std::string& unit, const std::vector<hsize_t>& shape,
                             const std::vector<double>& values) const;
    Hdf5Group number(const std::string& name, const std::string& unit, double value) const;
    void integers(const std::string& name, const std::vector<int>& values) const;
    void texts(const std::string& name, const std::vector<std::string>& values) const;
    void text(const std::string& name, const std::string& value) const;

  private:
    friend class Hdf5Image;
    Hdf5Group(Hdf5Handle handle, std::filesystem::path path) : handle_(std::move(handle)), path_(std::move(path)) {}
    Hdf5Group data_set(const std::string& name, hid_t type, const std::vector<hsize_t>& shape, const void* values,
                       bool packed = false) const;
    void write_attribute(const std::string& name, hid_t type, const void* value) const;

    Hdf5Handle handle_;
    std::filesystem::path path_;  ///< of the file, for messages
};

/// An HDF5 file that is built in memory; its bytes go to the disk whole.
class Hdf5Image {
  public:
    /// `path` is for messages only.
    explicit Hdf5Image(const std::filesystem::path& path);
    Hdf5Group root() const;
    std::string bytes() const;

  private:
    std::filesystem::path path_;
    Hdf5Handle file_;
};

}  // namespace swale
