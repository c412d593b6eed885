#include "materials/following.h"

#include "materials/catalogue.h"
#include "materials/data_sheet.h"
#include "materials/stiffness_share.h"

#include <optional>

namespace swale {
namespace {

std::optional<double> given(const Belt& belt, const std::string& name) {
    if (entry_of(belt.data, name).origin.grade != "given") return {};
    return internal_value(belt.data, name);
}

// The sheet of the belt's construction, what is given of it put in.
DataSheet constructed(const Belt& belt, const Measured& measured) {
    DataSheet sheet = belt_family(*belt.construction).data_sheet(*belt.construction, measured);
    for (const BeltDatum& old : belt.data) {
        if (old.origin.grade != "given") continue;
        if (old.name == "D22") scale_stiffness(sheet, "D22", old.value / entry_of(sheet, "D22").value);
        put(sheet, old);
    }
    return sheet;
}

}  // namespace

DataSheet following(const Belt& belt, const std::string& name, double value) {
    const BeltDatum& old = entry_of(belt.data, name);
    BeltDatum entry = datum(name, value, old.origin);
    entry.range = old.range;
    DataSheet sheet = belt.data;
    if (belt.construction) {
        Measured measured{given(belt, "thickness"), given(belt, "A11")};
        (name == "A11" ? measured.modulus : measured.thickness) = value;
        sheet = constructed(belt, measured);
    }
    put(sheet, entry);
    return sheet;
}

}  // namespace swale
