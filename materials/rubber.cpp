#include "materials/rubber.h"

#include "materials/data_sheet.h"

namespace swale {

double youngs_modulus(double shore_a) {
    // E = 0.0981 (56 + 7.62336 S) / (0.137505 (254 - 2.54 S))  [MPa]   Gent, Trans. Inst. Rubber Industry 34 (1958) 46
    return 0.0981 * (56 + 7.62336 * shore_a) / (0.137505 * (254 - 2.54 * shore_a));
}

double shear_modulus(double youngs) {
    return youngs / 3;
}

double plane_strain_modulus(double youngs) {
    return youngs * 4 / 3;
}

double foundation_modulus(double youngs, double layer, double contact) {
    // Long block bonded on both faces: E_a = 4/3 E (1 + S^2), S = width / (2 height)   Gent and Lindley, Proc. Inst. Mech.
    // Engrs 173 (1959) 111. The roll's face slides freely, so the layer is half of a block twice as high: S = width / (4
    // layer).
    const double shape = contact / (4 * layer);
    return plane_strain_modulus(youngs) * (1 + shape * shape) / layer;
}

BeltDatum foundation_datum(double layer) {
    return ranged(datum("foundation", foundation_modulus(youngs_modulus(cover_hardness), layer),
                        {"derived",
                         "rubber of 65 Shore A below the carcass, bonded, under a contact of 6.5 mm along the belt: Gent and "
                         "Lindley, Proc. Inst. Mech. Engrs 173 (1959)"}),
                  foundation_modulus(youngs_modulus(softest_cover), layer, 5),
                  foundation_modulus(youngs_modulus(hardest_cover), layer, 8),
                  "60 to 70 Shore A (common practice), contact of 5 to 8 mm");
}

}  // namespace swale
