#include "materials/data_sheet.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <utility>

namespace swale {
namespace {

/// Unit in print of a datum, and that unit in the internal mm, N, t.
struct PrintUnit {
    const char* name;
    const char* unit;
    double internal;
};

constexpr std::array<PrintUnit, 14> print_units{{
    {"A11", "N/mm", 1},
    {"A22", "N/mm", 1},
    {"A12", "N/mm", 1},
    {"A66", "N/mm", 1},
    {"D11", "N m", 1e3},
    {"D22", "N m", 1e3},
    {"D12", "N m", 1e3},
    {"D66", "N m", 1e3},
    {"thickness", "mm", 1},
    {"underside", "mm", 1},
    {"mass", "kg/m^2", 1e-9},
    {"foundation", "N/mm^3", 1},
    {"rated_tension", "N/mm", 1},
    {"compressive_stiffness", "", 1},
}};

const PrintUnit& print_unit(const std::string& name) {
    const auto* found = std::find_if(print_units.begin(), print_units.end(), [&](const auto& u) { return u.name == name; });
    if (found == print_units.end()) throw std::out_of_range("a data sheet has no '" + name + "'");
    return *found;
}

Eigen::Matrix3d law_of(const DataSheet& sheet, const std::string& letter) {
    return orthotropic(internal_value(sheet, letter + "11"), internal_value(sheet, letter + "22"),
                       internal_value(sheet, letter + "12"), internal_value(sheet, letter + "66"));
}

bool lists(const DataSheet& sheet, const std::string& name) {
    return std::any_of(sheet.begin(), sheet.end(), [&](const BeltDatum& entry) { return entry.name == name; });
}

}  // namespace

BeltDatum datum(const std::string& name, double internal_value, Origin origin) {
    const PrintUnit& print = print_unit(name);
    return {name, internal_value / print.internal, print.unit, std::move(origin)};
}

BeltDatum ranged(BeltDatum entry, double low, double high, std::string source) {
    const double internal = print_unit(entry.name).internal;
    entry.range = Range{low / internal, high / internal, std::move(source)};
    if (!(entry.range->low <= entry.value && entry.value <= entry.range->high))
        throw std::logic_error(entry.name + " lies outside its range");
    return entry;
}

const BeltDatum& entry_of(const DataSheet& sheet, const std::string& name) {
    const auto found = std::find_if(sheet.begin(), sheet.end(), [&](const BeltDatum& entry) { return entry.name == name; });
    if (found == sheet.end()) throw std::out_of_range("the data sheet lacks '" + name + "'");
    return *found;
}

BeltDatum& entry_of(DataSheet& sheet, const std::string& name) {
    return const_cast<BeltDatum&>(entry_of(std::as_const(sheet), name));
}

double internal_value(const DataSheet& sheet, const std::string& name) {
    return entry_of(sheet, name).value * print_unit(name).internal;
}

void put(DataSheet& sheet, BeltDatum entry) {
    const auto same = std::find_if(sheet.begin(), sheet.end(), [&](const BeltDatum& old) { return old.name == entry.name; });
    if (same == sheet.end())
        sheet.push_back(std::move(entry));
    else
        *same = std::move(entry);
}

Section section_of(const DataSheet& sheet) {
    Section section;
    section.membrane = law_of(sheet, "A");
    section.bending = law_of(sheet, "D");
    section.thickness = internal_value(sheet, "thickness");
    section.underside = internal_value(sheet, "underside");
    section.mass = internal_value(sheet, "mass");
    section.foundation = internal_value(sheet, "foundation");
    if (lists(sheet, "compressive_stiffness")) section.compression.share = internal_value(sheet, "compressive_stiffness");
    return section;
}

}  // namespace swale
