#pragma once

#include <hdf5.h>

#include <filesystem>
#include <string>
#include <utility>

namespace swale {

/// Owns one identifier of the HDF5 library (file, group, data set, space, type, property list) and closes it.
class Hdf5Handle {
  public:
    using Close = herr_t (*)(hid_t);

    /// `id` as the library returned it; negative throws FileError with `path` and what could not be done.
    Hdf5Handle(hid_t id, Close close, const std::filesystem::path& path, const std::string& what_failed);
    ~Hdf5Handle() {
        if (id_ >= 0) close_(id_);
    }
    Hdf5Handle(Hdf5Handle&& other) noexcept : id_(std::exchange(other.id_, -1)), close_(other.close_) {}
    Hdf5Handle& operator=(Hdf5Handle&&) = delete;
    Hdf5Handle(const Hdf5Handle&) = delete;
    Hdf5Handle& operator=(const Hdf5Handle&) = delete;

    operator hid_t() const { return id_; }

  private:
    hid_t id_;
    Close close_;
};

/// While it lives, the library does not print its error stack; failures are reported by FileError instead.
class Hdf5Silence {
  public:
    Hdf5Silence();
    ~Hdf5Silence();
    Hdf5Silence(const Hdf5Silence&) = delete;
    Hdf5Silence& operator=(const Hdf5Silence&) = delete;

  private:
    H5E_auto2_t printer_ = nullptr;
    void* data_ = nullptr;
};

/// The type of all text in our files: UTF-8 of any length.
Hdf5Handle hdf5_text_type(const std::filesystem::path& path);

}  // namespace swale
