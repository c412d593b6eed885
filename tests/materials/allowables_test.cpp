#include "materials/allowables.h"

#include <doctest/doctest.h>

using namespace swale;

TEST_CASE("default limits are those of handbook and standards with their sources") {
    for (Carcass carcass : {Carcass::textile, Carcass::steel_cord, Carcass::aramid}) {
        CHECK(allowable_edge_tension(carcass).value == 1.15);
        CHECK(allowable_edge_tension_iso_5293(carcass).value == 1.30);
        CHECK(allowable_tension_min(carcass).value == 0);
        for (const Allowable& limit : {allowable_edge_tension(carcass), allowable_edge_tension_iso_5293(carcass),
                                       allowable_tension_min(carcass), allowable_edge_strain(carcass)})
            CHECK_FALSE(limit.source.empty());
    }
}

TEST_CASE("only the limit of edge strain is advisory") {
    CHECK(allowable_edge_strain(Carcass::textile).value == 0.008);
    CHECK(allowable_edge_strain(Carcass::steel_cord).value == 0.002);
    CHECK(allowable_edge_strain(Carcass::textile).advisory);
    CHECK_FALSE(allowable_edge_tension(Carcass::textile).advisory);
    CHECK_FALSE(allowable_tension_min(Carcass::steel_cord).advisory);
    CHECK(allowable_edge_strain(Carcass::aramid).value == allowable_edge_strain(Carcass::steel_cord).value);
    CHECK(allowable_edge_strain(Carcass::aramid).advisory);
    CHECK(allowable_edge_strain(Carcass::aramid).source.find("safe side") != std::string::npos);
}
