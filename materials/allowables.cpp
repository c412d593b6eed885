#include "materials/allowables.h"

namespace swale {

Allowable allowable_edge_tension(Carcass) {
    return {1.15, false, "handbook practice; a belt maker's installation and maintenance manual, 2010, p. 23: 115 % of rated"};
}

Allowable allowable_edge_tension_iso_5293(Carcass) {
    return {1.30, false, "ISO 5293:1981, abstract: 130 % of the maximum rated tension"};
}

Allowable allowable_tension_min(Carcass) {
    return {0.0, false, "ISO 5293:1981, abstract: no buckling of the centre; DIN 22101 as restated in GB 50431-2020, 10.4.1"};
}

Allowable allowable_edge_strain(Carcass carcass) {
    if (carcass == Carcass::aramid)
        return {
            0.002, true,
            "steel cord's 0.2 %, the safe side: none is known for aramid, which stretches little more (from memory, not sure)"};
    const double strain = carcass == Carcass::textile ? 0.008 : 0.002;
    return {strain, true, "from memory (fairly sure): common practice, 0.8 % textile, 0.2 % steel cord"};
}

}  // namespace swale
