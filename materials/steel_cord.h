#pragma once

#include "materials/family.h"

namespace swale {

/// One layer of steel cords of a published row.
struct CordLayer {
    int strength;       ///< ST rating [N/mm]
    int rated_tension;  ///< [N/mm]
    double diameter;    ///< of the cord [mm]
    double pitch;       ///< [mm]
    double modulus;     ///< along the belt [N/mm]
    double mass;        ///< of the layer of cords, one diameter thick, without covers [kg/m^2]
};

/// The published row of a rating. Throws std::out_of_range if there is none.
const CordLayer& cord_layer(int strength);

/// Steel cords in one layer between two covers: cords carry along the belt, rubber does the rest.
BeltFamily steel_cord_family();

}  // namespace swale
