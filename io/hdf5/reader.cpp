#include "io/hdf5/reader.h"

#include "io/file_error.h"

namespace swale {

namespace {

namespace fs = std::filesystem;

/// The file itself closes with the last group that was opened in it.
hid_t open_root(const fs::path& path) {
    const Hdf5Handle file(H5Fopen(path.c_str(), H5F_ACC_RDONLY, H5P_DEFAULT), H5Fclose, path, "open it");
    return H5Gopen2(file, "/", H5P_DEFAULT);
}

/// Text that the library allocated for a value of variable length.
class LibraryText {
  public:
    ~LibraryText() { H5free_memory(text_); }
    char** slot() { return &text_; }
    std::string value() const { return text_ == nullptr ? std::string() : std::string(text_); }

  private:
    char* text_ = nullptr;
};

void check(herr_t status, const fs::path& path, const std::string& name) {
    if (status < 0) throw FileError(path, "HDF5 can't read " + name);
}

/// Guards a read into memory sized for one value, or for a list of values.
hsize_t count_of(hid_t space, bool single, const fs::path& path, const std::string& name) {
    const hssize_t count = H5Sget_simple_extent_npoints(space);
    if (count < 0 || (single && count != 1)) throw FileError(path, name + " must hold one value");
    return static_cast<hsize_t>(count);
}

}  // namespace

Hdf5Source::Hdf5Source(const fs::path& path) : path_(path), handle_(open_root(path), H5Gclose, path, "open its root group") {}

Hdf5Source Hdf5Source::group(const std::string& name) const {
    return {{H5Gopen2(handle_, name.c_str(), H5P_DEFAULT), H5Gclose, path_, "find group " + name}, path_};
}

bool Hdf5Source::has_link(const std::string& name) const {
    return H5Lexists(handle_, name.c_str(), H5P_DEFAULT) > 0;
}

bool Hdf5Source::has_attribute(const std::string& name) const {
    return H5Aexists(handle_, name.c_str()) > 0;
}

void Hdf5Source::read_attribute(const std::string& name, hid_t type, void* value) const {
    const Hdf5Handle attribute(H5Aopen(handle_, name.c_str(), H5P_DEFAULT), H5Aclose, path_, "find attribute " + name);
    const Hdf5Handle space(H5Aget_space(attribute), H5Sclose, path_, "read attribute " + name);
    count_of(space, true, path_, "attribute " + name);
    check(H5Aread(attribute, type, value), path_, "attribute " + name);
}

double Hdf5Source::number_attribute(const std::string& name) const {
    double value = 0;
    read_attribute(name, H5T_NATIVE_DOUBLE, &value);
    return value;
}

int Hdf5Source::integer_attribute(const std::string& name) const {
    int value = 0;
    read_attribute(name, H5T_NATIVE_INT, &value);
    return value;
}

std::string Hdf5Source::text_attribute(const std::string& name) const {
    LibraryText text;
    read_attribute(name, hdf5_text_type(path_), text.slot());
    return text.value();
}

std::vector<double> Hdf5Source::numbers(const std::string& name) const {
    const Hdf5Handle set(H5Dopen2(handle_, name.c_str(), H5P_DEFAULT), H5Dclose, path_, "find data set " + name);
    const Hdf5Handle space(H5Dget_space(set), H5Sclose, path_, "read data set " + name);
    std::vector<double> values(count_of(space, false, path_, name));
    if (!values.empty()) check(H5Dread(set, H5T_NATIVE_DOUBLE, H5S_ALL, H5S_ALL, H5P_DEFAULT, values.data()), path_, name);
    return values;
}

std::string Hdf5Source::text(const std::string& name) const {
    const Hdf5Handle set(H5Dopen2(handle_, name.c_str(), H5P_DEFAULT), H5Dclose, path_, "find data set " + name);
    const Hdf5Handle space(H5Dget_space(set), H5Sclose, path_, "read data set " + name);
    count_of(space, true, path_, name);
    LibraryText text;
    check(H5Dread(set, hdf5_text_type(path_), H5S_ALL, H5S_ALL, H5P_DEFAULT, text.slot()), path_, name);
    return text.value();
}

std::vector<std::string> Hdf5Source::texts(const std::string& name) const {
    const Hdf5Handle set(H5Dopen2(handle_, name.c_str(), H5P_DEFAULT), H5Dclose, path_, "find data set " + name);
    const Hdf5Handle space(H5Dget_space(set), H5Sclose, path_, "read data set " + name);
    std::vector<LibraryText> texts(count_of(space, false, path_, name));
    static_assert(sizeof(LibraryText) == sizeof(char*), "the library fills a list of pointers");
    if (!texts.empty()) check(H5Dread(set, hdf5_text_type(path_), H5S_ALL, H5S_ALL, H5P_DEFAULT, texts.data()), path_, name);
    std::vector<std::string> values;
    for (const LibraryText& text : texts) values.push_back(text.value());
    return values;
}

size_t Hdf5Source::size() const {
    H5G_info_t info{};
    check(H5Gget_info(handle_, &info), path_, "a group");
    return info.nlinks;
}

}  // namespace swale
