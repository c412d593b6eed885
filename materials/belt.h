#pragma once

#include "materials/designation.h"
#include "materials/origin.h"
#include "materials/section.h"

#include <optional>
#include <string>
#include <vector>

namespace swale {

/// `textile`: of polyester, polyamide or cotton along the belt. Aramid is woven too but stretches little more than steel.
enum class Carcass { textile, steel_cord, aramid };

/// A belt as the solver needs it, with the data sheet it was made from.
struct Belt {
    std::string designation;         ///< as given, empty for a section given outright
    std::optional<Carcass> carcass;  ///< unknown for a section without `kind`: then strain is reported, not judged
    double width = 0;                ///< [mm]
    Section section;
    std::optional<double> strength;           ///< nominal breaking strength per width [N/mm], of a designation
    std::optional<double> rated_tension;      ///< working tension per width [N/mm]
    std::optional<Designation> construction;  ///< of swale's own catalogue, from which what is not given follows
    DataSheet data;                           ///< every number above with its origin
    std::vector<std::string> warnings;        ///< what in the data contradicts itself
};

}  // namespace swale
