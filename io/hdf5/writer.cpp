#include "io/hdf5/writer.h"

#include "io/file_error.h"

namespace swale {

namespace {

namespace fs = std::filesystem;

void check(herr_t status, const fs::path& path, const std::string& what_failed) {
    if (status < 0) throw FileError(path, "HDF5 can't " + what_failed);
}

Hdf5Handle space_of(const std::vector<hsize_t>& shape, const fs::path& path) {
    const hid_t space =
        shape.empty() ? H5Screate(H5S_SCALAR) : H5Screate_simple(static_cast<int>(shape.size()), shape.data(), nullptr);
    return {space, H5Sclose, path, "make a data space"};
}

Hdf5Handle creation_order(hid_t kind, const fs::path& path) {
    Hdf5Handle list(H5Pcreate(kind), H5Pclose, path, "make a property list");
    H5Pset_link_creation_order(list, H5P_CRT_ORDER_TRACKED | H5P_CRT_ORDER_INDEXED);
    H5Pset_obj_track_times(list, false);
    return list;
}

/// In memory only (core driver without backing store), to be taken out as bytes.
hid_t create_in_memory(const fs::path& path) {
    const Hdf5Handle access(H5Pcreate(H5P_FILE_ACCESS), H5Pclose, path, "make a property list");
    H5Pset_fapl_core(access, 1 << 20, false);
    return H5Fcreate(path.c_str(), H5F_ACC_TRUNC, creation_order(H5P_FILE_CREATE, path), access);
}

void check_count(const std::string& name, const std::vector<hsize_t>& shape, const std::vector<double>& values) {
    hsize_t count = 1;
    for (const hsize_t extent : shape) count *= extent;
    if (count != values.size()) throw std::logic_error(name + ": shape and number of values differ");
}

std::vector<const char*> pointers(const std::vector<std::string>& values) {
    std::vector<const char*> list;
    for (const std::string& value : values) list.push_back(value.c_str());
    return list;
}

}  // namespace

Hdf5Group Hdf5Group::group(const std::string& name) const {
    const Hdf5Handle order = creation_order(H5P_GROUP_CREATE, path_);
    return {{H5Gcreate2(handle_, name.c_str(), H5P_DEFAULT, order, H5P_DEFAULT), H5Gclose, path_, "make group " + name}, path_};
}

void Hdf5Group::write_attribute(const std::string& name, hid_t type, const void* value) const {
    const Hdf5Handle space = space_of({}, path_);
    const std::string step = "make attribute " + name;
    const Hdf5Handle attribute(H5Acreate2(handle_, name.c_str(), type, space, H5P_DEFAULT, H5P_DEFAULT), H5Aclose, path_, step);
    check(H5Awrite(attribute, type, value), path_, step);
}

void Hdf5Group::attribute(const std::string& name, double value) const {
    write_attribute(name, H5T_NATIVE_DOUBLE, &value);
}

void Hdf5Group::attribute(const std::string& name, int value) const {
    write_attribute(name, H5T_NATIVE_INT, &value);
}

void Hdf5Group::attribute(const std::string& name, const std::string& value) const {
    const char* const text = value.c_str();
    write_attribute(name, hdf5_text_type(path_), &text);
}

Hdf5Group Hdf5Group::data_set(const std::string& name, hid_t type, const std::vector<hsize_t>& shape, const void* values,
                              bool packed) const {
    const Hdf5Handle space = space_of(shape, path_);
    const Hdf5Handle properties(H5Pcreate(H5P_DATASET_CREATE), H5Pclose, path_, "make a property list");
    H5Pset_obj_track_times(properties, false);
    if (packed) {
        H5Pset_chunk(properties, static_cast<int>(shape.size()), shape.data());
        H5Pset_shuffle(properties);
        H5Pset_deflate(properties, 6);
    }
    const std::string step = "make data set " + name;
    Hdf5Handle set(H5Dcreate2(handle_, name.c_str(), type, space, H5P_DEFAULT, properties, H5P_DEFAULT), H5Dclose, path_, step);
    if (H5Sget_simple_extent_npoints(space) > 0) check(H5Dwrite(set, type, H5S_ALL, H5S_ALL, H5P_DEFAULT, values), path_, step);
    return {std::move(set), path_};
}

Hdf5Group Hdf5Group::numbers(const std::string& name, const std::string& unit, const std::vector<hsize_t>& shape,
                             const std::vector<double>& values) const {
    check_count(name, shape, values);
    Hdf5Group set = data_set(name, H5T_NATIVE_DOUBLE, shape, values.data());
    set.attribute("unit", unit);
    return set;
}

Hdf5Group Hdf5Group::packed_numbers(const std::string& name, const std::string& unit, const std::vector<hsize_t>& shape,
                                    const std::vector<double>& values) const {
    check_count(name, shape, values);
    Hdf5Group set = data_set(name, H5T_NATIVE_DOUBLE, shape, values.data(), true);
    set.attribute("unit", unit);
    return set;
}

Hdf5Group Hdf5Group::number(const std::string& name, const std::string& unit, double value) const {
    return numbers(name, unit, {}, {value});
}

void Hdf5Group::integers(const std::string& name, const std::vector<int>& values) const {
    data_set(name, H5T_NATIVE_INT, {values.size()}, values.data());
}

void Hdf5Group::texts(const std::string& name, const std::vector<std::string>& values) const {
    data_set(name, hdf5_text_type(path_), {values.size()}, pointers(values).data());
}

void Hdf5Group::text(const std::string& name, const std::string& value) const {
    const char* const text = value.c_str();
    data_set(name, hdf5_text_type(path_), {}, &text);
}

Hdf5Image::Hdf5Image(const fs::path& path)
    : path_(path), file_(create_in_memory(path), H5Fclose, path, "make a file in memory") {}

Hdf5Group Hdf5Image::root() const {
    return {{H5Gopen2(file_, "/", H5P_DEFAULT), H5Gclose, path_, "open the root group"}, path_};
}

std::string Hdf5Image::bytes() const {
    check(H5Fflush(file_, H5F_SCOPE_GLOBAL), path_, "finish the file");
    const ssize_t size = H5Fget_file_image(file_, nullptr, 0);
    std::string image(static_cast<size_t>(size < 0 ? 0 : size), '\0');
    if (size < 0 || H5Fget_file_image(file_, image.data(), image.size()) < 0)
        throw FileError(path_, "HDF5 can't take the file out");
    return image;
}

}  // namespace swale
