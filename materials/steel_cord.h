#pragma once

#include "materials/family.h"

namespace swale {

/// One layer of steel cords: a row that is published, or half published and half derived.
struct CordLayer {
    int strength;              ///< ST rating [N/mm]
    int rated_tension;         ///< [N/mm]
    double diameter;           ///< of the cord [mm]
    double pitch;              ///< [mm]
    double modulus;            ///< along the belt [N/mm]
    double mass;               ///< of the layer of cords, one diameter thick, without covers [kg/m^2]
    bool of_one_table = true;  ///< all of it; otherwise pitch, modulus and mass are derived
};

/// The row of a rating. Throws std::out_of_range if there is none.
const CordLayer& cord_layer(int strength);

/// Steel cords in one layer between two covers: cords carry along the belt, rubber does the rest.
BeltFamily steel_cord_family();

}  // namespace swale
