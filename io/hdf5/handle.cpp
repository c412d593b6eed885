#include "io/hdf5/handle.h"

#include "io/file_error.h"

namespace swale {

Hdf5Handle::Hdf5Handle(hid_t id, Close close, const std::filesystem::path& path, const std::string& what_failed)
    : id_(id), close_(close) {
    if (id < 0) throw FileError(path, "HDF5 can't " + what_failed);
}

Hdf5Silence::Hdf5Silence() {
    H5Eget_auto2(H5E_DEFAULT, &printer_, &data_);
    H5Eset_auto2(H5E_DEFAULT, nullptr, nullptr);
}

Hdf5Silence::~Hdf5Silence() {
    H5Eset_auto2(H5E_DEFAULT, printer_, data_);
}

Hdf5Handle hdf5_text_type(const std::filesystem::path& path) {
    Hdf5Handle type(H5Tcopy(H5T_C_S1), H5Tclose, path, "make a text type");
    H5Tset_size(type, H5T_VARIABLE);
    H5Tset_cset(type, H5T_CSET_UTF8);
    return type;
}

}  // namespace swale
