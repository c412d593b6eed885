#pragma once

#include "materials/origin.h"
#include "materials/section.h"

#include <string>

namespace swale {

/// A datum from its value in internal units (mm, N, t); the unit in print follows from the name, one of
///   A11 A22 A12 A66 [N/mm] · D11 D22 D12 D66 [N m] · thickness underside [mm] · mass [kg/m^2] · foundation [N/mm^3] ·
///   rated_tension [N/mm] · compressive_stiffness (a share; only where it is given).
BeltDatum datum(const std::string& name, double internal_value, Origin origin);

/// The datum with its range, from both ends in internal units. Throws std::logic_error if its value lies outside.
BeltDatum ranged(BeltDatum entry, double low, double high, std::string source);

/// The named datum. Throws std::out_of_range if the sheet lacks it.
const BeltDatum& entry_of(const DataSheet& sheet, const std::string& name);
BeltDatum& entry_of(DataSheet& sheet, const std::string& name);

/// Value of the named datum in internal units. Throws std::out_of_range if the sheet lacks it.
double internal_value(const DataSheet& sheet, const std::string& name);

/// Puts the datum in the place of its namesake, or at the end.
void put(DataSheet& sheet, BeltDatum entry);

/// The section that the sheet describes: the sheet is the one home of the numbers.
Section section_of(const DataSheet& sheet);

}  // namespace swale
